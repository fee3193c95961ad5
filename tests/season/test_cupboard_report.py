"""What each lot is for: reserved, free and used, against the plan and by hand."""

import datetime as dt
import math

import pytest

from loopwright.files import demo_text, read_season_text
from loopwright.season import Season, plan
from loopwright.season.cupboard_report import LotAmount, cupboard_report, sum_of_lots
from loopwright.season.settle import settle
from loopwright.yarn import Lot
from tests.season.small import season


@pytest.fixture(scope="module")
def winter() -> Season:
    return read_season_text(demo_text(), "winter.toml", "toml")


def test_reserved_and_free_make_up_the_lot(winter: Season) -> None:
    for report in cupboard_report(winter, plan(winter)):
        assert math.isclose(report.reserved_m + report.free_m, report.length_m.mean, abs_tol=1e-6)


def test_all_that_the_plan_takes_is_reserved_somewhere(winter: Season) -> None:
    planned = plan(winter)
    lots = {lot.key for lot in winter.cupboard}
    taken = [
        piece.metres for one in planned.garments for role in one.roles for piece in role.taken if piece.supply in lots
    ]
    assert math.isclose(sum(taken), sum(report.reserved_m for report in cupboard_report(winter, planned)))


def test_what_no_garment_needs_is_free() -> None:
    lot = {"yarn": "lace", "colour": "Fog", "put_ups": 1}
    lots = season({"cupboard.fog": lot})
    fog = cupboard_report(lots, plan(lots))[1]
    assert (fog.reserved, fog.free_m) == ((), 210)


@pytest.mark.parametrize(("share", "factor"), [("25 %", 1 / 3), ("50 %", 1.0), ("80 %", 4.0)])
def test_used_is_the_share_that_is_knitted(share: str, factor: float) -> None:
    """Of a whole need W the plan still needs (1 - k)·W; used is k·W, hence k / (1 - k) of what is needed."""
    begun = season({"garments.jumper.knitted": share, "garments.jumper.begun_on": dt.date(2027, 2, 1)})
    still = settle(begun, begun.garments[0]).needs[0].strand_m.mean
    (used,) = cupboard_report(begun, plan(begun))[0].knitted
    assert math.isclose(used.metres.mean, still * factor)


def test_a_finished_garment_has_used_all_that_it_needed() -> None:
    done = season({"garments.jumper.done_on": dt.date(2027, 2, 1)})
    (report,) = cupboard_report(done, plan(done))
    assert report.reserved == ()
    assert math.isclose(report.knitted[0].metres.mean, settle(done, done.garments[0]).needs[0].strand_m.mean)


def test_a_role_that_names_its_lots_has_used_no_other() -> None:
    facts = {"yarn": "dk", "colour": "Oat", "put_ups": 3}
    change = {"garments.jumper.done_on": dt.date(2027, 2, 1), "garments.jumper.yarns.main.lots": ["oat"]}
    both = season({"cupboard.more": facts, **change})
    assert [len(report.knitted) for report in cupboard_report(both, plan(both))] == [1, 0]


def test_the_sum_is_that_of_every_lot(winter: Season) -> None:
    reports = cupboard_report(winter, plan(winter))
    amounts = [LotAmount(one.yarn, one.lot.put_ups, one.lot.mass_g) for one in reports]
    mass, length = sum_of_lots(amounts)
    assert math.isclose(mass.mean, sum(one.mass_g.mean for one in reports))
    assert math.isclose(length.mean, sum(one.length_m.mean for one in reports))
    assert math.isclose(mass.sd, math.sqrt(sum(one.mass_g.sd**2 for one in reports)))
    assert math.isclose(length.sd, math.sqrt(sum(one.length_m.sd**2 for one in reports)))


def test_no_lots_sum_to_nothing() -> None:
    assert [one.mean for one in sum_of_lots(())] == [0, 0]


def test_a_lot_of_a_colour_that_is_not_named_is_reported() -> None:
    lots = season({"cupboard.x": {"yarn": "dk", "colour": "", "weighed": "12 g"}})
    assert isinstance(cupboard_report(lots, plan(lots))[1].lot, Lot)
