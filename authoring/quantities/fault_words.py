"""Faults of words and signs round a number: limits said another way, rough values, what belongs elsewhere."""

from __future__ import annotations

import re

from authoring.quantities.grammar import UNIT
from authoring.quantities.numerals import NUMBER, SIGNED
from authoring.quantities.told import Fault, Told, always, rewritten

_VOLUMES = r"gal(?:lons?)?|q(?:ts?|uarts?)|p(?:ts?|ints?)|fl\.? oz\.?|fluid ounces?"


def _nation(found: re.Match[str]) -> Told:
    nation = "US" if found["nation"].replace(".", "") == "US" else "imp"
    return Told("The nation stands before the unit.", instead=(f"{nation} {found['word']}",))


def _behind(word: str) -> Fault:
    """Return the fault of a word for a limit that stands behind its number."""
    words = {
        "at most": r"or\s+(?:less|below|under|lower|fewer)|and\s+(?:below|under)",
        "at least": r"or\s+(?:more|above|over|higher)|and\s+(?:above|over|up)",
        "about": r"approx(?:imately|\.)?|circa|ca\.?|roughly|or\s+so",
    }[word]

    def tell(found: re.Match[str]) -> Told:
        before = found.string[: found.start()].strip()
        return Told(f'"{found["typed"]}" stands behind the number.', texts=(f"{word} {before}",))

    return rf"(?i)(?<=[^\W_]|[°%\"″²³])\s*\b(?P<typed>{words})\s*$", tell


def _bound_behind(found: re.Match[str]) -> Told:
    typed = found["word"] or found["most"]
    word = "at least" if typed.casefold().startswith("min") else "at most"
    before = found.string[: found.start()].strip()
    return Told(f'"{typed}" stands behind the number.', texts=(f"{word} {before}",))


def _strict(found: re.Match[str]) -> Told:
    least = found[0].casefold().startswith((">", "more", "over", "above", "greater", "exceeding"))
    return Told("A limit that leaves its own number out is beyond any gauge.", instead=(f"at {_END[least]} ",))


_END = {True: "least", False: "most"}
_PARTS = {"h": "0.5", "q": "0.25", "t": "0.75"}


def _part(found: re.Match[str]) -> Told:
    return Told("A number is written in digits.", instead=(f"{_PARTS[found['part'][0].casefold()]} ",))


_LEAST = r"(?:no|not)\s+(?:less|under|below|lower)(?:\s+than)?|min(?:imum)?\.?\s+of"
_MOST = r"(?:no|not)\s+(?:more|over|above|greater|higher)(?:\s+than)?|max(?:imum)?\.?\s+of|up\s+to|as\s+much\s+as"
_STRICT = r"[<>](?!=)|\b(?:(?:less|more|greater)\s+than|under|over|below|above|exceeding)\b"
_SAID = "A limit is said in other words here."
_ELSEWHERE = "The number and its unit stand alone here."

WORDS: tuple[Fault, ...] = (
    (rf"(?i)^\s*(?:{_LEAST})\s*", rewritten(_SAID, "at least ")),
    (rf"(?i)^\s*(?:{_MOST})\s*", rewritten(_SAID, "at most ")),
    (r"=\s?>\s*", rewritten("The sign of a limit is the wrong way round.", "at least ")),
    (r"=\s?<\s*", rewritten("The sign of a limit is the wrong way round.", "at most ")),
    (rf"(?i)^\s*(?:{_STRICT})\s*|[<>](?!=)\s*", _strict),
    (
        r"(?i)(?:(?<=[^\W\d_] )(?P<word>min(?:imum)?|max(?:imum)?)|(?<=[0-9] )(?P<most>max(?:imum)?))\.?\s*$",
        _bound_behind,
    ),
    _behind("at most"),
    _behind("at least"),
    _behind("about"),
    (
        r"(?i)^\s*(?:circa\.?|around|roughly|some|appr\.?|c\.|abt\.?)(?=[\s0-9])",
        rewritten("This word for a rough value is not read here.", "about"),
    ),
    (
        rf"(?i)^\s*(?:from|between)\s+(?P<low>{SIGNED}[^0-9]{{0,20}}?)\s+(?:and|to|-)\s+(?=[-\u22120-9])",
        rewritten("A range starts with its first number.", r"\g<low> to "),
    ),
    (r"(?i)^\s*(?:from|between)\b", always("A range starts with its first number.", 'Write "40 to 44 N·m".')),
    (r"(?i)^\s*(?:an?\s+)?(?P<part>half|quarter|three[\s-]+quarters?)(?:\s+of)?(?:\s+an?)?[\s-]+", _part),
    (r"(?i)\bper\s?cent\b|\bpct\b", rewritten("A percentage is written with its sign.", "%")),
    (
        r"(?P<unit>psi|PSI|[mk]?bar|[kM]Pa)\s?\(?(?:abs(?:olute)?|ga(?:uge)?|gage|[ag])(?![^\W_])\)?",
        rewritten(
            "From where the pressure is counted is no part of its unit.",
            r"\g<unit>",
            "Say gauge or absolute in the value's name.",
        ),
    ),
    (
        r"(?<=[0-9 ])(?P<unit>[mk]?V|m?A)\s?(?:AC|DC|ac|dc)(?![^\W_])",
        rewritten(_ELSEWHERE, r"\g<unit>", "Say direct or alternating in the value's name."),
    ),
    (
        rf"(?P<word>{_VOLUMES})\.?\s*\(?(?P<nation>U\.?S\.?|UK|[iI]mp\.?|imperial)\)?(?![^\W_])",
        _nation,
    ),
)
"""In the order in which they are looked for, behind the faults of numbers."""


def _sides(found: re.Match[str]) -> Told:
    return Told("The two sides of the tolerance are not parted.", instead=(f"+{found['plus']}/-{found['minus']}",))


def _sides_apart(found: re.Match[str]) -> Told:
    text = f"{found['first']} +{found['plus']}/-{found['minus']} {found['unit']}"
    return Told("The unit stands on each side of the tolerance.", instead=(text,))


def _bracketed(found: re.Match[str]) -> Told:
    unit, tolerance = (found["unit"] or found["after"]).strip(), found["tolerance"].strip()
    parts = (found["first"], unit, tolerance) if "%" in tolerance else (found["first"], tolerance, unit)
    return Told("The tolerance stands in brackets.", instead=(" ".join(parts).strip(),))


_MINUS = "[-‐‑–\u2212]"
_FIRST = rf"(?P<first>{SIGNED})(?:\s*+(?:{UNIT}))?"

SIGNS: tuple[Fault, ...] = (
    (r"^\s*[–—‐‑]\s?(?=[0-9])", rewritten("A dash is not a minus.", "-")),
    (rf"\+\s*(?P<plus>{NUMBER})\s*{_MINUS}\s*(?P<minus>{NUMBER})", _sides),
    (
        rf"{_FIRST}\s*\+\s*(?P<plus>{NUMBER})(?:\s*+(?:{UNIT}))?\s*/\s*{_MINUS}\s*(?P<minus>{NUMBER})\s*+(?P<unit>{UNIT})",
        _sides_apart,
    ),
    (
        rf"(?P<first>{SIGNED})(?P<unit>(?:\s*+(?:{UNIT}))?)\s*\(\s*(?P<tolerance>[±+][^()]{{1,40}})\)(?P<after>(?:\s*+(?:{UNIT}))?)",
        _bracketed,
    ),
    (r"[≧⩾]\s*", rewritten("The sign of a limit is not the one that is read.", "≥ ")),
    (r"[≦⩽]\s*", rewritten("The sign of a limit is not the one that is read.", "≤ ")),
)
"""Faults of signs, looked for before those of two numbers."""
