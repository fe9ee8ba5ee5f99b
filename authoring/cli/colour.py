"""Whether colour is shown; apart from the terminal's other words, since an answer that was kept asks for no more."""

from __future__ import annotations

import os
import sys


def wants_colour() -> bool:
    """Tell whether findings are printed in colour: on a terminal only, and not where NO_COLOR or a dumb one says no."""
    return sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"
