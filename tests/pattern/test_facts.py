"""Facts of a pattern: rows as long as the sizes, amounts in one way, a put-up where one is needed."""

from typing import Any

import pytest

from loopwright.pattern import Construction, PatternFacts

BASE: dict[str, Any] = {
    "key": "p",
    "name": "Plain",
    "construction": "raglan",
    "gauge": "22 sts x 30 rows = 10 cm",
    "sizes": "S (M, L)",
    "finished": {"bust_girth": "90 (98, 106) cm"},
}


def facts(**more: Any) -> PatternFacts:
    return PatternFacts.model_validate({**BASE, **more})


@pytest.mark.parametrize("row", ["90 (98) cm", "90 (98, 106, 114) cm"])
def test_an_uneven_row_is_named(row: str) -> None:
    with pytest.raises(ValueError, match=r"finished\.bust_girth.*3, one for each of the sizes S, M, L"):
        facts(finished={"bust_girth": row})


def test_an_uneven_row_of_yarn_is_named() -> None:
    with pytest.raises(ValueError, match=r"yarn\.main"):
        facts(yarn={"main": {"length": "900 (980) m"}})


def test_a_decimal_comma_that_parts_too_many_is_not_taken_for_sizes() -> None:
    """`86,5 (94,5)` without blanks could be four sizes; against three it is refused rather than guessed."""
    with pytest.raises(ValueError, match="4 figures"):
        facts(finished={"bust_girth": "86,5 (94,5) cm"})


@pytest.mark.parametrize("amount", [{}, {"length": "900 (980, 1060) m", "mass": "350 (400, 450) g"}])
def test_one_way_of_stating_an_amount(amount: dict[str, str]) -> None:
    with pytest.raises(ValueError, match="one of length, mass or balls"):
        facts(yarn={"main": amount})


@pytest.mark.parametrize("amount", [{"balls": "8 (9, 10)"}, {"mass": "350 (400, 450) g"}])
def test_balls_and_grams_need_the_put_up(amount: dict[str, str]) -> None:
    with pytest.raises(ValueError, match="without the put-up"):
        facts(yarn={"main": amount})
    put_up = facts(yarn={"main": amount}, ball_length="120 m", ball_mass="50 g")
    assert put_up.grist_tex == pytest.approx(50 / 0.12)


def test_a_missing_figure_is_none() -> None:
    assert facts(finished={"bust_girth": "90 (-, 106) cm"}).finished.at("bust_girth", 1) is None
    assert facts().finished.at("hip_girth", 1) is None


def test_what_is_a_top_has_sleeves_but_one() -> None:
    tops = {construction for construction in Construction if construction.is_top}
    assert tops - {one for one in tops if one.has_sleeves} == {Construction.SLEEVELESS}
    assert len(tops) == 5


def test_facts_read_back() -> None:
    whole = facts(yarn={"main": {"length": "900 (980.5, -) m"}}, needle="4 mm", opens_in_front=True)
    assert PatternFacts.model_validate({**whole.model_dump(mode="json")}) == whole
