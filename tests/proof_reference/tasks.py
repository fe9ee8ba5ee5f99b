"""The small jobs that a story is told of, each sound: whatever comes off is promised to go back on."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from tests.proof_reference.story import Story

Group = dict[str, Any]

RAISE = "RW-200"
LOWER = "RW-300"


def change_oil(story: Story) -> None:
    """Drain the oil and fill it again, by an amount, to its level, or both; at times look at it running."""
    luck = story.luck
    story.begin("drain-plug", "level-plug")
    story.do("box", {"remove": "drain-plug"}, {"drain": "oil"})
    if luck.random() < 0.3:
        gear_out(story)
        story.together(0)
        story.off = {"drain-plug", "level-plug"}
    story.do("box", {"start": "drain-plug"}, {"tighten": "drain-plug"})
    story.do("box", {"remove": "level-plug"})
    ways: list[list[Group]] = [
        [{"fill": {"what": "oil", "amount": "first-fill"}}],
        [{"fill-to-level": {"what": "oil", "at": "level-plug"}}],
        [{"fill": {"what": "oil", "amount": "first-fill"}}, {"fill-to-level": {"what": "oil", "at": "level-plug"}}],
    ]
    for action in luck.choice(ways):
        story.do("box", action)
    runs = "open-while-running" in story.machine.fasteners["level-plug"] and luck.random() < 0.5
    closing = [{"start": "level-plug"}, {"tighten": "level-plug"}]
    running = [{"run": "engine"}, {"top-up": "oil"}, {"stop": "engine"}]
    for action in [*running, *closing] if runs else closing:
        story.do("box", action)


def change_coolant(story: Story) -> None:
    """Draw the coolant out and fill it again."""
    story.do("box", {"extract": "coolant"})
    story.do("box", {"fill": {"what": "coolant", "amount": "first-fill"}}, {"bleed": "coolant"})


def renew_filter(story: Story) -> None:
    """Take the filter out and put a new one in its place."""
    story.begin("filter")
    story.do("filter", {"remove": "filter"}, {"discard": "filter"})
    new = [{"fit": {"what": "new-filter", "replaces": "filter"}}]
    story.afterwards(story.step("filter", *new))


def gear_out(story: Story) -> None:
    """Take the gear out, at times try it, hang it up with grease, or leave its place empty."""
    luck = story.luck
    story.begin("gear")
    story.do("gear", {"remove": "gear"})
    chance = luck.random()
    trapped = "plate" in story.machine.covers_of("gear") and not story.machine.when("plate")
    if chance < 0.3:
        story.do("gear", {"trial-fit": "gear"}, {"remove": "gear"})
        story.afterwards(story.step("gear", {"fit": "gear"}))
    elif chance < 0.5:
        story.do("gear", {"discard": "gear"})
        story.do("gear", {"leave-empty": "gear"})
    elif chance < 0.7 and trapped:
        story.afterwards(story.step("gear", {"hold": {"what": "gear", "by": "grease", "until": "plate"}}))
    else:
        story.do("gear", {"clean": "gear"})
        story.afterwards(story.step("gear", {"seat": "gear"}))


def pump_out(story: Story) -> None:
    """Take the pump to the bench, at times renew it whole."""
    luck = story.luck
    story.begin("pump", "rotor")
    renewed = luck.random() < 0.3
    story.unbolt("pump", replaced_by="new-pump" if renewed else "")
    if luck.random() < 0.6:
        story.do("rotor", {"remove": "rotor"}, {"clean": "rotor"})
        if not renewed:
            story.do("rotor", {"fit": "rotor"})


def cap_off(story: Story) -> None:
    """Take the cap off and put it back."""
    story.begin("cap")
    story.unbolt("cap")


def lamp_out(story: Story) -> None:
    """Make the machine dead and part the lamp's plug."""
    if "modifications" in story.told:
        return
    story.begin("lamp", "isolator")
    story.do("isolator", {"isolate": "isolator"})
    story.do("lamp", {"disconnect": "lamp"}, needs={"isolator": "isolated"})
    story.afterwards(story.step("lamp", {"connect": "lamp"}), story.step("isolator", {"restore": "isolator"}))


def guard_left_out(story: Story) -> None:
    """Take the lamp off for good, as a modification of the machine."""
    story.begin("lamp")
    story.do("lamp", {"remove": "lamp"})
    modification: Group = {"name": "machine without its lamp", "as-found": "A lamp.", "as-left": "No lamp."}
    modification |= {"leaves-out": ["lamp"], "tell": ["driver"]}
    if story.machine.when("lamp"):
        modification["when"] = story.machine.when("lamp")
    story.told["modifications"] = {"no-lamp": modification}


def skip_up(story: Story) -> None:
    """Raise the skip, prop or lock it, and let it down at the end."""
    story.begin("skip")
    held = story.luck.choice(["support", "lock"])
    story.do("skip", {"raise": "skip"}, {held: "skip"})
    story.do("skip", {"clean": "box"}, needs={"skip": "raised"})
    story.afterwards(story.step("skip", {"release": "skip"}, {"lower": "skip"}))


def rods(story: Story) -> None:
    """Renew the bush of each rod with its own side's."""
    for side in story.luck.sample(["left", "right"], story.luck.randint(1, 2)):
        story.begin(f"{side}-rod", f"{side}-bush")
        story.do("box", {"remove": f"{side}-bush"})
        story.do("box", {"fit": {"what": f"{side}-bush", "on": f"{side}-rod"}})


def shift(story: Story) -> None:
    """Set the lever, and do what asks for its position."""
    story.reach("lever")
    position = story.luck.choice(["high", "neutral"])
    story.do("lever", {"set": {"what": "lever", "position": position}})
    story.do("box", {"clean": "box"}, needs={"lever": position})


def engine_on(story: Story) -> None:
    """Run the engine with all together, and stop it."""
    story.together(0)
    story.off.clear()
    story.do("engine", {"run": "engine"})
    story.do("engine", {"clean": "box"}, needs={"engine": "running"})
    story.do("engine", {"stop": "engine"})


def right_ring(story: Story) -> None:
    """Measure which ring it is, and fit it."""
    if "choices" in story.told:
        return
    parts = [{"part": part, "tell": "Look at its edge."} for part in ("thin-ring", "thick-ring")]
    story.told["choices"] = {"ring": {"name": "ring", "question": "How wide is the groove?", "parts": parts}}
    story.told["choices"]["ring"]["if-wrong"] = "It leaks when it is warm."
    story.do("box", {"measure": {"what": "ring", "outcomes": [{"found": "It is the one.", "then": "go-on"}]}})
    story.do("box", {"fit": "ring"})


def paint(story: Story) -> None:
    """Ask the customer, and follow the answer."""
    if "options" in story.told:
        return
    values = {"wanted": "new paint", "plain": "no paint"}
    asked = {"name": "paint", "question": "Is the box painted?", "decided-by": "customer", "values": values}
    story.told["options"] = {"paint": asked}
    story.do("box", {"ask": {"what": "paint", "who": "customer"}})
    story.steps.append({"when": {"paint": ["wanted"]}, "do": [{"clean": "box"}]})


def skip_by_others(story: Story) -> None:
    """Have another procedure raise the skip and leave it up, and one more let it down."""
    story.together(0)
    story.off.clear()
    story.reach("skip")
    story.do("skip", {"carry-out": RAISE})
    story.do("skip", {"clean": "box"}, needs={"skip": "raised"})
    story.afterwards(story.step("skip", {"carry-out": LOWER}))


def another_job(story: Story) -> None:
    """Carry out another procedure of the library while nothing is open."""
    if story.carried:
        story.together(0)
        story.off.clear()
        story.do("box", {"carry-out": story.luck.choice(story.carried)})


def raised(story: Story) -> None:
    """Raise the skip, and leave it so."""
    story.do("skip", {"raise": "skip"})
    story.told["leaves"] = {"skip": "raised"}


def lowered(story: Story) -> None:
    """Let down a skip that comes raised."""
    story.told["needs"] = {"skip": "raised"}
    story.do("skip", {"lower": "skip"})


def under_bonnet(story: Story) -> None:
    """Work below a bonnet that another job opens."""
    story.told["needs"] = {"bonnet": "open"}
    story.off.add("bonnet")
    story.luck.choice([renew_filter, gear_out, cap_off])(story)


Task = Callable[[Story], None]

TASKS: tuple[Task, ...] = (
    change_oil,
    change_oil,
    change_coolant,
    renew_filter,
    gear_out,
    pump_out,
    cap_off,
    lamp_out,
    guard_left_out,
    skip_up,
    rods,
    rods,
    shift,
    engine_on,
    right_ring,
    right_ring,
    paint,
    paint,
    another_job,
    skip_by_others,
)

SMALL: tuple[Task, ...] = (change_coolant, lamp_out, skip_up, rods, shift, engine_on)
"""What a procedure may be that another one carries out."""
