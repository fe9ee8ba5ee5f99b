"""The schema of an equipment file: what is worked on, and where each value comes from."""

from __future__ import annotations

from authoring.model.language.fasteners import FASTENERS
from authoring.model.language.fluids import FLUIDS
from authoring.model.language.items import ITEMS
from authoring.model.language.sources import sources
from authoring.model.language.terms import allow, group, listed, name, named, text, when
from authoring.model.language.values import values

_FEATURES = named(
    "In what the vehicles differ.",
    group(
        "One feature.",
        {
            "name": text("The name, without an article, such as: parking brake."),
            "tell": text("How to tell at the vehicle which value it has."),
            "values": named("The values it can have.", text("What this value is called, such as: disc brake.")),
        },
        ("name", "tell", "values"),
    ),
)

SCHEMA = group(
    "An equipment file: one kind of machine.",
    {
        "allow": allow(),
        "equipment": name("The short name procedures call it by."),
        "name": text("The name as people say it."),
        "viewpoint": text("From where left and right are meant, such as: seen from the driver's seat."),
        "features": _FEATURES,
        "never": listed("Combinations of features that do not exist.", when()),
        "sources": sources(),
        "items": ITEMS,
        "fasteners": FASTENERS,
        "fluids": FLUIDS,
        "values": values(),
    },
    ("equipment", "name", "items"),
)
