"""What is said on a machine that cannot set pages; a file of its own, since HTML needs nothing else of the PDF."""

from __future__ import annotations


class PangoMissing(Exception):  # noqa: N818  # it names a state of the machine, not a fault of anybody
    """The libraries that set text on a page are not installed; the message says which to install."""

    def __init__(self) -> None:
        super().__init__(
            "A PDF needs the Pango and HarfBuzz libraries, which this machine lacks. "
            "On Debian or Ubuntu: apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0. "
            "The HTML edition works without them."
        )
