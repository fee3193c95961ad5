"""Undo and redo, and seasons put away and brought back."""

import datetime as dt

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from loopwright.season import Season
from loopwright.store import changes, undo
from loopwright.store.models import Revision, SeasonRow


def days_on(season: Season, days: int) -> Season:
    """The season some days later, so that one differs from another."""
    return season.model_copy(update={"today": season.today + dt.timedelta(days=days)})


def test_a_change_is_undone_and_made_again(winter: Season, later: Season) -> None:
    key = changes.keep_season(winter)
    changes.keep_season(later, says="a week later")
    assert changes.undo(key) == "a week later"
    assert changes.season_of(key) == winter
    assert changes.redo(key) == "a week later"
    assert changes.season_of(key) == later


def test_history_tells_what_each_step_would_do(winter: Season, later: Season) -> None:
    key = changes.keep_season(winter)
    assert changes.history(key) == changes.Past(undo=None, redo=None)
    changes.keep_season(later, says="one")
    changes.keep_season(winter, says="two")
    changes.undo(key)
    assert changes.history(key) == changes.Past(undo="one", redo="two")


def test_a_new_season_cannot_be_undone(winter: Season) -> None:
    key = changes.keep_season(winter)
    with pytest.raises(changes.NothingToUndo, match=f"{key}: there is no change to undo"):
        changes.undo(key)
    assert changes.season_of(key) == winter


def test_nothing_is_made_again_unless_it_was_undone(winter: Season, later: Season) -> None:
    key = changes.keep_season(winter)
    changes.keep_season(later)
    with pytest.raises(changes.NothingToRedo):
        changes.redo(key)


def test_a_new_change_ends_what_could_be_made_again(winter: Season, later: Season) -> None:
    key = changes.keep_season(winter)
    changes.keep_season(later)
    changes.undo(key)
    changes.keep_season(days_on(winter, 1))
    with pytest.raises(changes.NothingToRedo):
        changes.redo(key)


def test_one_season_does_not_undo_another(winter: Season, later: Season) -> None:
    changes.keep_season(winter, key="a")
    changes.keep_season(winter, key="b")
    changes.keep_season(later, key="a")
    with pytest.raises(changes.NothingToUndo):
        changes.undo("b")


def test_a_season_put_away_is_gone_and_comes_back_whole(winter: Season, later: Season, text: str) -> None:
    key = changes.keep_season(later)
    changes.keep_season(winter, text=text, says="a change")
    changes.forget_season(key)
    assert changes.season_keys() == ()
    assert [(one.key, one.name, one.garments) for one in changes.put_away_list()] == [(key, winter.name, 5)]
    assert changes.bring_back(key) == f"put away {winter.name}"
    assert changes.season_of(key) == winter
    assert changes.text_of(key, "toml") == text
    assert changes.undo(key) == "a change"
    assert changes.put_away_list() == ()


def test_putting_away_can_be_undone_and_made_again(winter: Season) -> None:
    key = changes.keep_season(winter)
    changes.forget_season(key)
    changes.undo(key)
    assert changes.season_keys() == (key,)
    changes.redo(key)
    assert changes.season_keys() == ()


def test_only_what_is_gone_is_brought_back(winter: Season) -> None:
    key = changes.keep_season(winter)
    with pytest.raises(changes.SeasonIsThere):
        changes.bring_back(key)


def test_a_season_in_the_place_of_one_put_away_can_be_undone_to_it(winter: Season, later: Season) -> None:
    key = changes.keep_season(winter)
    changes.forget_season(key)
    assert changes.keep_season(later) == key
    changes.undo(key)
    assert changes.season_of(key) == winter


def test_a_new_name_does_not_take_the_key_of_one_put_away(winter: Season) -> None:
    key = changes.keep_season(winter)
    changes.forget_season(key)
    assert changes.keep_season(winter.model_copy(update={"name": winter.name.upper()})) == f"{key}-2"
    assert changes.bring_back(key)


def test_the_oldest_changes_are_let_go(winter: Season, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(undo, "MOST_REVISIONS", 3)
    key = changes.keep_season(winter)
    for day in range(1, 6):
        changes.keep_season(days_on(winter, day))
    assert Revision.objects.count() == 3
    for _ in range(3):
        changes.undo(key)
    assert changes.season_of(key) == days_on(winter, 2)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=30)
@given(actions=st.lists(st.sampled_from(["change", "undo", "redo", "forget"]), max_size=14))
def test_any_run_of_actions_does_what_a_list_of_states_does(winter: Season, actions: list[str]) -> None:
    """The twin keeps every state in a list and moves along it; None is a season put away."""
    SeasonRow.objects.all().delete()
    Revision.objects.all().delete()
    key = changes.keep_season(winter)
    states: list[Season | None] = [winter]
    here = 0
    for number, action in enumerate(actions, start=1):
        if action == "change":
            new = days_on(winter, number)
            changes.keep_season(new)
            # A season in the place of one put away stands where that was.
            states = [*states[: here if states[here] is None else here + 1], new]
            here = len(states) - 1
        elif action == "forget" and states[here] is not None:
            changes.forget_season(key)
            states = [*states[: here + 1], None]
            here += 1
        elif action == "undo" and here > 0:
            changes.undo(key)
            here -= 1
        elif action == "redo" and here < len(states) - 1:
            changes.redo(key)
            here += 1
        present = changes.season_of(key) if key in changes.season_keys() else None
        assert present == states[here]
