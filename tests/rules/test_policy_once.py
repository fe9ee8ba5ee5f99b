"""What takes a danger away and for whom, what loosens a default, and what is told once only."""

from __future__ import annotations

import pytest

from tests.rules.test_policy import BARE, CALLED, PLACING, PROCEDURE, SHOP, checked, found, rules

WINDOWS = """\
values:
  cool:
    name: temperature of the exhaust
    windows:
{}
hazards: none
sections:
  - title: Wipe
    needs: {{exhaust: cool}}
    steps:
      - step: Clean the [exhaust].
        do: [{{clean: exhaust}}]
"""
COLD = "      - {value: at most 40 °C, when: {brake: [drum]}, source: bench-book, at: page 8, why: Nobody notices it.}"
WARM = COLD.replace("40 °C", "200 °C").replace("[drum]", "[disc]")
WARM_FOR_ALL = WARM.replace("when: {brake: [disc]}, ", "")


@pytest.mark.parametrize(
    ("windows", "concerned"),
    [
        pytest.param((COLD, WARM), ["parking brake: disc brake"], id="the warm window is second"),
        pytest.param((WARM, COLD), ["parking brake: disc brake"], id="the warm window is first"),
        pytest.param((COLD, WARM_FOR_ALL), [""], id="both windows hold for the drum"),
        pytest.param((COLD, COLD.replace("[drum]", "[disc]")), [], id="both windows are cold"),
    ],
)
def test_a_thing_has_cooled_only_where_its_own_window_says_so(windows: tuple[str, str], concerned: list[str]) -> None:
    """Whichever window stands first, each machine goes by the warmest window that holds for it."""
    told = found(WINDOWS.format("\n".join(windows)))
    assert [(rule, whom) for rule, _, _, whom in told] == [("policy-unmet", whom) for whom in concerned]


CRUSH = """\
hazards:
  hot: {name: hot surface, emergency: [Hold the burn under cool running water.]}
  crush: {name: crushing, emergency: [Call the first-aider.]}
"""
CRUSHED = SHOP[SHOP.index("  hot-exhaust:") : SHOP.index("policy:")].replace("  hot-exhaust:", "  crushed:", 1)
OTHER = SHOP.replace(SHOP[: SHOP.index("safety:")], CRUSH).partition("policy:")[0]


@pytest.mark.parametrize(
    ("sign", "stated", "loosened"),
    [
        pytest.param("", "hazard: crush", 1, id="a kind whose messages have no sign"),
        pytest.param("    sign: crushing\n", "hazard: crush", 1, id="a kind of another sign"),
        pytest.param("", "hazard: hot", 0, id="the kind whose messages have the sign of the default"),
        pytest.param("", "acts: [touch]", 1, id="no word of what is only near"),
        pytest.param("", "acts: [clean, near]", 1, id="one action of all"),
        pytest.param("", "acts: [near, touch, clean]", 0, id="all that the default asks"),
        pytest.param("", "hazard: crush, loosened: Nothing here is hot", 0, id="the reason is told"),
    ],
)
def test_a_default_is_not_emptied_without_a_word(sign: str, stated: str, loosened: int) -> None:
    """Another kind of hazard, or fewer acts, asks less than the default of that name does."""
    other = CRUSHED.replace("    sign: hot-surface\n", sign).replace("of: hot", "of: crush")
    shop = f"{OTHER}{other}policy:\n  hot-surface: {{{stated}, why: We say so.}}\n"
    assert rules(checked(PROCEDURE, shop)).count("policy-loosened") == loosened


WEAR = "    wear: [gauntlets]\n"


@pytest.mark.parametrize("called", [pytest.param(CALLED, id="called"), pytest.param("", id="placed")])
def test_what_is_not_laid_ready_is_told_once(called: str) -> None:
    """Where the policy wants it worn, the message that asks for the same is not told beside it."""
    bare = BARE.replace("        with: [gauntlets]\n", called, 1)
    assert rules(checked(bare, SHOP + PLACING + WEAR)) == ["policy-without-protection"]
    assert "policy-without-protection" not in rules(checked(bare, SHOP + PLACING))
    assert "protection-not-listed" in rules(checked(bare, SHOP + PLACING))
    of_section = BARE.replace("        with: [gauntlets]\n", "").replace(
        "    steps:", "    safety: [hot-exhaust]\n    steps:"
    )
    assert rules(checked(of_section, SHOP + WEAR)) == ["policy-without-protection"]
