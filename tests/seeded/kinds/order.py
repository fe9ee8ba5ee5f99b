"""Steps and actions in another order, left out, or done twice."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.source.document import Document
from tests.seeded.criteria import again, commute
from tests.seeded.demo import Demo, StepAt
from tests.seeded.edits import Edit, Path, at, both, cut, moved, order
from tests.seeded.variant import Kind, Variant
from tests.seeded.wording import dropped_step


def drop_a_step(demo: Demo) -> Iterator[Variant]:
    """A whole step is forgotten."""
    for step in demo.steps():
        if not step.is_method:
            yield dropped_step(step, f'"{step.title}" is left out')


def drop_a_section(demo: Demo) -> Iterator[Variant]:
    """A whole section is forgotten."""
    for document, path, section in demo.sections():
        yield Variant(document.file, path, f'the section "{section["title"]}" is left out', (cut(path),))


def swap_two_steps(demo: Demo) -> Iterator[Variant]:
    """Two neighbouring steps change places."""
    for document, path, section in demo.sections():
        steps = section["steps"]
        for place in range(len(steps) - 1):
            told = f"{_title(document, path, place)} comes after {_title(document, path, place + 1)}"
            swapped = _order(len(steps), place, place + 1)
            first, second = (*path, "steps", place), (*path, "steps", place + 1)
            edit = order((*path, "steps"), swapped)
            criterion = commute(document.file, first, second)
            yield Variant(document.file, first, told, (edit,), criterion=criterion)


def move_a_step_to_the_end(demo: Demo) -> Iterator[Variant]:
    """A step is remembered only at the end of its section."""
    for document, path, section in demo.sections():
        count = len(section["steps"])
        for place in range(count - 2):
            others = [one for one in range(count) if one != place]
            told = f"{_title(document, path, place)} comes last in its section"
            yield Variant(
                document.file,
                (*path, "steps", place),
                told,
                (order((*path, "steps"), [*others, place]),),
            )


def move_a_step_past_a_section(demo: Demo) -> Iterator[Variant]:
    """A step is remembered only after the next section, when things may be covered again."""
    for document, path, section in demo.sections():
        place, following = path[1], document.data["sections"]
        assert isinstance(place, int)
        if place + 1 == len(following) or len(section["steps"]) == 1:
            continue
        target = ("sections", place + 1, "steps", len(following[place + 1]["steps"]))
        for number in range(len(section["steps"])):
            told = f"{_title(document, path, number)} comes after the next section"
            source = (*path, "steps", number)
            yield Variant(document.file, source, told, (moved(source, target),))


def swap_two_sections(demo: Demo) -> Iterator[Variant]:
    """Two neighbouring sections change places."""
    for document, path, section in demo.sections():
        place, count = path[1], len(document.data["sections"])
        assert isinstance(place, int)
        if place + 1 < count:
            told = f'the section "{section["title"]}" comes after the next one'
            yield Variant(document.file, path, told, (order(("sections",), _order(count, place, place + 1)),))


def swap_two_actions(demo: Demo) -> Iterator[Variant]:
    """Two neighbouring actions of one step change places, in the text as well."""
    for step in demo.steps():
        count = len(step.data["do"])
        for place in range(count - 1):
            names = [next(iter(one)) for one in step.data["do"]]
            told = f'"{names[place]}" comes after "{names[place + 1]}" in "{step.title}"'
            made: Edit = cut((*step.path, "step")) if step.text else lambda data: data
            edit = both(order((*step.path, "do"), _order(count, place, place + 1)), made)
            here: Path = (*step.path, "do", place)
            yield Variant(step.document.file, here, told, (edit,), made, f"made {step.path}")


def write_a_step_twice(demo: Demo) -> Iterator[Variant]:
    """A step is pasted twice."""
    for step in demo.steps():
        if step.is_method or "id" in step.data:
            continue
        yield _twice(step)


def fill_twice(demo: Demo) -> Iterator[Variant]:
    """The step that fills stands there twice."""
    for step in demo.steps():
        fills = {"fill", "fill-to-level", "top-up"} & {name for action in step.data["do"] for name in action}
        if fills:
            yield _twice(step)


def _twice(step: StepAt) -> Variant:
    *steps, place = step.path
    assert isinstance(place, int)
    count = len(at(step.document.data, tuple(steps)))
    doubled = [*range(place + 1), *range(place, count)]
    edit = order(tuple(steps), doubled)
    criterion = again(step.document.file, step.path)
    told = f'"{step.title}" stands there twice'
    return Variant(step.document.file, step.path, told, (edit,), criterion=criterion)


def _order(count: int, one: int, other: int) -> list[int]:
    places = list(range(count))
    places[one], places[other] = other, one
    return places


def _title(document: Document, path: Path, place: int) -> str:
    data = at(document.data, (*path, "steps"))[place]
    method = data["either"][0] if "either" in data else data
    return f'"{StepAt(document, (*path, "steps", place), method).title}"'


KINDS: dict[str, Kind] = {
    "drop a step": drop_a_step,
    "drop a section": drop_a_section,
    "swap two steps": swap_two_steps,
    "move a step to the end of its section": move_a_step_to_the_end,
    "move a step past a section": move_a_step_past_a_section,
    "swap two sections": swap_two_sections,
    "swap two actions": swap_two_actions,
    "write a step twice": write_a_step_twice,
    "fill twice": fill_twice,
}
