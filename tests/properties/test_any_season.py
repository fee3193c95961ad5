"""What holds for every season, whatever is in it."""

import math
from collections import Counter, defaultdict
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import BaseModel

from loopwright.season import SeasonPlan, plan
from loopwright.uncertainty import Estimate, Origin
from tests.properties.seasons import facts_of_seasons, read

FEW = settings(max_examples=40)


def estimates_in(value: Any) -> Iterator[Estimate]:
    """Every estimate in a plan, wherever it stands."""
    if isinstance(value, Estimate):
        yield value
    elif isinstance(value, BaseModel):
        for name in type(value).model_fields:
            yield from estimates_in(getattr(value, name))
    elif isinstance(value, tuple | list):
        for item in value:
            yield from estimates_in(item)
    elif isinstance(value, dict):
        yield from estimates_in(list(value.values()))


def shuffled(facts: dict[str, Any], table: str, random: Any) -> dict[str, Any]:
    rows = list(facts[table].items())
    return facts | {table: dict(random.sample(rows, len(rows)))}


def totals(planned: SeasonPlan) -> tuple[int, dict[str, int]]:
    balls = {garment.key: sum(role.balls_to_buy for role in garment.roles) for garment in planned.garments}
    return planned.parcels.total.minor, balls


@FEW
@given(facts_of_seasons())
def test_planning_is_pure(facts: dict[str, Any]) -> None:
    season, untouched = read(facts), read(facts)
    first = plan(season)
    assert plan(season) == first
    assert season == untouched
    assert season.model_dump() == untouched.model_dump()


@FEW
@given(facts_of_seasons())
def test_every_figure_has_its_origin_doubt_and_working(facts: dict[str, Any]) -> None:
    for estimate in estimates_in(plan(read(facts))):
        assert isinstance(estimate.origin, Origin)
        assert math.isfinite(estimate.mean)
        assert math.isfinite(estimate.sd)
        assert estimate.sd >= 0
        assert estimate.steps


@FEW
@given(facts_of_seasons())
def test_what_is_bought_makes_every_role_as_sure_as_wanted(facts: dict[str, Any]) -> None:
    for garment in plan(read(facts)).garments:
        for role in garment.roles:
            assert role.p_after >= role.sureness
            assert role.have_m.mean + role.balls_to_buy * role.ball_m >= role.need_m.mean
            assert 0 <= role.balls_to_buy <= role.balls_in_all + 1


@FEW
@given(facts_of_seasons())
def test_no_lot_is_given_away_twice(facts: dict[str, Any]) -> None:
    season = read(facts)
    taken: defaultdict[str, float] = defaultdict(float)
    for garment in plan(season).garments:
        for role in garment.roles:
            for piece in role.taken:
                taken[piece.supply] += piece.metres
    yarn = season.yarn_by_key["dk"]
    grams = {lot.key: lot.put_ups * yarn.mass_g + (lot.mass_g or 0) for lot in season.cupboard}
    holds = {key: mass_g / yarn.grist_tex * 1000 for key, mass_g in grams.items()}
    holds |= {
        f"{order.key}-{number + 1}": line.put_ups * yarn.length_m
        for order in season.orders
        for number, line in enumerate(order.lines)
    }
    assert all(metres <= holds[key] * (1 + 1e-9) for key, metres in taken.items())


@FEW
@given(facts_of_seasons())
def test_parcels_hold_what_is_short_and_sum_up(facts: dict[str, Any]) -> None:
    planned = plan(read(facts))
    parcels = planned.parcels
    assert parcels.total.minor == sum(parcel.landed.minor for parcel in parcels.parcels)
    short: Counter[str] = Counter()
    for garment in planned.garments:
        short.update({role.colour: role.balls_to_buy for role in garment.roles})
    found = Counter({line.colour: line.balls_needed for parcel in parcels.parcels for line in parcel.lines})
    found.update({need.colour: need.balls for need in parcels.unsupplied})
    assert +short == +found
    assert all(line.balls >= line.balls_needed for parcel in parcels.parcels for line in parcel.lines)


@FEW
@given(facts_of_seasons())
def test_garments_pay_for_all_of_it_between_them(facts: dict[str, Any]) -> None:
    """To a minor unit for each share, by rounding."""
    planned = plan(read(facts))
    paid = sum(garment.to_pay.minor for garment in planned.garments if garment.to_pay)
    assert paid == pytest.approx(planned.parcels.total.minor, abs=8)


@FEW
@given(facts_of_seasons())
def test_every_open_garment_has_one_place(facts: dict[str, Any]) -> None:
    season = read(facts)
    planned = plan(season)
    assert sorted(one.key for one in planned.garments) == sorted(one.key for one in season.garments)
    dated = [one for one in planned.garments if one.starts_on and one.forecast]
    assert all(one.starts_on >= season.today for one in dated if one.starts_on)
    assert all(one.forecast.half_likely <= one.forecast.nineteen_in_twenty for one in dated if one.forecast)


@FEW
@given(facts_of_seasons(), st.randoms(use_true_random=False))
def test_the_order_of_shops_changes_no_total(facts: dict[str, Any], random: Any) -> None:
    """Of two equally dear ways another may be taken, and with it other days; the sums stay."""
    assert totals(plan(read(shuffled(facts, "shops", random)))) == totals(plan(read(facts)))


@FEW
@given(facts_of_seasons(), st.randoms(use_true_random=False))
def test_the_order_of_lots_changes_no_need_and_little_else(facts: dict[str, Any], random: Any) -> None:
    """Equal lots are used in her order, and a lot known by the scale is more doubtful than one by its band: what is
    left for a later garment then differs in doubt, which may move a role by a ball. The metres at home do not move."""
    one, other = plan(read(facts)), plan(read(shuffled(facts, "cupboard", random)))
    needs = [[(role.need_m.mean, role.have_m.mean) for role in garment.roles] for garment in by_key(one)]
    again = [[(role.need_m.mean, role.have_m.mean) for role in garment.roles] for garment in by_key(other)]
    for roles, same_roles in zip(needs, again, strict=True):
        assert [figure for pair in same_roles for figure in pair] == pytest.approx(
            [figure for pair in roles for figure in pair], rel=1e-9, abs=1e-6
        )
    balls, same_balls = totals(one)[1], totals(other)[1]
    assert all(abs(balls[key] - same_balls[key]) <= 1 for key in balls)


@FEW
@given(facts_of_seasons(), st.randoms(use_true_random=False))
def test_the_order_of_garments_changes_no_need_and_no_hours(facts: dict[str, Any], random: Any) -> None:
    """It does decide who claims the yarn where no deadline does, and so what is bought; that is her say."""
    one, other = plan(read(facts)), plan(read(shuffled(facts, "garments", random)))
    assert other.hours.mean == pytest.approx(one.hours.mean)
    needs = {garment.key: [role.need_m for role in garment.roles] for garment in one.garments}
    assert {garment.key: [role.need_m for role in garment.roles] for garment in other.garments} == needs


def by_key(planned: SeasonPlan) -> list[Any]:
    return sorted(planned.garments, key=lambda garment: garment.key)
