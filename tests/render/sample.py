"""A booklet written by hand that holds every kind of block, with short and with long texts.

The shop, the loader and every value in it are invented.
"""

from __future__ import annotations

from authoring.booklet.blocks import (
    Asset,
    Banner,
    Booklet,
    Chapter,
    Cover,
    End,
    Facts,
    FirstSteps,
    Form,
    FormLine,
    SignalWords,
)
from authoring.booklet.step_parts import Caution, Choice, Step
from authoring.booklet.words import Amount, Blank, Bullets, Link, Named, Paragraph, Words
from tests.render.sample_drawings import STRIP
from tests.render.sample_parts import (
    BURN,
    CRUSH,
    FITMENTS,
    HUB,
    HUB_DRAWING,
    LEVEL,
    MEASURE,
    NO_TORQUE,
    NOTHING,
    NUT_TORQUE,
    OPTIONS,
    PLUG_TORQUE,
    REASON,
    SEAL,
    SEAL_DRAWING,
    SLIP,
    THREAD,
    TIP,
    TOOLS,
    WEAR,
    WHICH,
    photograph,
    say,
    tell,
)
from tests.render.sample_rare import rare


def _steps() -> tuple[Step, ...]:
    return (
        Step("s1", "1", "", (CRUSH,), say("Lower the loader onto two ", Named("stands", "tools"), "."), ()),
        Step(
            "s2",
            "2",
            "Only housing A or B with a drain plug",
            (BURN, SLIP),
            say("Remove the ", Named("drain plug", "hub", turn_to=True), ". Catch the oil in the tray."),
            (HUB, TIP),
        ),
        Step("s3", "3", "", (), say("Clean the thread."), ()),
        Step(
            "s4",
            "4",
            "",
            (THREAD,),
            say("Fit the ", Named("drain plug"), " with a new ", Named("sealing ring"), "."),
            (PLUG_TORQUE,),
        ),
        Step(
            "s5",
            "5",
            "",
            (),
            say("Choose the ", Named("shaft seal", "which-seal"), " that suits the housing."),
            (WHICH, REASON),
        ),
        Step("s6", "6", "", (), say("Measure the shaft."), (MEASURE,)),
        Step(
            "s7",
            "7",
            "",
            (),
            say("Press the seal in, the closed face outwards, until it is level with the bore all round."),
            (SEAL, Bullets((say("no hammer on the seal"), say("turn the tool a quarter after each push")))),
        ),
        Step("s8", "8", "", (), say("Fill ", Amount("2.4 l", "2.5 US qt"), " of gear oil."), (LEVEL,)),
        Step(
            "s9",
            "9",
            "",
            (),
            say("Fit the wheel. Start all six nuts by hand before you tighten any. Tighten crosswise."),
            (NUT_TORQUE, NO_TORQUE),
        ),
    )


def _front() -> Chapter:
    return Chapter(
        "safety",
        "1",
        "Before you begin",
        1,
        (
            SignalWords(
                (
                    ("DANGER", "person", "If you do not avoid it, it will kill or maim."),
                    ("WARNING", "person", "If you do not avoid it, it can kill or maim."),
                    ("CAUTION", "person", "If you do not avoid it, it can hurt you."),
                    ("NOTICE", "equipment", "It can damage the machine or the parts. Nobody is hurt."),
                )
            ),
            Caution(
                "drive",
                "WARNING",
                "person",
                "general",
                say("The loader can roll."),
                say("It runs over feet and tools."),
                say("Keep the parking brake on and chocks at both wheels of one side."),
            ),
            Paragraph(say("Stop when something is not as this booklet says. Ask before you go on.")),
            TOOLS,
            NOTHING,
        ),
        new_page=True,
    )


def _close() -> Chapter:
    return Chapter(
        "close",
        "3",
        "Close the job",
        1,
        (
            Bullets((say("Count tools and parts."), say("Take the oil to the waste drum.")), ordered=True),
            Facts((("Oil out", say(Blank("l"))), ("Signed", say(Blank())))),
            WEAR,
            FirstSteps(
                (
                    ("Whatever has happened", (say("Call for help."), say("Stop the engine."))),
                    ("Burn", (say("Hold it under cool water."),)),
                )
            ),
            Form(
                "note",
                "For whoever comes next",
                (
                    FormLine("Now", say("a hose leads to the ", Named("drain plug"))),
                    FormLine("What was seen", lines=3),
                    FormLine("Name and date", lines=1),
                ),
                "Leave it with the machine.",
                cut=True,
            ),
            Banner("DO NOT DRIVE YET", tell("Another person checks the nuts first.")),
        ),
    )


def _notes() -> Chapter:
    return Chapter(
        "notes",
        "3.1",
        "Where the values come from",
        2,
        (
            Paragraph(
                say(
                    "See ",
                    Link("the shop's data sheets", "https://example.org/fl-21?sheet=2&table=1"),
                    ", kept at the bench. ",
                    Words("Never", "emphasis"),
                    " measure from a worn part.",
                )
            ),
            Choice("spare-ring", "ring", say("Either will do."), WHICH.rows),
            REASON,
            STRIP,
            End("END OF PROCEDURE"),
        ),
    )


def sample(trial: str = "NOT VALIDATED") -> Booklet:
    """Return the whole booklet; without a `trial` it says that somebody has tried it."""
    work = Chapter("work", "2", "Drain, seal and fill", 1, _steps(), applies="All fitments", new_page=True)
    return Booklet(
        "FL-P-21-03",
        "Change the oil and the shaft seal of a wheel drive",
        "Fennel Lane Plant Workshop",
        "Wren 9 loader, wheel drive",
        "C",
        "2026-03-14",
        "All fitments",
        trial,
        Cover(
            tell("The wheel drive loses oil at the shaft. This job drains it, replaces the seal and fills it again."),
            Facts(
                (
                    ("For", say("A technician who has done this job once under guidance")),
                    ("Persons", say("1, and a second for step 1")),
                    ("Time", say("2 h 30 min")),
                    ("Approved by", say("R. Alder, 2026-03-14")),
                )
            ),
            FITMENTS,
            Banner("NOT VALIDATED", tell("Nobody has yet tried this revision on a machine. Do not rely on it alone."))
            if trial
            else None,
            tell("The maker's data, the law of the place and a qualified person come before this booklet."),
            OPTIONS,
        ),
        (_front(), work, rare(), _close(), _notes()),
        {
            "hub.svg": Asset("image/svg+xml", HUB_DRAWING),
            "seal.svg": Asset("image/svg+xml", SEAL_DRAWING),
            "wear.png": Asset("image/png", photograph()),
        },
    )
