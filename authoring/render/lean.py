"""Import the page engine, leanly and with our own fonts only.

Importing this module raises OSError when a library of Pango is missing.
"""

from __future__ import annotations

import ctypes.util
import os
import sys
from pathlib import Path

# Fontconfig reads this once, before the first text is set: only the fonts beside this file may shape a page,
# so that another machine's fonts cannot change it.
os.environ["FONTCONFIG_FILE"] = str(Path(__file__).parent / "fonts" / "fonts.conf")


def _find_nothing(name: str) -> str | None:  # noqa: ARG001  # the engine calls it with a name
    return None


_find_library = ctypes.util.find_library
if sys.platform == "linux":
    # Every library is found by its soname. The search would start 38 helper processes to learn nothing.
    ctypes.util.find_library = _find_nothing
try:
    import weasyprint
    from weasyprint.text.ffi import harfbuzz_subset
finally:
    ctypes.util.find_library = _find_library

if harfbuzz_subset is None:
    message = "libharfbuzz-subset is missing"
    raise OSError(message)

__all__ = ["weasyprint"]
