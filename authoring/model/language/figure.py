"""The schema of a picture."""

from __future__ import annotations

from authoring.model.language.terms import JsonSchema, group, listed, name, one_of, text

_SHARE = {"type": "number", "minimum": 0, "maximum": 100, "x-wording": "this is a number from 0 to 100"}

_CALLOUTS = listed(
    "The numbers on the picture, in order.",
    group(
        "One number and what it points at.",
        {
            "on": name("Short name of the thing pointed at."),
            "across": _SHARE | {"description": "How far across, in percent of the picture's width."},
            "down": _SHARE | {"description": "How far down, in percent of the picture's height."},
        },
        ("on", "across", "down"),
    ),
)


def figure() -> JsonSchema:
    """Return the schema of one picture of a procedure."""
    shows = one_of("When it looks like that: before, during or after the step.", "before", "during", "after")
    return group("A picture.", {**_KEYS, "shows": shows, "callouts": _CALLOUTS}, ("file", "title"))


def drawing(meaning: str) -> JsonSchema:
    """Return the schema of a picture without callouts, such as the drawing of a tool."""
    return group(meaning, _KEYS, ("file", "title"))


_KEYS: dict[str, JsonSchema] = {
    "file": {
        "type": "string",
        "pattern": r"^[A-Za-z0-9][A-Za-z0-9_/-]*\.(svg|png|jpg|jpeg)$",
        "x-wording": "this is the path of an SVG, PNG or JPEG file inside the library, with forward slashes",
        "description": "Path of the picture inside the library.",
    },
    "title": text("What the picture shows, as a title."),
    "alt": text("The same for somebody who cannot see it: what is where."),
}
