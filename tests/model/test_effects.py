from __future__ import annotations

import pytest

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.action_kinds import action_kinds
from authoring.model.effects import Effect, Reach

_WHAT = Role("What it is done to.", frozenset({Kind.ITEM}))


def test_an_action_without_a_declared_effect_is_refused() -> None:
    """Whoever writes an action says what it changes, were it nothing: such a file cannot be imported."""
    with pytest.raises(TypeError, match="effects"):
        ActionKind(words=("knead",), says="Knead {what}.", what=_WHAT, reach=Reach.THING)  # type: ignore[call-arg]  # what is tested


def test_an_action_that_does_not_say_where_the_hands_are_is_refused() -> None:
    """Without it nobody knows whether a cover is in the way."""
    with pytest.raises(TypeError, match="reach"):
        ActionKind(words=("knead",), says="Knead {what}.", what=_WHAT, effects=())  # type: ignore[call-arg]  # what is tested


@pytest.mark.parametrize("kind", action_kinds().values(), ids=lambda kind: kind.name)
def test_an_effect_is_on_a_role_of_its_action(kind: ActionKind) -> None:
    """An effect on a role that the action does not take would never happen, nor one in a detail it does not have."""
    roles = {"what", *kind.roles}
    assert {effect.of for effect in kind.effects} <= roles
    assert set(kind.reached) <= roles
    assert {effect.says for effect in kind.effects} - {""} <= set(kind.details)
    assert {effect.unless for effect in kind.effects} - {""} <= set(kind.roles)


@pytest.mark.parametrize("kind", action_kinds().values(), ids=lambda kind: kind.name)
def test_a_checkpoint_changes_nothing(kind: ActionKind) -> None:
    """Whatever changes the state is a step of its own (requirement L3)."""
    assert not (kind.checkpoint and kind.effects)


def test_an_effect_says_into_what() -> None:
    """It names the state, or the detail that holds it, and never both."""
    effects: list[Effect] = [effect for kind in action_kinds().values() for effect in kind.effects]
    assert len(effects) >= 30
    assert all(bool(effect.becomes) != bool(effect.says) for effect in effects)
