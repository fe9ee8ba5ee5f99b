"""Write a library of many procedures, each as large as they get, for a machine of 64 fitments.

    python -m tests.bench.many FOLDER NUMBER

Each is the procedure of `make_library` under a number of its own; six of its nine stages are there on some machines
only, each of them by a feature of its own, which makes two to the power of six fitments.
"""

from __future__ import annotations

import sys
from pathlib import Path

from tests.bench.make_library import NUMBER, STAGES, make_library

CONDITIONAL = STAGES[:6]
FITMENTS = 2 ** len(CONDITIONAL)

_FEATURE = (
    "  {stage}-stage: {{name: {stage} stage, tell: Count the covers., values: {{fitted: fitted, not: not fitted}}}}\n"
)


def make_many(folder: Path, count: int) -> list[Path]:
    """Write the library into an empty or missing folder, and return the files of its procedures."""
    first = make_library(folder)
    text = first.read_text(encoding="utf-8")
    for stage in CONDITIONAL:
        title = f"  - title: Measure the {stage} stage\n"
        if title not in text:
            message = f"the procedure has no section for the {stage} stage"
            raise ValueError(message)
        text = text.replace(title, f"{title}    when: {{{stage}-stage: fitted}}\n")
    first.unlink()
    machine = folder / "sorrel.yaml"
    features = "features:\n" + "".join(_FEATURE.format(stage=stage) for stage in CONDITIONAL)
    machine.write_text(
        machine.read_text(encoding="utf-8").replace("sources:\n", f"{features}sources:\n"), encoding="utf-8"
    )
    files = [folder / f"GT-{place:04d}.yaml" for place in range(count)]
    for file in files:
        file.write_text(text.replace(NUMBER, file.stem), encoding="utf-8")
    return files


if __name__ == "__main__":
    sys.stdout.write(f"{len(make_many(Path(sys.argv[1]), int(sys.argv[2])))} procedures\n")
