"""What is worked out where facts are missing, and widths that follow the gauge."""

from typing import Any

import pytest

from loopwright.fabric import Gauge, loop_length_mm
from loopwright.season import GarmentPlan, plan
from loopwright.units import BadInput
from tests.season.small import TODAY, season

J = "garments.jumper"
FEW_MEASURES: dict[str, Any] = {"patterns.plain.finished": {"bust_girth": "92 (100, 108) cm"}, f"{J}.size": "M"}


def jumper(changes: dict[str, Any]) -> GarmentPlan:
    return plan(season(changes)).garment("jumper")


def test_without_an_area_stitches_come_from_the_yarn() -> None:
    """1060 m for a raglan, 1.10 of it in the plain area, by the loop of the swatch: the doubt says how rough it is."""
    found = jumper(FEW_MEASURES)
    loop_mm = loop_length_mm(Gauge(stitches_per_10cm=22, rows_per_10cm=30), 50 / 0.12)
    assert found.stitches is not None
    assert found.stitches.mean == pytest.approx(1060_000 / loop_mm / 1.10, rel=0.05)
    assert found.stitches.relative_sd > 0.06


def test_stitches_by_yarn_and_by_area_agree_within_their_doubt() -> None:
    by_yarn, by_area = jumper(FEW_MEASURES).stitches, jumper({f"{J}.size": "M"}).stitches
    assert by_yarn is not None
    assert by_area is not None
    assert abs(by_yarn.mean - by_area.mean) < 2 * (by_yarn.sd**2 + by_area.sd**2) ** 0.5


def test_where_nothing_is_known_of_the_yarn_nothing_is_made_up() -> None:
    found = jumper(FEW_MEASURES | {"patterns.plain.yarn": {}})
    assert (found.roles, found.stitches, found.hours) == ((), None, None)
    assert found.answer("yarn").sentence.startswith("Not known")
    assert found.forecast is None


@pytest.mark.parametrize(
    ("construction", "measures", "point"),
    [
        ("raglan", {"bust_girth": "100 cm"}, "bust_girth"),
        ("hat", {"head_girth": "54 cm", "length": "22 cm"}, "head_girth"),
        ("rectangle", {"width": "45 cm", "length": "170 cm"}, "width"),
    ],
)
def test_the_doubt_of_the_gauge_is_shown_where_stitches_decide(
    construction: str, measures: dict[str, str], point: str
) -> None:
    """2 % of a count, in three places: 2 %/√3 of the width (our judgement)."""
    facts = {"construction": construction, "sizes": "one", "finished": measures, "yarn": {}}
    found = jumper({f"patterns.plain.{key}": value for key, value in facts.items()} | {f"{J}.size": "one"})
    assert found.gauge is not None
    assert found.gauge.width_doubt_cm == pytest.approx(0.02 / 3**0.5 * found.finished_cm[point])


def test_two_parcels_too_heavy_together_are_not_called_bought() -> None:
    """Each fits into the shop's last step alone, both do not: said, not dropped. (Two orders would do; not planned.)"""
    edge = {"patterns.plain.yarn.edge": {"length": "900 (900, 900) m"}, "cupboard": {}}
    yarns = {"main": {"yarn": "dk", "colour": "Oat"}, "edge": {"yarn": "dk", "colour": "Rust"}}
    heavy = {"shops.loft.postage": {"steps": [{"up_to": "700 g", "price": "9.00 NZD"}]}}
    parcels = plan(season(edge | heavy | {f"{J}.yarns": yarns})).parcels
    assert parcels.parcels == ()
    assert {need.colour for need in parcels.unsupplied} == {"Oat", "Rust"}
    assert not parcels.proven


def test_what_is_knitted_is_taken_off_once() -> None:
    """Stitches by the yarn are those of the whole garment, as those by the area are; only the hours shrink."""
    whole, begun = jumper(FEW_MEASURES), jumper(FEW_MEASURES | {f"{J}.begun_on": TODAY, f"{J}.knitted": "60 %"})
    assert whole.stitches is not None
    assert begun.stitches is not None
    assert begun.stitches.mean == pytest.approx(whole.stitches.mean)


def test_another_yarn_than_the_swatch_takes_the_metres_of_the_swatch() -> None:
    """A square metre has as many metres of it: the swatch's grams are those of the swatch's own yarn."""
    weighed = {"swatches.plain.mass": "100 g", "swatches.plain.width": "45 cm", "swatches.plain.height": "45 cm"}
    silent = weighed | {"patterns.plain.yarn": {}, f"{J}.size": "M"}
    own = jumper(silent).roles[0].need_m.mean
    other = jumper(silent | {f"{J}.yarns": {"main": {"yarn": "lace", "colour": "Oat"}}}).roles[0].need_m.mean
    assert other == pytest.approx(own, rel=0.1)


def test_a_shorter_body_is_taken_off_in_the_working() -> None:
    steps = jumper({f"{J}.size": "M", f"{J}.changes": {"body_longer": "-8 cm"}}).roles[0].need_m.steps
    assert " m − " in steps[-1].working


def test_a_point_that_does_not_count_judges_no_size() -> None:
    """A dropped shoulder leaves the waist out of account: with that alone, nothing is ranked and nothing breaks."""
    facts = {
        "patterns.plain.construction": "drop shoulder",
        "patterns.plain.finished": {"waist_girth": "90 (98, 106) cm"},
        "bodies.mo.waist_natural_girth": "74 cm",
        f"{J}.ease": {"waist_girth": "10 cm"},
    }
    assert jumper(facts).fits == ()


def test_put_ups_too_short_for_the_need_are_named() -> None:
    with pytest.raises(BadInput, match="put-ups of 1 m") as caught:
        plan(
            season(
                {
                    "yarns.dk.length": "1 m",
                    "patterns.plain.yarn.main.length": "90000 (90000, 90000) m",
                    f"{J}.size": "M",
                }
            )
        )
    assert caught.value.place == "yarns.dk.length"


@pytest.mark.parametrize("rate", ["1e999999", "1e-999999"])
def test_a_rate_that_no_money_has_is_refused(rate: str) -> None:
    """Its exact fraction would have a million digits."""
    with pytest.raises(ValueError, match="a rate of"):
        season({"rates.EUR": rate})
