"""One drawing of each kind, for the sample booklet."""

from __future__ import annotations

from authoring.booklet.shapes import Band, Bar, BoltPattern, Dial, Disc, Lane, Stint, Strip, ToScale, Track, Windows
from authoring.booklet.step_parts import Drawing
from tests.render.sample_parts import say

PATTERN = Drawing(
    "Order of tightening: wheel nuts",
    "Drawing: 4 wheel nuts, evenly on a circle. Tighten first at 12 o'clock, then at 6, at 3 and at 9.",
    BoltPattern(
        width=48.4,
        height=54.8,
        x=24.2,
        y=30.6,
        circle=20,
        radius=3.6,
        discs=(Disc(24.2, 10.6, 1), Disc(44.2, 30.6, 3), Disc(24.2, 50.6, 2), Disc(4.2, 30.6, 4)),
    ),
    (say("The numbers say which is tightened first."), say("Seen from outside.")),
)
ROW = Drawing(
    "Order of tightening: cover bolts",
    "Drawing: 11 cover bolts in a row. Tighten from the middle outwards.",
    BoltPattern(
        width=110,
        height=15,
        x=55,
        y=10.6,
        circle=0,
        radius=3.6,
        discs=tuple(Disc(5.0 + 10 * at, 10.6, 11 - at) for at in range(11)),
        outline=((5, 10.6), (105, 10.6)),
    ),
    (say("Seen from above."),),
)
FACE = Drawing(
    "The paint mark at 7:30 on the face of a clock",
    "Drawing of the face of a clock: the paint mark at half past seven.",
    Dial(225.0),
    (say("Seen from outside."),),
)
SEALS = Drawing(
    "Shaft seal: thickness",
    "Drawing to scale of the thickness: 8 mm, and 10 mm with limits.",
    ToScale(
        (
            Bar("FL 35-52-8", 8, 8, "8.0 mm", right=True),
            Bar("NOT THIS ONE: FL 35-52-10", 9.2, 10, "9.2 to 10.0 mm", right=False),
        ),
        20,
        "20 mm scale",
    ),
    (say("Real size."),),
)
LEVEL_AT = Drawing(
    "Temperature for the level",
    "Drawing of the temperatures at which the level counts: 30 to 40 °C or 34 to 44 °C, later 65 to 75 °C.",
    Windows(
        110,
        (
            Lane("always open", (Band(11, 33, "30 to 40 °C"), Band(20, 42, "34 to 44 °C"))),
            Lane("behind a thermostat", (Band(88, 105, "65 to 75 °C"),), shut=72.6, open=80),
        ),
        ((0, "25 °C"), (55, "50 °C"), (110, "75 °C")),
    ),
    (say("Hatched: the cooler is shut."),),
)
STRIP = Drawing(
    "Energy and condition",
    "Drawing of the steps from 1 to 12. master switch: isolated: from step 2 to step 11. engine: runs: at step 1.",
    Strip(
        52,
        102,
        (
            Track(("master switch: isolated",), safe=True, stints=(Stint(9.8, 92.2),)),
            Track(("engine: runs",), safe=False, stints=(Stint(0, 8.5), Stint(93.5, 102))),
            Track(("brake caliper: held", "(parking brake: disc", "brake)"), safe=True, stints=(Stint(35.3, 40.8),)),
        ),
        (0, 17, 93.5),
        ((0, "1"), (17, "3"), (93.5, "A12b")),
    ),
    (say("Grey: made safe."),),
)
