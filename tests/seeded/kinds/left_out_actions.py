"""An action is left out, in the data and in the text: the commonest slip of all."""

from __future__ import annotations

from collections.abc import Iterator

from tests.seeded.demo import ActionAt, Demo
from tests.seeded.variant import Kind, Variant
from tests.seeded.wording import dropped_action, dropped_thing

GROUPS: dict[str, tuple[str, ...]] = {
    "drop a refit": ("fit", "connect", "seat", "hold"),
    "drop a removal": ("remove", "disconnect"),
    "drop a loosening": ("loosen", "ease"),
    "drop a start": ("start",),
    "drop a tighten": ("tighten",),
    "drop a discard": ("discard",),
    "drop a drain": ("drain", "extract"),
    "drop a fill": ("fill", "fill-to-level", "top-up"),
    "drop a bleed": ("bleed",),
    "drop an isolation": ("isolate", "lock"),
    "drop a restoration": ("restore",),
    "drop a proof of no energy": ("prove-dead",),
    "drop a support": ("support",),
    "drop a raise": ("raise",),
    "drop a lowering": ("lower",),
    "drop a release": ("release",),
    "drop a run": ("run",),
    "drop a stop": ("stop",),
    "drop an open": ("open",),
    "drop a close": ("close",),
    "drop a checkpoint": ("inspect", "measure", "compare"),
    "drop a count": ("count",),
    "drop a cleaning": ("clean",),
    "drop a mark": ("mark",),
    "drop a smear": ("apply",),
    "drop a position": ("set",),
    "drop a turn": ("align",),
    "drop a wait": ("wait",),
    "drop a warming": ("heat",),
    "drop a question": ("ask",),
    "drop a notice": ("tell",),
    "drop a procedure": ("carry-out",),
    "drop a trial fit": ("trial-fit",),
    "drop a keeping": ("keep",),
    "drop a place left empty": ("leave-empty",),
}
"""Each kind with the actions that it leaves out."""


def _kind(names: tuple[str, ...]) -> Kind:
    def variants(demo: Demo) -> Iterator[Variant]:
        for action in demo.actions():
            if action.name in names:
                found = dropped_action(action, _told(action))
                yield from () if found is None else (found,)

    return variants


def _told(action: ActionAt) -> str:
    return f'"{action.name}: {", ".join(action.what)}" is left out of "{action.step.title}"'


def drop_one_of_several(demo: Demo) -> Iterator[Variant]:
    """An action on several things forgets one of them."""
    for action in demo.actions():
        for name in action.what if len(action.what) > 1 else ():
            yield dropped_thing(action, name, f'"{action.name}" in "{action.step.title}" forgets {name}')


def leave_the_new_part_out(demo: Demo) -> Iterator[Variant]:
    """A part that is discarded and fitted new in one file is neither: the old one goes back on, and nobody says so."""
    actions = list(demo.actions())
    for old in actions:
        for new in actions:
            same = old.step.document is new.step.document and old.what == new.what and old.step.path != new.step.path
            if same and (old.name, new.name) == ("discard", "fit"):
                yield from _both_out(old, new)


def _both_out(old: ActionAt, new: ActionAt) -> Iterator[Variant]:
    told = f"{old.what[0]} is neither discarded nor fitted new"
    first, second = dropped_action(old, told), dropped_action(new, told)
    if first is None or second is None:
        return

    def edit(data: object, one: Variant = first, two: Variant = second) -> object:
        # The later of the two goes first, so that the place of the other one stays what it was.
        later, earlier = (two, one) if two.path > one.path else (one, two)
        return earlier.forms[0](later.forms[0](data))

    def made(data: object, one: Variant = first, two: Variant = second) -> object:
        later, earlier = (two, one) if two.path > one.path else (one, two)
        return earlier.forms[-1](later.forms[-1](data))

    def plain(data: object, one: Variant = first, two: Variant = second) -> object:
        for variant in (one, two):
            data = variant.plain(data) if variant.plain is not None else data
        return data

    key = f"both {first.path} {second.path}"
    yield Variant(first.file, first.path, told, (edit, made), plain, key)


KINDS: dict[str, Kind] = {
    **{name: _kind(names) for name, names in GROUPS.items()},
    "drop one of several": drop_one_of_several,
    "leave the new part out": leave_the_new_part_out,
}
