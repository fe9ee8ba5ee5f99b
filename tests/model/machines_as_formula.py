"""Every machine of an equipment as one formula of a solver that is not ours: python-sat, by the name of MiniSat.

Each value of each feature is a variable, and of each feature exactly one is true; nothing is laid out or counted.
A condition becomes a literal that is true on just the machines that meet it, by Tseitin's encoding
(G. S. Tseitin, "On the complexity of derivation in propositional calculus", 1968; from memory).

python-sat was chosen because it has wheels of 2 to 4 MB for CPython 3.11 to 3.13 on Linux and macOS, brings solvers
that others wrote and that have been held against each other for years, is released often, under the MIT licence, and
draws in nothing but `six`; z3-solver would answer as well, and weighs ten times as much.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Mapping, Sequence

from pysat.solvers import Solver

from authoring.model.specification import When


class Machines:
    """The machines that an equipment can be, asked about by literals: a negative number is the contrary."""

    def __init__(self, features: Mapping[str, Sequence[str]], never: Iterable[When] = ()) -> None:
        self._solver = Solver(name="minisat22")
        self._numbers = itertools.count(1)
        self.features = features
        self._has = {(name, value): next(self._numbers) for name, values in features.items() for value in values}
        for name, values in features.items():
            mine = [self._has[name, value] for value in values]
            self._solver.add_clause(mine)
            for one, other in itertools.combinations(mine, 2):
                self._solver.add_clause([-one, -other])
        for each in never:
            self.rule(-self.meets(each))

    def rule(self, *literals: int) -> None:
        """State that one of these literals holds on every machine."""
        self._solver.add_clause(list(literals))

    def has(self, feature: str, value: str) -> int:
        """Return the literal of the machines with this value of a feature."""
        return self._has[feature, value]

    def meets(self, when: When) -> int:
        """Return the literal of the machines that meet a condition."""
        return self.each(self.any(self.has(feature, value) for value in values) for feature, values in when.items())

    def any(self, literals: Iterable[int]) -> int:
        """Return the literal of the machines for which one of these holds; of none, where there is none."""
        known, new = list(literals), next(self._numbers)
        self._solver.add_clause([-new, *known])
        for one in known:
            self._solver.add_clause([new, -one])
        return new

    def each(self, literals: Iterable[int]) -> int:
        """Return the literal of the machines for which all of these hold; of every one, where there is none."""
        return -self.any(-one for one in literals)

    def exist(self, *literals: int) -> bool:
        """Tell whether there is a machine for which all of these hold."""
        return bool(self._solver.solve(assumptions=list(literals)))

    def shows(self, bad: int, among: int, picked: Mapping[str, str]) -> bool:
        """Tell whether there are machines with these values `among` those asked about, and all of them are bad."""
        having = [self.has(feature, value) for feature, value in picked.items()]
        return self.exist(bad, among, *having) and not self.exist(-bad, among, *having)

    def shown_by(self, bad: int, among: int, features: Iterable[str], size: int) -> dict[str, str] | None:
        """Return so many features and values that show the bad machines, tried one after the other; None for none."""
        for names in itertools.combinations(features, size):
            for values in itertools.product(*(self.features[name] for name in names)):
                picked = dict(zip(names, values, strict=True))
                if self.shows(bad, among, picked):
                    return picked
        return None
