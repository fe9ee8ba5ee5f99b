"""The chapter of the sample booklet that holds what a job rarely says."""

from __future__ import annotations

from msgspec import structs

from authoring.booklet.blocks import Chapter, Methods, Rest
from authoring.booklet.step_parts import Aside, Checkpoint, ChoiceRow, Figure, Noticed, Outcome, Step, StepPart
from authoring.booklet.words import Amount, Blank, Bullets, Named, Paragraph, Words
from tests.render.sample_drawings import FACE, LEVEL_AT, PATTERN, ROW, SEALS
from tests.render.sample_parts import HUB, NUT_TORQUE, WHICH, say, tell

NEEDS = (
    Aside("Optional", tell("This step may be skipped. Worth doing where the cover sticks.")),
    Aside("Only if", tell(Named("step 4", "s4"), " was done")),
    Aside("Persons", tell("2 for this step")),
    Aside("Must be", tell(Named("engine"), ": stopped; ", Named("wheel drive"), ": ", Amount("30 °C", "86 °F"))),
    Aside("While", tell("your other hand holds the ", Named("catch"), ", pressed down")),
    Aside("Critical", tell(Words("wheel nut", "strong"), ": It keeps the wheel on.")),
)
MANNER = (
    Aside(
        "How", (Bullets((say("evenly, a little on each side"), say("no tool on the face of the joint"))),), close=True
    ),
    Aside("Way round", tell("the lip towards the ", Named("gear case"), " at 7:30 on the face of a clock"), close=True),
    Aside("Done when", tell(Words("Heard: ", "strong"), "It clicks once."), close=True),
    Aside(
        "Keep clear",
        tell("of the ", Named("brake hose"), ", ", Amount("at least 8 mm", "at least 0.32 in")),
        close=True,
    ),
)
RELEASE = Aside(
    "Release",
    (
        Paragraph(say("the plug of the speed sensor, in this order:")),
        Bullets((say("Pull the catch."), say("Press it."), say("Draw the plug off.")), ordered=True),
    ),
    close=True,
)
ROUNDS = Aside("Repeat", tell("Do this step again until no bubble shows. Do it 5 times at most."), close=True, rounds=5)
DEADLINE = Aside(
    "In time",
    (
        Paragraph(say("at most ", Amount("3 min"), ": begun at ", Blank(label="Time at which it began"))),
        Paragraph(say(Words("Too late: ", "strong"), "Warm the case once more.")),
    ),
    close=True,
)
UNASKED = Noticed(
    "unasked",
    (
        Outcome(
            say("The cover is blue from heat."), say("Stop the job."), good=False, more=say("It bears on the seal.")
        ),
        Outcome(say("A rag lies in the case."), say("Go on."), good=True, applies="Only housing B"),
    ),
)
LOOK = Checkpoint(
    "pads",
    "Look",
    say("pads of the brake"),
    (),
    (),
    (
        Outcome(say("Grey all over. Like number 1 on ", Named("figure 1", "hub"), "."), say("Go on."), good=True),
        Outcome(
            say("A bright band."),
            say("Put it right, then check again."),
            good=False,
            more=say("Do this 2 times at most. If that does not help: Ask the workshop lead."),
        ),
    ),
    hold=True,
    notes=(say("Compare it with ", Named("figure 1", "hub"), "."), say("The result decides only for housing A.")),
    signed=say("Met, name ", Blank(label="Name of who met it"), " time ", Blank(label="Time at which it was met")),
)
BOLTS = Checkpoint(
    "bolts",
    "Measure",
    say("case bolts"),
    say(Amount("34.0 mm", "1.339 in"), " to ", Amount("35.5 mm", "1.398 in")),
    tuple(say(f"{number} ", Blank("mm", f"case bolts, number {number}, in mm")) for number in (1, 2, 3, 4)),
    (Outcome(say("All lie inside the window."), say("Go on."), good=True),),
)
JOINT = structs.replace(
    NUT_TORQUE,
    applies="",
    lines=(
        ("Threads", say("dry")),
        ("Stages", say(Amount("60 N·m", "44 lbf·ft"), ", then ", Amount("189 N·m", "139 lbf·ft"))),
        ("Order", say("1, 4, 2, 5, 3, 6")),
        ("Joint", say("class A: somebody's life depends on it")),
        ("Initials", say("tightened ", Blank(label="Who tightened"), " second person ", Blank(label="Who looked"))),
    ),
    derived=(
        ("Clamp force", say(Amount("11 kN to 19 kN"), ", unverified: 55 to 86\u00a0% of what the bolt bears.")),
        ("Turn", say("draws head and nut together by ", Amount("0.29 mm"), ".")),
    ),
)
EQUAL = structs.replace(
    WHICH,
    id="equal-seals",
    rows=(
        ChoiceRow("Shaft seal, brown", "FL 35-52-8", say("housing A"), say("brown rubber"), tick=True),
        ChoiceRow("Shaft seal, black", "FL 35-52-9", say("does as well: either will do"), (), tick=True),
    ),
    notes=(say(Words("The wrong one: ", "strong"), "It fits as well, and leaks after a week."),),
)
AFTER: Figure = structs.replace(HUB, id="hub-after", number="4", shows="after the step")


def _step(number: int, text: str, *parts: StepPart) -> Step:
    return Step(f"r{number}", str(number), "", (), say(text), parts)


def rare() -> Chapter:
    """Return the chapter."""
    return Chapter(
        "rare",
        "",
        "Fit the cover",
        2,
        (
            Aside("Bench", tell("Work on the cover at the bench.")),
            structs.replace(_step(10, "Lift off the cover.", *MANNER, UNASKED), before=NEEDS),
            _step(11, "Unplug the speed sensor.", RELEASE),
            Methods(("12a", "12b"), tell("Either way the case is warm enough.")),
            Step("r12a", "12a", "", (), say("Put the case in the oven."), (DEADLINE,)),
            Step("r12b", "12b", "", (), say("Lay the case on the hot plate."), ()),
            _step(13, "Look at the pads.", LOOK, AFTER, BOLTS),
            _step(14, "Tighten the nuts.", JOINT),
            _step(15, "Bleed the drive.", ROUNDS),
            Step("r16", "16", "", (), say("Press in the seal."), (EQUAL,)),
            _step(17, "Fit the wheel, and look at the level.", FACE, PATTERN),
            _step(18, "Look at the level, and take the right seal.", ROW, LEVEL_AT, SEALS),
            structs.replace(UNASKED, id="unasked-in-section"),
            Rest(say("The drive stands shut, and its wheel lies beside it.")),
        ),
        phase="refit",
        time=say(Amount("20 min")),
    )
