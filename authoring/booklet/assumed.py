"""What the rules take as given: how the machine comes, which vehicles, what is asked and worked out by default."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

import msgspec

from authoring.booklet.blocks import Cell, Chapter, Table
from authoring.booklet.by_vehicle import booked
from authoring.booklet.decisions import decisions
from authoring.booklet.front import NOT_VALIDATED, never_together
from authoring.booklet.phrases import UNVERIFIED, in_turn
from authoring.booklet.plan import Plan
from authoring.booklet.sources import cited
from authoring.booklet.states import states
from authoring.booklet.step_parts import Step
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Named, Text, Words
from authoring.diagnostics.words import joined
from authoring.model.fitments import covered
from authoring.model.space import LIMIT, Space, cells_of
from authoring.model.things import Item

_AS_BUILT = (
    "All that belongs to it is on, closed, tight and full, every source of energy is live, and no part of the stock is "
    "on it. Whether something runs, is up, is held or is locked, and in which position a lever stands, is not known."
)
_READINGS = {
    "guarded": "A reading passes only where it keeps the limit by as much as the gauge may be off.",
    "simple": "A reading passes as it stands; what the gauge may be off is not taken off the limit.",
}


def assumed(plan: Plan, wordings: Mapping[str, Wording], work: Sequence[Chapter], there: Collection[str]) -> Table:
    """Return the table of what is taken as given; `there` are the subjects of which the booklet holds something."""
    wording = wordings[plan.main.procedure.number]
    rows: list[tuple[str, Text]] = [
        ("Trial", _trial(plan)),
        ("Vehicles", (Words(" ".join(filter(None, (_vehicles(plan), never_together(plan.main))))),)),
        ("How the machine comes", tuple(_comes(plan, wording))),
        ("Decisions on the way", decisions(plan)),
        ("Documents", _documents(plan)),
        ("Common practice", _common(plan)),
        ("Marked as unverified", _unverified(work)),
        *_shop(plan, wording, there),
    ]
    told = tuple((Cell((Words(label, "strong"),)), Cell(text)) for label, text in rows)
    return Table("assumed", "Taken as given", ("What", "As what it is taken"), told, (24, 76))


def _trial(plan: Plan) -> Text:
    trial = plan.main.procedure.trial
    if trial is None:
        return (
            Words(NOT_VALIDATED, "strong"),
            Words(": no trial of this revision on a machine is recorded."),
        )
    return (Words(f"Done on {trial.machine}, {trial.date}; what came of it stands on the first page."),)


def _vehicles(plan: Plan) -> str:
    vehicle = plan.main.scope.equipment
    if vehicle is None or not vehicle.features:
        return "All machines of this kind are alike in what this job touches."
    covers = {name: some for name, some in booked(plan.main).items() if name in vehicle.features}
    open_ = [name for name, some in covered(vehicle, covers).items() if len(some) > 1]
    if not open_:
        return "One kind, which the first page names."
    names = joined([vehicle.features[name].name for name in open_], "and")
    if cells_of(vehicle, covers, open_) > LIMIT:
        return f"All that differ in {names}: too many combinations to count."
    count = Space(vehicle, covers, open_).every.bit_count()
    return f"{count} kinds, which differ in {names}: each combination that occurs."


def _comes(plan: Plan, wording: Wording) -> Iterator[Inline]:
    procedure = plan.main.procedure
    yield Words(_AS_BUILT)
    needed = [(*thing, Words(": "), *state) for thing, state in states(procedure.needs, plan.main.scope, wording)]
    if needed:
        yield Words(" Other than that: ")
        yield from in_turn(needed, "; ")
        yield Words(".")
    if procedure.conditions:
        yield Words(" That the ")
        yield Named("conditions", "conditions", turn_to=True)
        yield Words(" are met, a person sees.")


def _documents(plan: Plan) -> Text:
    found = [f"{one.title}, {one.edition or 'edition not stated'} ({_many(values)})" for one, values in cited(plan)]
    if not found:
        return (Words("This booklet states no value."),)
    named = Named("“Sources”", "sources", turn_to=True)
    return (Words(f"They say what is copied from them: {'; '.join(found)}. See "), named, Words("."))


def _many(values: Sequence[str]) -> str:
    return f"{len(values)} values" if len(values) > 1 else "one value"


def _common(plan: Plan) -> Text:
    values = [value for source, values in cited(plan) if source.kind == "common-practice" for value in values]
    return (
        Words(f"No maker and no standard answers for: {'; '.join(values)}." if values else "No value rests on it."),
    )


def _unverified(work: Sequence[Chapter]) -> Text:
    """Return the steps in which something is worked out by a formula of which no source was read."""
    mark = f", {UNVERIFIED}".encode()
    steps = [block for chapter in work for block in chapter.blocks if isinstance(block, Step)]
    marked = [Named(step.number, step.id) for step in steps if mark in msgspec.json.encode(step)]
    if not marked:
        return (Words("Nothing."),)
    told = in_turn([(one,) for one in marked])
    lead = "What is worked out by a formula of which no source was read: a help, and no more; in step"
    return (Words(f"{lead}{'s' if len(marked) > 1 else ''} "), *told, Words("."))


def _shop(plan: Plan, wording: Wording, there: Collection[str]) -> Iterator[tuple[str, Text]]:
    shop = plan.library.shop
    if "measured" in there:
        rule = shop.decision_rule if shop is not None else None
        since = "" if rule is not None else " The shop states no rule of its own."
        yield "Readings", (Words(f"{_READINGS[rule or 'simple']}{since}"),)
    air = shop.air.value if shop is not None and shop.air is not None else None
    if air is not None:
        yield "Air in the workshop", (wording.amount(air),)
    elif any(isinstance(one.thing, Item) and (one.thing.cooling or one.thing.cooled) for one, _ in plan.used):
        yield "Air in the workshop", (Words("Not stated, so no time to cool down is worked out."),)
