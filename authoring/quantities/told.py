"""What is said of one fault in a text."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TypeAlias

from msgspec import Struct


class Told(Struct, frozen=True):
    """What to say of a fault: `instead` holds what may replace it, `cure` is said when nothing can.

    `texts` are what the whole text may be instead, where more of it changes than the fault.
    `also` is a sentence behind the cure: where that belongs which the number and its unit cannot say.
    """

    reason: str
    cure: str = ""
    instead: tuple[str, ...] = ()
    texts: tuple[str, ...] = ()
    also: str = ""


Fault: TypeAlias = tuple[str, Callable[[re.Match[str]], Told]]
"""How a fault looks, as a pattern, and what is said of it."""


def always(reason: str, cure: str) -> Callable[[re.Match[str]], Told]:
    """Say the same of every such fault."""
    return lambda _: Told(reason, cure)


def rewritten(reason: str, template: str, also: str = "") -> Callable[[re.Match[str]], Told]:
    """Say what stands there instead: a template over the groups of the pattern."""
    return lambda found: Told(reason, instead=(found.expand(template),), also=also)
