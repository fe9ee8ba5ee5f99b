"""The cover and the safety page."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.blocks import Banner, Block, Cell, Chapter, Cover, Facts, SignalWords, Table
from authoring.booklet.cautions import cautions, profile_of
from authoring.booklet.phrases import WHO, capital
from authoring.booklet.plan import Plan, Volume
from authoring.booklet.reach import duration, hands
from authoring.booklet.step_parts import Caution, Step
from authoring.booklet.whom import said
from authoring.booklet.wording import Wording
from authoring.booklet.words import Blank, Inline, Paragraph, Passage, Pick, Text, Words
from authoring.diagnostics.words import joined
from authoring.model.fitments import covered
from authoring.model.signal_word import meaning

_MAKER_FIRST = (
    "This booklet informs; it does not license. Where the maker's data, local law or a code of practice "
    "says otherwise, they are right and this booklet is wrong."
)
_QUALIFIED = (
    "Only a qualified person, or somebody under the eye of one, does this work. "
    "Stop and ask when the machine in front of you does not match what you read."
)
DEFERENCE = (_MAKER_FIRST, _QUALIFIED)
NOT_VALIDATED = "NOT VALIDATED"
_UNTRIED = (
    "Nobody has yet done this job from this revision on a machine and recorded it. "
    "Work beside somebody who knows the job, and report what does not fit."
)


def cover(plan: Plan, wording: Wording) -> Cover:
    """Return the first page."""
    procedure = plan.main.procedure
    return Cover(
        job=wording.passage(procedure.job),
        facts=Facts(tuple(_facts(plan, wording))),
        fitments=_fitments(plan.main),
        options=_options(plan.main, wording),
        banner=Banner(NOT_VALIDATED, _words(_UNTRIED)) if procedure.trial is None else None,
        deference=tuple(Paragraph((Words(text),)) for text in DEFERENCE),
    )


def _words(text: str) -> Passage:
    return (Paragraph((Words(text),)),)


def _facts(plan: Plan, wording: Wording) -> Iterator[tuple[str, Text]]:
    procedure, revision = plan.main.procedure, plan.main.procedure.revision
    yield "Written by", (Words(person(plan.main, revision.author)),)
    yield "Approved by", (Words(person(plan.main, revision.approver)),)
    if procedure.audience:
        yield "For", wording.line(procedure.audience)
    persons = hands(plan)
    if persons:
        yield "Persons", persons
    time = duration(plan.main, wording)
    if time:
        yield "Time", time
    viewpoint = plan.main.scope.equipment.viewpoint if plan.main.scope.equipment is not None else None
    if viewpoint:
        yield "Left and right", (Words(viewpoint),)
    if any(volume.gaps for volume in plan.volumes):
        yield "Steps", (Words("Numbered as for all fitments; a number that is missing belongs to other vehicles."),)
    if procedure.trial is not None:
        trial = procedure.trial
        by = person(plan.main, trial.by)
        yield "Tried", (Words(f"{trial.date}, by {by}, on {trial.machine}: "), *wording.line(trial.result))
    shop = plan.library.shop
    yield "This copy", (Words("Number "), Blank(label="Number of this copy"))
    if shop is not None and shop.retention:
        yield "Kept filled in", (Words(shop.retention),)


def full_name(volume: Volume, short: str) -> str:
    """Return a person's full name."""
    return person(volume, short).partition(",")[0]


def person(volume: Volume, name: str) -> str:
    """Return a person's full name and role."""
    shop = volume.scope.library.shop
    one = shop.people.get(name) if shop is not None else None
    return f"{one.name}, {one.role}" if one is not None else name


def _fitments(volume: Volume) -> Table:
    equipment = volume.scope.equipment
    rows = []
    if equipment is not None:
        for feature, values in covered(equipment, volume.procedure.covers).items():
            known = equipment.features[feature]
            picked = [volume.selection[feature]] if feature in volume.selection else values
            told = " or ".join(known.values[value] for value in picked)
            rows.append((Cell((Words(known.name, "strong"),)), Cell((Words(told),)), Cell((Words(known.tell),))))
    return Table(
        id="fitments",
        title="Vehicles this booklet covers",
        heads=("Feature", "Covered", "How to tell"),
        rows=tuple(rows),
        widths=(24, 34, 42),
        empty="All machines of this kind.",
        note=never_together(volume),
    )


def never_together(volume: Volume) -> str:
    """Return the sentence on the combinations that no machine of this booklet has; nothing where all occur."""
    equipment = volume.scope.equipment
    if equipment is None:
        return ""
    values = covered(equipment, volume.procedure.covers)
    met = [
        never
        for never in equipment.never
        if volume.holds(never) and all(set(some) & set(values.get(feature, ())) for feature, some in never.items())
    ]
    told = [[said({feature: some}, volume.scope) for feature, some in never.items()] for never in met]
    return " ".join(f"No machine has {joined(pair, 'together with')}." for pair in told)


def _options(volume: Volume, wording: Wording) -> Table | None:
    """Return the table of what is decided in this job: each question, who decides, and a box for each choice."""
    rows = []
    for option in volume.procedure.options.values():
        picked = volume.selection.get(option.id)
        asked: list[Inline] = [Words(capital(option.name), "strong"), Words(": "), *wording.line(option.question)]
        if option.why:
            asked += [Words(" "), *wording.line(option.why)]
        choices: Text = tuple(Pick(words) for words in option.values.values())
        if picked is not None:
            choices = (Words("This booklet is for one choice:"), Pick(option.values[picked]))
        rows.append((Cell(tuple(asked)), Cell((Words(WHO[option.decided_by]),)), Cell(choices)))
    heads = ("What is decided", "Who decides", "Choices")
    return Table("options", "Options of this job", heads, tuple(rows), (48, 20, 32)) if rows else None


def safety_page(plan: Plan, wordings: Mapping[str, Wording], work: list[Chapter]) -> Chapter:
    """Return the page that gathers what threatens the whole job, and the signal words this booklet uses."""
    blocks: list[Block] = []
    told: set[str] = set()
    for volume in plan.volumes:
        hazards = [name for name in volume.procedure.hazards or () if name not in told]
        told.update(hazards)
        anchor = f"safety-{volume.letter.lower() or 'job'}"
        blocks += cautions(volume.called(hazards), anchor, volume, wordings[volume.procedure.number])
    words = signal_words(profile_of(plan.main), blocks, work)
    intro: Text = (Words("Each caution block stands before the step it guards. Read it first; then do the step."),)
    head: list[Block] = [Paragraph(intro), *([words] if words.rows else [])]
    if not blocks:
        head.append(Paragraph((Words("No hazard is stated for the job as a whole."),)))
    close: list[Inline] = [
        Words("Wear what your shop and local law ask for this work, even where no step repeats it. "),
        Words("What this booklet does not say is not thereby safe."),
    ]
    return Chapter("safety", "", "Safety", 1, (*head, *blocks, Paragraph(tuple(close))))


def signal_words(profile: str, general: list[Block], work: list[Chapter]) -> SignalWords:
    """Return the signal words that occur in the booklet, and only those, the most severe first (requirement S6)."""
    found: dict[str, str] = {}
    for block in (*general, *(block for chapter in work for block in chapter.blocks)):
        for caution in _cautions_of(block):
            found.setdefault(caution.word, caution.harm)
    order = ("DANGER", "WARNING", "CAUTION", "NOTICE")
    return SignalWords(tuple((word, found[word], meaning(word, profile)) for word in order if word in found))


def _cautions_of(block: Block) -> tuple[Caution, ...]:
    match block:
        case Caution():
            return (block,)
        case Step():
            return block.cautions
        case _:
            return ()
