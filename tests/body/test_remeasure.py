"""Measuring again: former values go into the history, each measure keeps its day, and growth is told with its doubt."""

import datetime as dt
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.body import MEASURES, Body, days_too_old, growths, readings, remeasured
from tests.strategies import bodies, measured

FEBRUARY, JUNE = dt.date(2027, 2, 20), dt.date(2027, 6, 1)


def tam(**facts: object) -> Body:
    return Body.model_validate({"key": "tam", "name": "Tam", "wearer": "child", "measured_on": FEBRUARY, **facts})


def changed(body: Body, **measures: float | None) -> Body:
    return body.model_copy(update=measures)


# --- History ------------------------------------------------------------------------------------------------


def test_a_former_value_goes_into_the_history_under_its_day() -> None:
    before = tam(chest_girth_cm=58.5, height_cm=104)
    now = remeasured(before, changed(before, chest_girth_cm=60.0), JUNE)
    assert readings(now, "chest_girth") == ((FEBRUARY, 58.5), (JUNE, 60.0))


def test_what_was_not_measured_again_keeps_its_day() -> None:
    before = tam(chest_girth_cm=58.5, head_girth_cm=51, height_cm=104)
    now = remeasured(before, changed(before, chest_girth_cm=60.0), JUNE)
    assert (now.taken("height"), now.taken("chest_girth")) == (FEBRUARY, JUNE)
    assert now.earlier[0].height_cm is None


def test_all_taken_again_and_some_the_same() -> None:
    before = tam(chest_girth_cm=58.5, height_cm=104)
    now = remeasured(before, changed(before, chest_girth_cm=60.0), JUNE, all_again=True)
    assert (now.measured_on, now.taken_on) == (JUNE, {})
    assert now.earlier[0].known() == {"chest_girth": 58.5}


def test_on_the_same_day_it_is_a_correction() -> None:
    before = tam(chest_girth_cm=58.5)
    assert remeasured(before, changed(before, chest_girth_cm=59.0), FEBRUARY).earlier == ()


def test_a_first_measure_makes_no_history() -> None:
    before = tam(chest_girth_cm=58.5)
    now = remeasured(before, changed(before, wrist_girth_cm=12.0), JUNE)
    assert now.earlier == ()
    assert now.taken("wrist_girth") == JUNE


def test_two_changes_of_one_day_stand_in_one_entry() -> None:
    before = tam(chest_girth_cm=58.5, height_cm=104, head_girth_cm=51)
    one = remeasured(before, changed(before, chest_girth_cm=60.0), JUNE)
    two = remeasured(one, changed(one, height_cm=106.0), JUNE)
    assert [entry.known() for entry in two.earlier] == [{"chest_girth": 58.5, "height": 104}]


@given(bodies(), measured(), st.dates(), st.booleans())
@settings(max_examples=100, deadline=None)
def test_no_dated_value_is_ever_lost(before: Body, new: dict[str, float], on: dt.date, again: bool) -> None:
    fields = {"mass_kg" if key == "mass" else f"{key}_cm": value for key, value in new.items()}
    now = remeasured(before, changed(before, **fields), on, all_again=again)
    now = Body.model_validate(now.model_dump(by_alias=False))
    for key in MEASURES:
        there = {(day, value) for day, value in readings(before, key) if day != on}
        kept = {(day, value) for day, value in readings(now, key) if day != on}
        days_with_two = {day for day, _ in there if len({value for other, value in there if other == day}) > 1}
        unchanged_again = again and before.measure_cm(key) == now.measure_cm(key)
        lost = {one for one in there - kept if one[0] not in days_with_two}
        assert not lost or (unchanged_again and lost == {(before.taken(key), before.measure_cm(key))})


def test_a_day_twice_is_refused() -> None:
    with pytest.raises(ValueError, match="one entry for each day"):
        tam(earlier=[{"measured_on": FEBRUARY}, {"measured_on": FEBRUARY}])


def test_a_day_without_its_measure_is_refused() -> None:
    with pytest.raises(ValueError, match="that measure as well"):
        tam(taken_on={"hip_girth": FEBRUARY})


def test_an_earlier_entry_needs_its_day() -> None:
    with pytest.raises(ValueError, match="measured_on"):
        tam(earlier=[{"height": "100 cm"}])


@pytest.mark.parametrize(("text", "mass_kg"), [("68 kg", 68), ("150 lb", 68.0388555), ("68500 g", 68.5)])
def test_a_mass_is_read_with_its_unit(text: str, mass_kg: float) -> None:
    """150 lb: the international pound of 1959, 0.45359237 kg exactly."""
    assert tam(mass=text).mass_kg == pytest.approx(mass_kg, abs=1e-9)


@pytest.mark.parametrize("mass", ["68 cm", "0 kg", "900 kg"])
def test_a_mass_that_is_none(mass: str) -> None:
    with pytest.raises(ValueError, match="found"):
        tam(mass=mass)


# --- Growth -------------------------------------------------------------------------------------------------


def test_growth_has_the_doubt_of_two_readings() -> None:
    body = tam(height_cm=104, earlier=[{"measured_on": "2026-08-20", "height": "100.5 cm"}])
    (growth,) = growths(body)
    assert growth.change_cm.mean == pytest.approx(3.5)
    assert growth.change_cm.sd == pytest.approx(math.sqrt(2) * MEASURES["height"].plan_sd_cm)
    assert growth.per_year_cm is not None
    assert growth.per_year_cm.mean == pytest.approx(3.5 / 184 * 365.25)
    assert growth.is_clear


def test_a_few_days_give_no_rate() -> None:
    body = tam(height_cm=104, earlier=[{"measured_on": "2027-02-01", "height": "103 cm"}])
    assert growths(body)[0].per_year_cm is None
    assert not growths(body)[0].is_clear


def test_the_last_two_readings_count() -> None:
    earlier = [{"measured_on": "2026-01-01", "height": "97 cm"}, {"measured_on": "2026-08-20", "height": "100.5 cm"}]
    assert growths(tam(height_cm=104, earlier=earlier))[0].from_cm == 100.5


def test_a_child_s_measures_grow_old_after_three_months() -> None:
    body = tam(height_cm=104)
    assert days_too_old(body, FEBRUARY + dt.timedelta(days=92)) == {}
    assert days_too_old(body, FEBRUARY + dt.timedelta(days=93)) == {"height": 93}


def test_a_grown_up_s_do_not() -> None:
    assert days_too_old(tam(wearer="woman", height_cm=165), dt.date(2030, 1, 1)) == {}
