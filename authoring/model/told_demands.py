"""A demand of the policy in words: where it is met, who asks, and why."""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Related
from authoring.model.demanding import Demand
from authoring.model.numbering import numbers
from authoring.model.policy import Policy
from authoring.model.procedure import Procedure


def met(demand: Demand, procedure: Procedure) -> str:
    """Return where a demand is met, as the beginning of a sentence, such as: Step 4 comes near "exhaust-pipe"."""
    number = numbers(procedure)[demand.step.id]
    by = f' by "{demand.mention.name}"' if demand.mention.name != demand.item.id else ""
    heated = f", heated to {demand.heat.to.text}" if demand.heat is not None else ""
    return f'Step {number} {"comes near" if demand.near else "touches"} "{demand.item.id}"{by}{heated}'


def reason(policy: Policy) -> str:
    """Return who asks and why, as a sentence in the policy's own words."""
    why = policy.why if policy.why.endswith((".", "!", "?")) else f"{policy.why}."
    if policy.where is not None:
        return f'The policy "{policy.id}" says why: {why}'
    return f'The default "{policy.id}" ({policy.source}, {policy.status}) says why: {why}'


def origin(demand: Demand) -> tuple[Related, ...]:
    """Return where the shop states the policy; nothing for a default, which stands in no file of its own."""
    where = demand.policy.where
    return (Related(where.key(), "the policy"),) if where is not None else ()


def kind(policy: Policy) -> str:
    """Return what a message of the kind that a policy asks for is called: a safety message and what it is of."""
    return f'of the hazard "{policy.hazard}"' if policy.hazard is not None else f"of {policy.sort}"
