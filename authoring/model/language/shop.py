"""The schema of the shop file: who we are, our units, our sources, the safety messages we share."""

from __future__ import annotations

from authoring.model.language.policy import POLICY
from authoring.model.language.safety import message
from authoring.model.language.sources import sources
from authoring.model.language.terms import JsonSchema, allow, group, listed, named, one_of, specification, text


def _units(meaning: str) -> JsonSchema:
    return {
        "type": "array",
        "items": text("a unit, such as N·m"),
        "minItems": 1,
        "maxItems": 2,
        "uniqueItems": True,
        "x-wording": "name one unit, or two different ones: the shop's own and the one shown beside it",
        "description": meaning,
    }


SCHEMA = group(
    "The shop file: one in each library.",
    {
        "allow": allow(),
        "shop": text("The shop's name, as it stands on every booklet."),
        "signal-words": one_of(
            "The words of safety messages: ansi (DANGER, WARNING, CAUTION, NOTICE) or military (WARNING, CAUTION).",
            "ansi",
            "military",
        ),
        "units": group(
            "For each dimension the shop's own unit and, if wanted, a second one shown beside it.",
            {
                "torque": _units("Units of torque, such as [N·m, lbf·ft]."),
                "length": _units("Units of length."),
                "volume": _units("Units of volume."),
                "temperature": _units("Units of temperature."),
                "temperature-difference": _units("Units of a difference of temperature."),
                "pressure": _units("Units of pressure."),
                "mass": _units("Units of mass."),
                "time": _units("Units of time."),
                "angle": _units("Units of plane angle."),
                "force": _units("Units of force."),
                "flow": _units("Units of flow."),
                "speed-of-rotation": _units("Units of speed of rotation."),
                "voltage": _units("Units of voltage."),
                "current": _units("Units of current."),
                "resistance": _units("Units of resistance."),
                "density": _units("Units of density."),
            },
        ),
        "air": specification("How warm the air in the workshop is, for estimates of cooling, such as 15 to 25 °C."),
        "decision-rule": one_of(
            "How the blur of a gauge counts at a limit: simple (not at all) or guarded (the limits move in by it).",
            "simple",
            "guarded",
        ),
        "people": named(
            "Those who write and approve procedures.",
            group(
                "One person.",
                {
                    "name": text("Full name."),
                    "role": text("What they do in the shop."),
                    "may": listed("What they may do with a procedure.", one_of("write or approve", "write", "approve")),
                },
                ("name", "role", "may"),
            ),
        ),
        "sources": sources(),
        "hazards": named(
            "The kinds of hazard that the shop knows; safety messages and items refer to them.",
            group(
                "One kind of hazard.",
                {
                    "name": text("The name, without an article, such as: hot surface."),
                    "only-while": one_of("Only while something runs; always when left out.", "running"),
                    "emergency": listed("What to do first when it has happened.", text("one thing to do")),
                },
                ("name", "emergency"),
            ),
        ),
        "emergency": listed("What to do first whatever has happened.", text("one thing to do")),
        "safety": named("Safety messages that several procedures share.", message()),
        "policy": POLICY,
        "retention": text("How long filled-in booklets are kept, and where."),
    },
    ("shop", "units", "people"),
)
