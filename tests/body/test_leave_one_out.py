"""The page on filling in: its tables are up to date, and the estimates are as good as the page says in words.

The people are of two surveys, see ``tests/published/people.py``. Limits are ours.
"""

from pathlib import Path

import pytest

from loopwright.body import Wearer
from tests.body.leave_one_out import leave_one_out, with_tables

PAGE = Path(__file__).parents[2] / "docs" / "fill-in.md"


def test_the_tables_are_up_to_date() -> None:
    text = PAGE.read_text("utf-8")
    assert with_tables(text) == text, "run python -m tests.body.leave_one_out docs/fill-in.md"


def test_a_page_without_markers_is_left_alone() -> None:
    with pytest.raises(ValueError, match="has no lines"):
        with_tables("# A page")


@pytest.mark.parametrize("wearer", [Wearer.WOMAN, Wearer.MAN])
def test_bands_hold_about_what_they_say_for_people_of_the_survey(wearer: Wearer) -> None:
    found = leave_one_out("ansur2", wearer)
    assert 0.70 <= sum(one.in_80 for one in found) / len(found) <= 0.90
    assert 0.88 <= sum(one.in_95 for one in found) / len(found) <= 1


@pytest.mark.parametrize("wearer", [Wearer.WOMAN, Wearer.MAN])
def test_more_that_is_known_errs_less(wearer: Wearer) -> None:
    small = {one.measure: one for one in leave_one_out("ansur2", wearer, ("bust_girth", "chest_girth", "height"))}
    rest = {one.measure: one for one in leave_one_out("ansur2", wearer)}
    assert sum(rest[key].rmse_cm for key in small) < 0.9 * sum(one.rmse_cm for one in small.values())


def test_another_survey_s_forearms_are_off() -> None:
    """The page warns of it: a crowd measured elsewhere is not the survey."""
    forearm = next(one for one in leave_one_out("body507", Wearer.WOMAN) if one.measure == "forearm_girth")
    assert forearm.bias_cm > 1
    assert forearm.in_80 < 0.5
