"""A body measured again: one action, whole or not at all, and undone in one step."""

import datetime as dt

import pytest

from loopwright.season import Season
from loopwright.store import changes
from loopwright.store.errors import ChangeRefused
from loopwright.units import BadInput

JUNE = dt.date(2027, 6, 1)


@pytest.fixture
def key(winter: Season) -> str:
    return changes.keep_season(winter)


def test_it_changes_the_measure_and_keeps_the_former_one(key: str) -> None:
    season = changes.change_body(key, "tam", "measured Tam", {"height": "106 cm"}, measured_on=JUNE)
    tam = season.body_by_key["tam"]
    assert (tam.height_cm, tam.earlier[-1].height_cm, tam.taken("height")) == (106, 104, JUNE)
    assert changes.season_of(key) == season


def test_it_is_one_step_back(key: str, winter: Season) -> None:
    changes.change_body(key, "tam", "measured Tam", {"height": "106 cm", "head_girth": "52 cm"}, measured_on=JUNE)
    assert changes.undo(key) == "measured Tam"
    assert changes.season_of(key) == winter


def test_a_fault_leaves_all_as_it_was(key: str, winter: Season) -> None:
    with pytest.raises(ChangeRefused, match=r"bodies\.tam\.head_girth"):
        changes.change_body(key, "tam", "measured Tam", {"height": "106 cm", "head_girth": "52"}, measured_on=JUNE)
    assert changes.season_of(key) == winter


def test_a_measure_that_is_taken_away_takes_its_day_along(key: str) -> None:
    changes.change_body(key, "tam", "one more", {"wrist_girth": "12 cm"}, measured_on=JUNE)
    tam = changes.change_body(key, "tam", "one less", {"wrist_girth": ""}, measured_on=JUNE).body_by_key["tam"]
    assert (tam.wrist_girth_cm, dict(tam.taken_on)) == (None, {})


def test_nobody_of_that_key(key: str) -> None:
    with pytest.raises(BadInput, match="'eve', which is not there"):
        changes.change_body(key, "eve", "measured Eve", {}, measured_on=JUNE)


def test_a_season_without_a_change_is_not_noted(key: str) -> None:
    changes.change_body(key, "tam", "nothing", {"height": "1040 mm"}, measured_on=JUNE)
    assert changes.history(key).undo is None
