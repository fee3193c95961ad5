"""What a change does: figures that read otherwise, and no others."""

import pytest

from loopwright.documents import differences
from loopwright.season import Season, SeasonPlan, plan, with_garment
from loopwright.season.wording import Wording
from loopwright.units import Reader

METRIC = Wording(Reader(), 2027)


def rows(season: Season, planned: SeasonPlan, key: str, **changes: str) -> dict[str, tuple[str, str]]:
    """The differences of one change to one garment, by label."""
    tried = plan(with_garment(season, key, {path.replace("__", "."): value for path, value in changes.items()}))
    found = differences(planned.garment(key), tried.garment(key), METRIC)
    return {row.label: (row.kept, row.tried) for row in found}


def test_the_same_plan_has_no_differences(planned: SeasonPlan) -> None:
    assert all(differences(garment, garment, METRIC) == () for garment in planned.garments)


def test_a_longer_body_changes_length_need_stitches_and_hours_alone(season: Season, planned: SeasonPlan) -> None:
    found = rows(season, planned, "cardigan", changes__body_longer="8 cm")
    # Its fronts are longer too, and so are the bands along them, which are knitted in oat.
    assert list(found) == ["finished length", "Tarn needed", "Oat needed", "stitches", "hours"]


def test_a_longer_body_is_longer_by_what_was_asked(season: Season, planned: SeasonPlan) -> None:
    # The pattern's 60 cm of size M with 4 cm kept and 8 cm tried.
    assert rows(season, planned, "cardigan", changes__body_longer="8 cm")["finished length"] == ("64 cm", "68 cm")


def test_both_sides_read_as_the_plans_do(season: Season, planned: SeasonPlan) -> None:
    tried = plan(with_garment(season, "cardigan", {"changes.body_longer": "8 cm"})).garment("cardigan")
    kept = planned.garment("cardigan")
    found = rows(season, planned, "cardigan", changes__body_longer="8 cm")
    needs = [METRIC.estimate(garment.roles[0].need_m) for garment in (kept, tried)]
    assert list(found["Tarn needed"]) == needs


def test_another_size_is_named(season: Season, planned: SeasonPlan) -> None:
    found = rows(season, planned, "cardigan", size="XL")
    assert found["size"] == ("M", "XL")
    assert "finished bust" in found


def test_more_balls_are_a_difference(season: Season, planned: SeasonPlan) -> None:
    tried = plan(with_garment(season, "cardigan", {"changes.body_longer": "30 cm"}))
    balls = [one.garment("cardigan").roles[0].balls_to_buy for one in (planned, tried)]
    found = rows(season, planned, "cardigan", changes__body_longer="30 cm")
    assert balls[0] < balls[1]
    assert found["Tarn to buy"] == (Wording.counted(balls[0], "ball"), Wording.counted(balls[1], "ball"))


def test_what_changes_no_figure_has_no_rows(season: Season, planned: SeasonPlan) -> None:
    assert rows(season, planned, "cardigan", sureness="94 %") == {}


@pytest.mark.parametrize(("measures", "length"), [("metric", "68 cm"), ("imperial", "26¾ in")])
def test_figures_are_in_the_readers_measures(season: Season, planned: SeasonPlan, measures: str, length: str) -> None:
    wording = Wording(Reader(measures="imperial" if measures == "imperial" else "metric"), 2027)
    tried = plan(with_garment(season, "cardigan", {"changes.body_longer": "8 cm"}))
    first = differences(planned.garment("cardigan"), tried.garment("cardigan"), wording)[0]
    assert first.tried == length
