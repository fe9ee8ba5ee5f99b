"""Names and quantities to the words a reader sees."""

from __future__ import annotations

from collections.abc import Mapping

from authoring.booklet import markup, whom
from authoring.booklet.plan import Plan, Volume
from authoring.booklet.words import Amount, Inline, Named, Passage, Text, Words
from authoring.model.action_kind import Kind
from authoring.model.library import Named as Thing
from authoring.model.procedure import Step
from authoring.model.specification import ALWAYS, Specification, When
from authoring.model.things import Value
from authoring.quantities.quantity import Quantity
from authoring.quantities.show import dual
from authoring.quantities.units import Dimension, Unit


class Wording:
    """Turns the texts of one procedure into running words, for one booklet."""

    def __init__(self, plan: Plan, volume: Volume, figures: Mapping[str, tuple[str, str]]) -> None:
        """Take the booklet's plan, the procedure whose words these are, and figure ids to (number, anchor)."""
        self._plan = plan
        self._volume = volume
        self._figures = figures
        shop = plan.library.shop
        self._units: Mapping[Dimension, tuple[Unit, ...]] = shop.units if shop is not None else {}

    def line(self, text: str) -> Text:
        """Return one run of words."""
        return markup.line(text, self.named)

    def passage(self, text: str | None) -> Passage:
        """Return paragraphs and lists; nothing for no text."""
        return markup.passage(text, self.named) if text else ()

    def plain(self, name: str) -> str:
        """Return the words for a thing as plain characters."""
        return markup.said(self.named(name))

    def told(self, step: Step) -> str:
        """Return the instruction of a step as plain characters in small letters, to see what it has said already."""
        return markup.said(self.line(step.text)).casefold()

    def named(self, name: str) -> Text:
        """Return the words for a thing called by its short name."""
        thing = self._volume.scope.things[name]
        match thing.kind:
            case Kind.VALUE:
                return self.amount_of(thing)
            case Kind.FIGURE:
                number, anchor = self._figures.get(name, ("", ""))
                return (Named(f"figure {number}" if number else thing.words, anchor),)
            case Kind.STEP | Kind.SECTION | Kind.PROCEDURE:
                return (self._pointer(thing),)
            case _:
                return (Named(thing.words),)

    def _pointer(self, thing: Thing) -> Inline:
        if thing.kind is Kind.PROCEDURE:
            volume = self._plan.volume_of(thing.id)
            place = f" (annex {volume.letter})" if volume is not None and volume.letter else ""
            return Named(f"{thing.words}{place}", volume.anchor if volume is not None else "")
        for section, anchor, steps in self._volume.sections:
            if section.id == thing.id:
                return Named(f"“{section.title}”", anchor)
            for placed in steps:
                if placed.step.id == thing.id:
                    return Named(f"step {placed.number}", placed.anchor)
        return Words("a step that this booklet does not need")

    def amount_of(self, thing: Thing) -> Text:
        """Return the quantity of a named value; of several windows, those that the selection leaves, the best first."""
        value = thing.thing
        windows = value.windows if isinstance(value, Value) else ()
        words: list[Inline] = []
        for window in windows:
            quantity = window.specification.value
            if quantity is not None and self.holds(window.when):
                only = self.applies(window.when)
                words += [Words(" or ")] if words else []
                words += [self.amount(quantity), *([Words(f" ({only[0].lower()}{only[1:]})")] if only else [])]
        return tuple(words) or (Words(thing.words),)

    def amount(self, quantity: Quantity) -> Amount:
        """Return a quantity in the shop's units."""
        return Amount(*dual(quantity, self.units(quantity)))

    def units(self, quantity: Quantity) -> tuple[Unit, ...]:
        """Return the shop's units for what a quantity measures; its own unit where the shop names none."""
        return self.units_of(quantity.dimension) or (quantity.unit,)

    def units_of(self, dimension: Dimension) -> tuple[Unit, ...]:
        """Return the shop's units of a dimension; none where the shop names none."""
        return self._units.get(dimension, ())

    def holds(self, when: When) -> bool:
        """Tell whether something belongs to this booklet."""
        return self._volume.holds(when)

    def said(self, when: When) -> str:
        """Return `when` in words, whether or not the selection settles it."""
        return whom.said(when, self._volume.scope)

    def whose(self, when: When) -> str:
        """Return `when` in words as they go on after a verb, whether or not the selection settles it."""
        return whom.whose(when, self._volume.scope)

    def source(self, specification: Specification) -> str:
        """Return where a value comes from, in words."""
        source = self._volume.scope.sources.get(specification.source or "")
        if source is None:
            return ""
        edition = f", {source.edition}" if source.edition else ""
        return f"{source.title}{edition}, {specification.at}" if specification.at else f"{source.title}{edition}"

    def applies(self, when: When, within: When = ALWAYS) -> str:
        """Return for which vehicles something applies.

        Empty when for all, when the selection settles it, or when `within`, the step around it, has said so already.
        """
        if not when:
            return ""
        selection = self._plan.selection
        news = {
            feature: values
            for feature, values in when.items()
            if feature not in selection and not set(within.get(feature, ("",))) <= set(values)
        }
        return whom.only(news, self._volume.scope)
