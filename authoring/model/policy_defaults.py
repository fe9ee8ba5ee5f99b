"""What the compiler asks of every workshop, whatever its shop file says: the usual hazards, told by facts of things.

Each default has a name, under which a shop tightens it, a source, and how well that source is known.
"""

from __future__ import annotations

from collections.abc import Mapping

from authoring.model.policy import FACTS, Policy
from authoring.quantities.quantity import Quantity
from authoring.quantities.read import read_quantity

MEMORY = "from memory"
RESTATED = "read in a second party's copy"
PRINTED = "as printed in DGUV Vorschrift 79, §12"


def _bound(key: str, text: str) -> Mapping[str, Quantity]:
    read = read_quantity(text, FACTS[key][1])
    if not isinstance(read, Quantity):
        raise TypeError(read.reason)
    return {key: read}


def _named(*defaults: Policy) -> Mapping[str, Policy]:
    return {one.id: one for one in defaults}


DEFAULTS = _named(
    Policy(
        id="hot-surface",
        why="A touch of a surface above its burn threshold burns the skin.",
        bounds={"hotter-than": None},
        severity="moderate",
        likelihood="could",
        sign="hot-surface",
        sort="a hot surface",
        source="DIN EN 563:1994, forerunner of ISO 13732-1",
        status=PRINTED,
        by_facts=True,
    ),
    Policy(
        id="heavy-lift",
        why="One person lifts no more than the reference mass, and that only close to the body.",
        acts=frozenset({"remove", "fit", "hold", "trial-fit"}),
        bounds=_bound("heavier-than", "25 kg"),
        persons=2,
        source="ISO 11228-1, reference mass",
        status=MEMORY,
        by_facts=True,
    ),
    Policy(
        id="under-pressure",
        why="What is opened under pressure throws its content at whoever opens it.",
        acts=frozenset({"open", "remove", "disconnect"}),
        bounds=_bound("above-pressure", "0.5 bar"),
        severity="serious",
        likelihood="could",
        sign="pressure",
        sort="pressure",
        source="Directive 2014/68/EU, article 1, from where a pressure counts",
        status=RESTATED,
        by_facts=True,
    ),
    Policy(
        id="live-voltage",
        why="Direct voltage above 60 V can kill.",
        bounds=_bound("above-voltage", "60 V"),
        severity="death",
        likelihood="could",
        sign="electricity",
        sort="electricity",
        source="FMVSS 305, high voltage, with the limits of UN Regulation 100",
        status=RESTATED,
        by_facts=True,
    ),
    Policy(
        id="live-voltage-ac",
        why="Alternating voltage above 30 V can kill.",
        bounds=_bound("above-voltage-ac", "30 V"),
        severity="death",
        likelihood="could",
        sign="electricity",
        sort="electricity",
        source="FMVSS 305, high voltage, with the limits of UN Regulation 100",
        status=RESTATED,
        by_facts=True,
    ),
    Policy(
        id="raised-load",
        why="What is up and not held comes down on whoever is at it.",
        only_while="raised",
        severity="death",
        likelihood="could",
        sign="raised-load",
        sort="a raised load",
        source="Directive 2009/104/EC, annex II, 3.2.1",
        status=MEMORY,
        by_facts=True,
    ),
    Policy(
        id="running-machine",
        why="What turns catches a sleeve or a hand.",
        only_while="running",
        severity="serious",
        likelihood="could",
        sign="moving-parts",
        sort="moving parts",
        source="Directive 2006/42/EC, annex I, 1.3.8",
        status=MEMORY,
        by_facts=True,
    ),
)
"""The defaults by their names."""
