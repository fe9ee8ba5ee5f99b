"""What is found by its place: the modules and the packages in a package's folder, so that there is no list to edit.

The standard library's pkgutil finds them too, but draws in modules that take longer to load than all our actions.
"""

from __future__ import annotations

import os
from pathlib import Path
from types import ModuleType


def modules_in(package: ModuleType) -> tuple[str, ...]:
    """Return the names of a package's modules, in the order of the alphabet."""
    names = os.listdir(package.__path__[0])  # noqa: PTH208  # names are enough; paths of all would take a millisecond
    return tuple(sorted(one.removesuffix(".py") for one in names if one.endswith(".py") and one != "__init__.py"))


def packages_in(package: ModuleType) -> tuple[str, ...]:
    """Return the names of the packages inside a package, in the order of the alphabet."""
    folders = Path(package.__path__[0]).iterdir()
    return tuple(sorted(folder.name for folder in folders if (folder / "__init__.py").is_file()))
