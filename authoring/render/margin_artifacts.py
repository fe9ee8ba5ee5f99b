"""Mark the text of the page margins as pagination, so that a reading voice passes over it (ISO 14289-1, 7.8).

The engine gives margin text content ids whose structure elements hang in no tree.
"""

from __future__ import annotations

from typing import Any

import pydyf


def _number(reference: Any) -> int:
    """Return the object number of a reference such as b"12 0 R"."""
    text = reference.decode() if isinstance(reference, bytes) else str(reference)
    return int(text.split()[0])


def _hanging_in_tree(pdf: pydyf.PDF, root: dict[str, Any]) -> set[int]:
    """Return the object numbers of all structure elements that can be reached from the root."""
    seen: set[int] = set()
    waiting = [_number(reference) for reference in root["K"]]
    while waiting:
        number = waiting.pop()
        if number in seen:
            continue
        seen.add(number)
        element = pdf.objects[number]
        kids = element.get("K", ()) if isinstance(element, dict) else ()
        waiting.extend(_number(kid) for kid in kids if not isinstance(kid, int))
    return seen


def margin_artifacts(_document: object, pdf: pydyf.PDF) -> None:
    """Turn every marked content that no structure element owns into a pagination artifact, in place."""
    root = pdf.objects[_number(pdf.catalog["StructTreeRoot"])]
    seen = _hanging_in_tree(pdf, root)
    numbers = pdf.objects[_number(root["ParentTree"])]["Nums"]
    owners_of = dict(zip(numbers[::2], numbers[1::2], strict=True))
    pages = [one for one in pdf.objects if isinstance(one, dict) and one.get("Type") == "/Page"]
    for page in pages:
        owners = owners_of[page["StructParents"]]
        orphans = {mark for mark, owner in enumerate(owners) if _number(owner) not in seen}
        stream = pdf.objects[_number(page["Contents"])].stream
        for at, piece in enumerate(stream):
            if isinstance(piece, pydyf.Dictionary) and piece.get("MCID") in orphans:
                stream[at - 1] = b"/Artifact"
                stream[at] = pydyf.Dictionary({"Type": "/Pagination"})
        for mark in orphans:
            owners[mark] = "null"
