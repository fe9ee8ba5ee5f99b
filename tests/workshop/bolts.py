"""Bolts for property tests: the coarse and fine threads from M5 to M30 and the classes of hardened bolts."""

from __future__ import annotations

from hypothesis import strategies as st

from authoring.workshop.metric_thread import MetricThread, metric_thread

_TEXTS = (
    "M5 M5x0.5 M6 M6x0.75 M7 M8 M8x1 M10 M10x1.25 M10x1 M12 M12x1.5 M12x1.25 M14 M14x1.5 M16 M16x1.5 M18 M18x2 M18x1.5 "
    "M20 M20x2 M20x1.5 M22 M22x2 M22x1.5 M24 M24x2 M24x1.5 M27 M27x2 M27x1.5 M30 M30x2 M30x1.5"
)


def thread(text: str) -> MetricThread:
    """Read what must be a thread."""
    read = metric_thread(text)
    assert read is not None, text
    return read


THREADS = tuple(thread(text) for text in _TEXTS.split())
CLASSES = ("8.8", "10.9", "12.9")

threads = st.sampled_from(THREADS)
classes = st.sampled_from(CLASSES)
