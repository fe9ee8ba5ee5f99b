"""Equipment, conditions and part choices at random, as the text of a library that is read like any other.

There are more whole machines than anybody would try one by one, and a question stays small enough to be answered.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from hypothesis import strategies as st

from authoring.model.build import build_library
from authoring.model.library import Library
from authoring.model.specification import When
from authoring.source.document import Document
from authoring.source.reader import read_document
from tests.rules.overlay import overlay

PARTS = ("thin", "thick", "flat", "round", "split")
NUMBER = "FL-110"

Features = Mapping[str, tuple[str, ...]]


@dataclass(frozen=True)
class Job:
    """A procedure of one equipment: what it covers, the parts of its choice, and the conditions of its steps.

    `gives` has the names of what each part gives, itself and those that do as well, where they are not just `PARTS`.
    `steps` has the condition of a section and that of its one step, which needs the choice where `needs` says so.
    """

    features: Features
    never: tuple[When, ...] = ()
    covers: When = field(default_factory=dict)
    parts: tuple[When, ...] = ()
    steps: tuple[tuple[When, When], ...] = ()
    needs: bool = True
    options: Features = field(default_factory=dict)
    gives: tuple[tuple[str, ...], ...] = tuple((name,) for name in PARTS)


def _documents(blocks: list[tuple[str, str]], names: Sequence[str]) -> list[Document]:
    read = [read_document(name, overlay(blocks).files[name]) for name in names]
    assert not any(found for _, found in read)
    return [document for document, _ in read if document is not None]


_STOCK = json.dumps({name: {"name": name, "number": f"P-{name}"} for name in PARTS})
_KEPT = _documents([("stock", f"parts: {_STOCK}\n")], ("shop.yaml", "stock.yaml"))


def library_of(job: Job) -> Library:
    """Return the library with just this job; the words of a feature and of a value are their names."""
    features = {
        name: {"name": name, "tell": "Look at it.", "values": {value: value for value in values}}
        for name, values in job.features.items()
    }
    parts = [
        {"part": part, "when": when, "tell": "Look.", **({"equal": equal} if equal else {})}
        for (part, *equal), when in zip(job.gives, job.parts, strict=False)
    ]
    choices = {"ring": {"name": "ring", "question": "Which one?", "parts": parts}} if parts else {}
    steps = [_section(place, *whens, needs=job.needs) for place, whens in enumerate(job.steps)]
    sections = steps or [_section(0, {}, {}, needs=False)]
    options = {
        name: {"name": name, "question": "Which?", "decided-by": "lead", "values": {value: value for value in values}}
        for name, values in job.options.items()
    }
    blocks = [
        ("equipment", _written({"features": features, "never": job.never})),
        ("procedure", _written({"covers": job.covers, "options": options, "choices": choices, "sections": sections})),
    ]
    documents = _documents(blocks, ("equipment.yaml", "procedure.yaml"))
    library, found = build_library([*_KEPT, *documents], {}, partial=False)
    assert not found, found
    return library


def parts_of(gives: Iterable[tuple[str, ...]]) -> tuple[str, ...]:
    """Return the names of all parts of a choice, each once."""
    return tuple(dict.fromkeys(name for names in gives for name in names))


def _written(keys: Mapping[str, object]) -> str:
    """Return the keys that have something to say as YAML, of which JSON is a part."""
    return "".join(f"{key}: {json.dumps(value)}\n" for key, value in keys.items() if value)


def _section(place: int, around: When, when: When, *, needs: bool) -> dict[str, object]:
    do = [{"fit": "ring"}] if needs else [{"clean": "drop-box"}]
    step = {"step": "Do it.", "do": do, **({"when": when} if when else {})}
    return {"title": f"Part {place}", "steps": [step], **({"when": around} if around else {})}


@st.composite
def some_features(draw: st.DrawFn, most: int) -> Features:
    """Draw three features or more, each of two to four values."""
    counts = draw(st.lists(st.integers(2, 4), min_size=3, max_size=most))
    return {f"f{place}": tuple("abcd"[:count]) for place, count in enumerate(counts)}


@st.composite
def conditions(draw: st.DrawFn, features: Features, lowest: int, most: int) -> When:
    """Draw a condition on some of the features; it may name every value of one."""
    names = draw(st.lists(st.sampled_from(sorted(features)), min_size=lowest, max_size=most, unique=True))
    return {name: draw(some_values(features[name])) for name in names}


def some_values(values: Sequence[str], *, proper: bool = False) -> st.SearchStrategy[tuple[str, ...]]:
    """Draw one value or more, in order; not all of them where the choice is to be `proper`."""
    highest = 2 ** len(values) - (2 if proper else 1)
    return st.integers(1, highest).map(
        lambda mask: tuple(value for place, value in enumerate(values) if mask >> place & 1)
    )


def nevers(features: Features, most: int) -> st.SearchStrategy[tuple[When, ...]]:
    """Draw combinations of two or three features that never occur."""
    return st.lists(conditions(features, 2, 3), max_size=most).map(tuple)


@st.composite
def jobs_with_a_choice(draw: st.DrawFn, spoilt: str) -> Job:
    """Draw a choice that serves every machine once, then spoil it: "no", "narrow", "wide", "both" or "wholly"."""
    features = draw(some_features(7))
    parts: list[dict[str, tuple[str, ...]]] = [{}]
    for _ in range(draw(st.integers(1, len(PARTS) - 1))):
        _cut(draw, features, parts)
    if spoilt in ("narrow", "both"):
        _narrow(draw, features, parts)
    if spoilt in ("wide", "both"):
        _widen(draw, features, parts)
    if spoilt == "wholly":
        parts = [dict(draw(conditions(features, 1, 3))) for _ in parts]
    whens = st.tuples(conditions(features, 0, 1), conditions(features, 0, 1))
    return Job(
        features,
        draw(nevers(features, 3)),
        draw(conditions(features, 0, 1)),
        tuple(draw(st.permutations(parts))),
        tuple(draw(st.lists(whens, max_size=2))),
    )


def _cut(draw: st.DrawFn, features: Features, parts: list[dict[str, tuple[str, ...]]]) -> None:
    """Cut one part in two by a feature, so that both together serve what it served; one of a single value stays."""
    part = draw(st.sampled_from(parts))
    name = draw(st.sampled_from(sorted(features)))
    values = part.get(name, features[name])
    if len(values) > 1:
        mine = draw(some_values(values, proper=True))
        parts.append({**part, name: tuple(value for value in values if value not in mine)})
        part[name] = mine


def _narrow(draw: st.DrawFn, features: Features, parts: list[dict[str, tuple[str, ...]]]) -> None:
    part = draw(st.sampled_from(parts))
    wide = {name: part.get(name, values) for name, values in features.items() if len(part.get(name, values)) > 1}
    name = draw(st.sampled_from(sorted(wide or features)))
    part[name] = draw(some_values(wide.get(name, features[name]), proper=True))


def _widen(draw: st.DrawFn, features: Features, parts: list[dict[str, tuple[str, ...]]]) -> None:
    part = draw(st.sampled_from(parts))
    name = draw(st.sampled_from(sorted(part)))
    new = tuple(value for value in features[name] if value not in part[name])
    part[name] = (*part[name], *draw(some_values(new or part[name])))
    part[name] = tuple(dict.fromkeys(part[name]))


@st.composite
def jobs_with_conditions(draw: st.DrawFn, against: str) -> Job:
    """Draw a section and a step whose conditions may name an option and the choice, by a part that some machines get.

    The step's asks for what something forbids: `against` is "nothing", "section", "never" or "choice".
    """
    features, options = draw(some_features(6)), {"wish": ("wanted", "plain")}
    parts = tuple(
        dict(one) for one in draw(st.lists(conditions({**features, **options}, 1, 2), min_size=1, max_size=3))
    )
    given = st.lists(st.sampled_from(PARTS[:3]), min_size=1, max_size=2, unique=True).map(tuple)
    gives = tuple(draw(given) for _ in parts)
    named = {**features, **options, "ring": parts_of(gives)}
    around, when = dict(draw(conditions(named, 1, 2))), dict(draw(conditions(named, 1, 2)))
    never = list(draw(nevers(features, 2)))
    if against == "section":
        name = draw(st.sampled_from(sorted(features)))
        mine = draw(some_values(features[name], proper=True))
        around[name], when[name] = mine, tuple(value for value in features[name] if value not in mine)
    if against == "never":
        never.append(draw(conditions(features, 2, 2)))
        when |= never[-1]
    if against == "choice":
        place = draw(st.integers(0, len(parts) - 1))
        name = draw(st.sampled_from(sorted(parts[place])))
        parts[place][name] = draw(some_values(named[name], proper=True))
        when["ring"] = gives[place][:1]
        when[name] = tuple(value for value in named[name] if value not in parts[place][name])
    covers = draw(conditions(features, 0, 1))
    return Job(features, tuple(never), covers, parts, ((around, when),), needs=False, options=options, gives=gives)


@st.composite
def crowded_jobs(draw: st.DrawFn, around: str) -> Job:
    """Draw combinations that never occur and that rule out what is `around`: "all", "covered", or "some" of all."""
    features = draw(some_features(4))
    covers = draw(conditions(features, 1, 2))
    never: list[dict[str, tuple[str, ...]]] = [dict(covers) if around == "covered" else {}]
    for _ in range(draw(st.integers(3, 6))):
        _cut(draw, features, never)
    if around == "some":
        never.remove(draw(st.sampled_from(never)))
    return Job(features, tuple(never), covers)


@st.composite
def questions(draw: st.DrawFn, spoilt: str) -> tuple[Job, list[When], list[When]]:
    """Draw what is asked for, and what is given: just that, in pieces, which are spoilt as those of a choice are."""
    features = draw(some_features(6))
    asked = draw(st.lists(conditions(features, 0, 3), min_size=1, max_size=2))
    pieces = [dict(when) for when in asked]
    for _ in range(draw(st.integers(0, 3))):
        _cut(draw, features, pieces)
    if spoilt == "narrow":
        _narrow(draw, features, pieces)
    if spoilt == "wholly":
        pieces = [dict(draw(conditions(features, 1, 3))) for _ in pieces]
    job = Job(features, draw(nevers(features, 3)), draw(conditions(features, 0, 2)))
    return job, list(asked), list(draw(st.permutations(pieces)))
