"""The order of tightening in words, at the torque: as drawn, as stated, or as it was worked out."""

from __future__ import annotations

from authoring.booklet.drawings.bolt_patterns import shape_of
from authoring.booklet.wording import Wording
from authoring.booklet.words import Text, Words
from authoring.model.orders import FEWEST, order_of, places_of
from authoring.model.things import FastenerGroup
from authoring.quantities.units import Dimension
from authoring.workshop.bolt_pattern import Pattern, pattern_of

_WORKED_OUT = {
    Pattern.CIRCLE: "crosswise",
    Pattern.CORNERS: "crosswise",
    Pattern.ROW: "from the middle outwards",
    Pattern.OUTLINE: "from the middle outwards and across",
}


def order_told(group: FastenerGroup, wording: Wording) -> Text:
    """Return in which order a group is tightened; nothing where it is neither stated nor can be worked out.

    A last round after stages that are worked out is the circular pass of ASME PCC-1, from memory: each fastener that
    is tightened takes some of the load of its neighbours.
    """
    order = order_of(group)
    if order is None:
        return ()
    each = ", anew in each stage" if len(group.stages) > 1 else ""
    drawn = f"1 to {group.count} as in the drawing" if shape_of(group) is not None else ""
    if order.stated:
        return (Words(f"{drawn or ', '.join(str(one) for one in order.numbers)}{each}"),)
    found = "one after the other" if group.count == FEWEST else _WORKED_OUT[pattern_of(places_of(group))]
    worked = f"worked out for these places: {found}. An order from the maker goes before."
    return (
        Words(f"{drawn}{each}; {worked}" if drawn else f"{worked[:1].upper()}{worked[1:]}"),
        *_round(group, wording),
    )


def _round(group: FastenerGroup, wording: Wording) -> Text:
    last = group.stages[-1] if len(group.stages) > 1 else None
    if last is None or last.dimension is not Dimension.TORQUE:
        return ()
    return (Words(" After the last stage go round all of them once more at "), wording.amount(last), Words("."))
