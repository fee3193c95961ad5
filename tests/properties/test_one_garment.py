"""What a change to one garment may and may not do."""

import datetime as dt
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.season import RolePlanned, plan
from tests.season.small import BASE, season

J = "garments.jumper"
FEW = settings(max_examples=40)
SWATCH = st.none() | st.tuples(st.integers(18, 26), st.integers(24, 36))


def role(changes: dict[str, Any]) -> RolePlanned:
    return plan(season(changes)).garment("jumper").roles[0]


def gauge(swatch: tuple[int, int] | None) -> dict[str, Any]:
    if swatch is None:
        return {f"{J}.swatch": None}
    return {"swatches.plain.after": f"{swatch[0]} sts x {swatch[1]} rows = 10 cm"}


@FEW
@given(SWATCH, st.sampled_from("SML"), st.integers(-15, 20), st.integers(-15, 20))
def test_a_longer_body_never_needs_less(swatch: tuple[int, int] | None, size: str, one: int, other: int) -> None:
    shorter, longer = (
        role(gauge(swatch) | {f"{J}.size": size} | ({f"{J}.changes.body_longer": f"{cm} cm"} if cm else {})).need_m.mean
        for cm in sorted((one, other))
    )
    assert longer >= shorter


@FEW
@given(SWATCH, st.integers(-10, 10), st.integers(-10, 10))
def test_longer_sleeves_never_need_less(swatch: tuple[int, int] | None, one: int, other: int) -> None:
    shorter, longer = (
        role(gauge(swatch) | ({f"{J}.changes.sleeves_longer": f"{cm} cm"} if cm else {})).need_m.mean
        for cm in sorted((one, other))
    )
    assert longer >= shorter


@FEW
@given(SWATCH)
def test_a_larger_size_never_needs_less(swatch: tuple[int, int] | None) -> None:
    needs = [role(gauge(swatch) | {f"{J}.size": size}).need_m.mean for size in "SML"]
    assert needs == sorted(needs)


@FEW
@given(SWATCH, st.integers(2, 4))
def test_strands_take_as_many_times_the_metres(swatch: tuple[int, int] | None, strands: int) -> None:
    """Strands of a fine yarn against one yarn as thick as all of them: the same fabric, so many times the metres.

    But for the ends: put-ups that are so many times as long end less often.
    """
    fine = {"yarns.dk.length": f"{120 * strands} m", f"{J}.yarns.main.strands": strands, "cupboard": {}}
    together, single = role(gauge(swatch) | fine), role(gauge(swatch) | {"cupboard": {}})
    assert together.need_m.mean == pytest.approx(strands * single.need_m.mean, rel=0.005)
    assert together.need_g == pytest.approx(single.need_g, rel=0.005)


def test_another_yarn_held_along_runs_as_long() -> None:
    held = {f"{J}.yarns.main.held_with": [{"yarn": "lace", "colour": "Mist"}]}
    own, along = plan(season(held)).garment("jumper").roles
    assert along.need_m.mean == own.need_m.mean
    assert along.yarn == "lace"


@FEW
@given(st.integers(1, 12), st.integers(50, 99), st.integers(50, 99))
def test_surer_is_never_fewer_balls(put_ups: int, one: int, other: int) -> None:
    less, more = (
        role({"cupboard.oat.put_ups": put_ups, f"{J}.sureness": f"{percent} %"}) for percent in sorted((one, other))
    )
    assert less.balls_to_buy <= more.balls_to_buy


@FEW
@given(st.integers(1, 14), st.integers(1, 14), SWATCH)
def test_more_at_home_is_never_more_to_buy(one: int, other: int, swatch: tuple[int, int] | None) -> None:
    fewer, more = (role(gauge(swatch) | {"cupboard.oat.put_ups": n}) for n in sorted((one, other)))
    assert more.balls_to_buy <= fewer.balls_to_buy


@FEW
@given(st.integers(60, 150), st.integers(60, 150), st.sampled_from(["close", "standard", "loose"]))
def test_a_larger_body_never_gets_a_smaller_size(one: int, other: int, style: str) -> None:
    """Only the bust known, one construction, one style."""
    sizes = [
        plan(season({"bodies.mo.bust_girth": f"{cm} cm", f"{J}.fit": style})).garment("jumper").size
        for cm in sorted((one, other))
    ]
    assert "SML".index(sizes[0] or "") <= "SML".index(sizes[1] or "")


@FEW
@given(st.integers(60, 400), st.integers(60, 400))
def test_a_later_deadline_is_never_less_likely(one: int, other: int) -> None:
    sooner, later = (
        plan(season({f"{J}.due": season().today + dt.timedelta(days=n)})).garment("jumper").forecast
        for n in sorted((one, other))
    )
    assert sooner is not None
    assert later is not None
    assert (sooner.p_by_due or 0) <= (later.p_by_due or 0)


METRIC: dict[str, Any] = {
    "bodies.mo.bust_girth": "92.71 cm",
    "yarns.dk.length": "118.872 m",
    "yarns.dk.mass": "49.61166546875 g",
    "swatches.plain.width": "15.24 cm",
    "swatches.plain.height": "15.24 cm",
    "swatches.plain.mass": "14.1747615625 g",
    "swatches.plain.needle": "4 mm",
    "swatches.plain.after": "22 sts x 30 rows = 10.16 cm",
    "cupboard.oat.weighed": "28.349523125 g",
    "patterns.plain.finished.bust_girth": "91.44 (101.6, 111.76) cm",
    "patterns.plain.yarn.main": {"length": "914.4 (1005.84, 1097.28) m"},
    f"{J}.changes.body_longer": "3.81 cm",
}
IMPERIAL: dict[str, Any] = {
    "bodies.mo.bust_girth": "36 1/2 in",
    "yarns.dk.length": "130 yd",
    "yarns.dk.mass": "1 3/4 oz",
    "swatches.plain.width": "6 in",
    "swatches.plain.height": "0.5 ft",
    "swatches.plain.mass": "½ oz",
    "swatches.plain.needle": "0.4 cm",
    "swatches.plain.after": "22 sts x 30 rows = 4 in",
    "cupboard.oat.weighed": "1 oz",
    "patterns.plain.finished.bust_girth": '36 (40, 44)"',
    "patterns.plain.yarn.main": {"length": "1000 (1100, 1200) yd"},
    f"{J}.changes.body_longer": "1.5 in",
}


def test_a_season_in_inches_yards_and_ounces_is_the_metric_one() -> None:
    """Every factor is exact by the agreement of 1959 (from memory), so not a figure may differ."""
    assert season(IMPERIAL) == season(METRIC)
    assert plan(season(IMPERIAL)) == plan(season(METRIC))


def test_the_base_is_not_changed_by_its_use() -> None:
    season({f"{J}.due": dt.date(2027, 5, 1)})
    assert "due" not in BASE["garments"]["jumper"]
