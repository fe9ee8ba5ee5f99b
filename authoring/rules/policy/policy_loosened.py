"""The shop asks less than a default of safety asks, and does not say why.

A default has a source: a standard, a law, or the habit of the trade.
A shop may ask more under the name of the default without a word.
Where it asks less, it says why under `loosened`, and the booklet prints that on the page of what was checked.
A hazard of another kind asks less as well: a message of crushing says nothing to whoever touches a hot pipe.
It is the same kind where the shop's messages of it have the sign of the default, and no other.
A reason where nothing is loosened is found as well, since it would excuse the next change.

Wrong:

```yaml shop
policy:
  heavy-lift:
    heavier-than: 40 kg   #! policy-loosened
    why: We lift by hand what two hands can hold.
  hot-surface:
    severity: serious
    loosened: We know our exhausts.   #! policy-loosened
    why: A burn of the hand costs a week of work.
```

Right:

```yaml shop
policy:
  heavy-lift:
    heavier-than: 40 kg
    loosened: A hoist hangs above each of our bays.
    why: We lift by hand only what stands on the floor.
  hot-surface:
    severity: serious
    why: A burn of the hand costs a week of work.
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.policies import looser
from authoring.model.policy_defaults import DEFAULTS
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("S7", "N20")
ABOUT = ("shop-policy",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each default that is loosened without a reason, and each reason without a loosening."""
    for policy in library.shop.policy.values() if library.shop is not None else ():
        keys = list(looser(policy, library.shop))
        if policy.where is None:
            continue
        if keys and policy.loosened is None:
            default = DEFAULTS[policy.id]
            yield Fault(
                f'The policy "{policy.id}" asks less than the default of that name ({default.source}, '
                f"{default.status}).",
                policy.where.of(keys[0]),
                'Ask as much as the default does, or say under "loosened" why less will do here.',
            )
        elif policy.loosened is not None and not keys:
            yield Fault(
                f'The policy "{policy.id}" says why it is loosened, but it asks no less than any default.',
                policy.where.of("loosened"),
                'Leave "loosened" out.',
            )
