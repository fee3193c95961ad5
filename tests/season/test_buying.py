"""Sharing the cupboard, buying what is short, and who pays for it."""

import datetime as dt
from typing import Any

import pytest

from loopwright.season import SeasonPlan, plan
from loopwright.units import Money
from tests.season.small import BASE, season

JUMPER: dict[str, Any] = BASE["garments"]["jumper"]


def two(first: dict[str, Any], second: dict[str, Any], **more: Any) -> SeasonPlan:
    garments = {"first": JUMPER | {"name": "First"} | first, "second": JUMPER | {"name": "Second"} | second}
    return plan(season({"garments": garments} | {key.replace("__", "."): value for key, value in more.items()}))


def buys(planned: SeasonPlan) -> dict[str, int]:
    return {garment.key: sum(role.balls_to_buy for role in garment.roles) for garment in planned.garments}


def test_the_earlier_deadline_claims_first() -> None:
    found = buys(two({}, {"due": dt.date(2027, 12, 1)}))
    assert found["second"] == 0
    assert found["first"] > 0


def test_what_is_on_the_needles_claims_before_a_deadline() -> None:
    found = buys(two({"begun_on": dt.date(2027, 2, 1)}, {"due": dt.date(2027, 12, 1)}))
    assert found["first"] == 0


def test_without_either_her_own_order_claims() -> None:
    found = buys(two({}, {}))
    assert found["first"] == 0
    assert found["second"] > 0


def test_only_the_lots_that_she_named_are_used() -> None:
    other = {"yarn": "dk", "colour": "Oat", "dye_lot": "2", "put_ups": 12}
    named = {"yarns": {"main": {"yarn": "dk", "colour": "Oat", "lots": ["other"]}}}
    planned = two(named, {}, cupboard__other=other)
    (taken,) = planned.garment("first").roles[0].taken
    assert taken.supply == "other"
    assert sum(buys(planned).values()) == 0


def test_two_garments_pay_for_one_parcel_between_them() -> None:
    planned = two({}, {}, cupboard={})
    shares = [garment.to_pay for garment in planned.garments]
    assert None not in shares
    assert sum(share.minor for share in shares if share) == pytest.approx(planned.parcels.total.minor, abs=2)


def test_two_roles_in_one_yarn_are_both_paid_for() -> None:
    """Main and edge are of one yarn and colour and both are bought: the garment pays the whole parcel."""
    oat = {"yarn": "dk", "colour": "Oat"}
    changes = {
        "cupboard": {},
        "patterns.plain.yarn.edge": {"length": "300 (300, 300) m"},
        "garments.jumper.yarns": {"main": oat, "edge": oat},
    }
    planned = plan(season(changes))
    assert [role.balls_to_buy > 0 for role in planned.garment("jumper").roles] == [True, True]
    assert planned.garment("jumper").to_pay == planned.parcels.total


def test_what_no_shop_sells_is_said_and_has_no_date() -> None:
    planned = plan(season({"cupboard": {}, "shops.loft.offers": []}))
    jumper = planned.garment("jumper")
    assert jumper.forecast is None
    assert jumper.answer("buy").tone == "no"
    assert planned.parcels.total == Money(0, "NZD")


def test_a_longer_body_of_a_garment_on_the_needles_counts_what_is_left() -> None:
    """Half knitted: half the need of the whole, to the metre."""
    whole, half = (
        plan(season({"garments.jumper.begun_on": dt.date(2027, 2, 1)} | more)).garment("jumper").roles[0].need_m.mean
        for more in ({}, {"garments.jumper.knitted": "50 %"})
    )
    assert half == pytest.approx(whole / 2)


def test_sleeves_longer_without_a_stated_wrist_take_as_much_as_with_the_usual_one() -> None:
    def need(wrist: str | None) -> float:
        row = {"patterns.plain.finished.wrist_girth": wrist, "garments.jumper.changes.sleeves_longer": "5 cm"}
        return plan(season(row)).garment("jumper").roles[0].need_m.mean

    assert need(None) == pytest.approx(need("21.45 (22.75, 24.05) cm"))
