"""The pieces of the sample booklet: its words, pictures, safety messages, torques, checks and tables."""

from __future__ import annotations

import io

from PIL import Image, ImageDraw

from authoring.booklet.blocks import Cell, Table
from authoring.booklet.step_parts import (
    Aside,
    Callout,
    Caution,
    Checkpoint,
    Choice,
    ChoiceRow,
    Figure,
    LimitRow,
    Outcome,
    TorqueCallout,
)
from authoring.booklet.words import Amount, Blank, Bullets, Inline, Named, Paragraph, Passage, Pick, Text, Words


def say(*pieces: str | Inline) -> Text:
    """Return a text of plain words and other pieces."""
    return tuple(Words(piece) if isinstance(piece, str) else piece for piece in pieces)


def tell(*pieces: str | Inline) -> Passage:
    """Return a passage of one paragraph."""
    return (Paragraph(say(*pieces)),)


HUB_DRAWING = b"""<svg xmlns="http://www.w3.org/2000/svg" width="520" height="400" viewBox="0 0 520 400">
<g fill="none" stroke="#141414" stroke-width="3"><circle cx="210" cy="200" r="160"/>
<circle cx="210" cy="200" r="112" fill="#ececec"/><circle cx="210" cy="200" r="46" fill="#fff"/>
<circle cx="210" cy="66" r="13"/><circle cx="326" cy="133" r="13"/><circle cx="326" cy="267" r="13"/>
<circle cx="210" cy="334" r="13"/><circle cx="94" cy="267" r="13"/><circle cx="94" cy="133" r="13"/>
<path d="M368 170h80v60h-80"/><path d="M448 182h50M448 218h50"/></g>
<g fill="#141414"><path d="M198 286h24v18h-24zM290 190h18v20h-18z"/></g></svg>"""

SEAL_DRAWING = b"""<svg xmlns="http://www.w3.org/2000/svg" width="300" height="470" viewBox="0 0 300 470">
<g fill="#ddd" stroke="#141414" stroke-width="3"><rect x="60" y="20" width="60" height="430"/>
<path d="M120 60h70l40 40v250l-40 40h-70z" fill="#f4f4f4"/></g>
<path d="M230 225h60" stroke="#141414" stroke-width="3"/></svg>"""


def photograph() -> bytes:
    """Return a picture of many greys, as a camera would give."""
    picture = Image.new("L", (900, 560), 205)
    pen = ImageDraw.Draw(picture)
    for ring in range(220, 0, -4):
        pen.ellipse((450 - ring, 280 - ring, 450 + ring, 280 + ring), fill=60 + ring // 2)
    pen.rectangle((60, 470, 840, 560), fill=120)
    content = io.BytesIO()
    picture.save(content, "PNG")
    return content.getvalue()


BURN = Caution(
    "burn",
    "WARNING",
    "person",
    "hot-surface",
    say("The wheel drive is hot after work, up to ", Amount("95 °C", "203 °F"), "."),
    say("Oil and metal at this temperature burn skin at the first touch."),
    say(
        "Wait until the housing is below ",
        Amount("45 °C", "113 °F"),
        ". Wear gloves. Keep your face away from the plug.",
    ),
)
CRUSH = Caution(
    "crush",
    "DANGER",
    "person",
    "raised-load",
    say("A raised loader falls when a jack alone carries it."),
    say("It crushes whoever is under it."),
    say("Set both stands. Let the loader down on them. Keep clear of the underside until it rests."),
)
SLIP = Caution(
    "slip",
    "CAUTION",
    "person",
    "slipping",
    say("Spilled oil makes the floor slippery."),
    say("You can slip and fall."),
    say("Keep a tray under the plug. Wipe up each spill at once."),
    "Only where the drive has a drain plug",
)
THREAD = Caution(
    "thread",
    "NOTICE",
    "equipment",
    "",
    say("The plug's thread is cut in aluminium."),
    say("A plug that starts crooked strips it, and the housing is lost."),
    say("Do not use a tool before three full turns by hand."),
)

PLUG_TORQUE = TorqueCallout(
    "drain plug",
    1,
    "M18 × 1.5",
    (LimitRow("N·m", "38", "40", "42"), LimitRow("lbf·ft", "28.1", "29.5", "30.9")),
    "Fennel Lane data sheet FL-21, revision 3, table 2",
    "With a new sealing ring. By hand first.",
)
NUT_TORQUE = TorqueCallout(
    "wheel nuts",
    6,
    "M16 × 1.5",
    (LimitRow("N·m", None, "189", None), LimitRow("lbf·ft", None, "139", None)),
    "Fennel Lane data sheet FL-21, revision 3, table 1. The sheet gives only a nominal.",
    applies="Only steel rims",
)
NO_TORQUE = TorqueCallout(
    "hose clip",
    1,
    "",
    (),
    "",
    "No torque is published. Tighten until the hose no longer turns by hand.",
)

HUB = Figure(
    "hub",
    "1",
    "Wheel drive, seen from outside, machine on its wheels",
    "Drawing of a round wheel drive with six bolts, a plug at its lowest point and one on the right.",
    "hub.svg",
    520,
    400,
    (Callout(1, "drain plug, at the lowest point", 40.4, 73.7), Callout(2, "level plug, towards the rear", 57.5, 50)),
)
SEAL = Figure(
    "seal",
    "2",
    "Shaft seal in its bore, cut through",
    "Drawing of a seal cut through: the closed face stands on the left, the lip points right.",
    "seal.svg",
    300,
    470,
    (Callout(1, "closed face, outwards", 30, 20), Callout(2, "lip, towards the oil", 72, 50)),
)
WEAR = Figure(
    "wear",
    "3",
    "How a worn cover looks",
    "Photograph of a round cover, dark in the middle where the paint has worn off.",
    "wear.png",
    900,
    560,
    (Callout(1, "bright ring: worn", 50, 50), Callout(2, "paint: sound", 68, 70), Callout(3, "floor", 12, 93)),
)

LEVEL = Checkpoint(
    "level",
    "Look at",
    say("the oil in the level hole of the ", Named("wheel drive", "hub"), "."),
    say("Valid while the housing is between ", Amount("15 °C", "59 °F"), " and ", Amount("35 °C", "95 °F"), "."),
    (),
    (
        Outcome(say("Oil stands at the lower edge."), say("Go on."), good=True),
        Outcome(
            say("Oil stands lower, or none is seen."),
            say("Top up with ", Named("gear oil", "tools"), ", then look again."),
            good=False,
        ),
        Outcome(
            say("Oil runs out."),
            say("Let it run until it only drips. If it is milky, stop and ask: water has come in."),
            good=False,
        ),
    ),
)
MEASURE = Checkpoint(
    "shaft",
    "Measure",
    say("the diameter of the shaft where the lip runs."),
    (),
    (say(Blank("mm")),),
    (
        Outcome(say(Amount("34.95 mm", "1.376 in"), " to ", Amount("35.00 mm", "1.378 in")), say("Go on."), good=True),
        Outcome(
            say("Less than ", Amount("34.95 mm", "1.376 in")),
            say("Replace the shaft: ", Named("FL-P-21-07, Replace the wheel shaft"), "."),
            good=False,
        ),
    ),
    hold=True,
)
WHICH = Choice(
    "which-seal",
    "shaft seal",
    say("Look at the number cast into the housing. Both seals fit the bore."),
    (
        ChoiceRow(
            "Shaft seal, 8 mm",
            "FL 35-52-8",
            say("Housing number ends in ", Words("A", "strong")),
            say("8 mm thick; no groove on the closed face"),
        ),
        ChoiceRow(
            "Shaft seal, 10 mm",
            "FL 35-52-10",
            say("Housing number ends in ", Words("B", "strong")),
            say("10 mm thick; one groove on the closed face"),
        ),
    ),
)
TIP = Aside(
    "Tip", tell("Warm oil runs out faster. Drive the loader for ten minutes first, then let it cool below the limit.")
)
REASON = Aside(
    "Why",
    (
        Paragraph(say("The two seals look alike in the hand.")),
        Bullets((say("the thin one leaks after a week"), say("the thick one binds"))),
    ),
)

TOOLS = Table(
    "tools",
    "Tools and consumables",
    ("Item", "Number", "Amount", "Laid out"),
    (
        (Cell(say("Torque wrench, 20 to 100 N·m")), Cell(say("T-14")), Cell(say("1")), Cell(tick=True)),
        (Cell(say("Oil tray, at least 5 l")), Cell(say("T-03")), Cell(say("1")), Cell(tick=True)),
        (
            Cell(say("Gear oil, the grade named on the cover of this booklet")),
            Cell(say("C-02")),
            Cell(say("2.4 l")),
            Cell(tick=True),
        ),
    ),
    (5, 2, 2, 2),
    numeric=(2,),
    note="Counted again at the end.",
)
NOTHING = Table("spares", "Spare parts", ("Part", "Number"), (), (1, 1))
FITMENTS = Table(
    "fitments",
    "This booklet covers",
    ("Feature", "Covered"),
    ((Cell(say("Housing")), Cell(say("A, B"))), (Cell(say("Rims")), Cell(say("steel, aluminium")))),
    (1, 2),
)
OPTIONS = Table(
    "options",
    "Options of this job",
    ("What is decided", "Choices"),
    ((Cell(say("Which oil goes in?")), Cell(say(Pick("summer oil"), Pick("winter oil")))),),
    (2, 1),
)
