"""Taking yarn for a role: one dye lot before two, what is here before what is coming, never more than there is."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from loopwright.allotment import Cover, Supply, cover, supplies
from loopwright.uncertainty import Estimate, Origin
from loopwright.yarn import Lot, OrderLine, Yarn, YarnOrder

LATER = dt.date(2027, 3, 5)
SURE = 0.5
"""At even odds the mean need is reserved, so the figures below are the need itself."""


def supply(key: str, metres: float, dye_lot: str = "", arrives_on: dt.date | None = None, sd: float = 0) -> Supply:
    length = Estimate.known(key, metres, "m", Origin.MEASURED, sd=sd)
    return Supply(key=key, yarn="dk", colour="Oat", dye_lot=dye_lot, length_m=length, arrives_on=arrives_on)


def covered(need_m: float, *stock: Supply, sd: float = 0, sureness: float = SURE) -> Cover:
    left = {one.key: one.length_m.mean for one in stock}
    return cover(Estimate.known("need", need_m, "m", Origin.STATED, sd=sd), stock, left, sureness)


def taken(found: Cover) -> dict[str, float]:
    return {piece.supply: piece.metres for piece in found.taken}


def test_one_dye_lot_that_suffices_goes_before_mixing() -> None:
    found = covered(300, supply("a", 250, "1"), supply("b", 320, "2"), supply("c", 90, "1"))
    assert taken(found) == {"b": 300}


def test_two_lots_of_one_dye_lot_count_as_one() -> None:
    found = covered(300, supply("a", 200, "1"), supply("b", 900, "2"), supply("c", 150, "1"))
    assert found.dye_lots == ("1",)
    assert taken(found) == {"a": 200, "c": 100}


def test_the_smallest_dye_lot_that_suffices_is_taken() -> None:
    assert taken(covered(300, supply("a", 900, "1"), supply("b", 310, "2"))) == {"b": 300}


def test_unknown_dye_lots_are_not_taken_for_one() -> None:
    found = covered(300, supply("a", 200), supply("b", 200), supply("c", 400, "7"))
    assert taken(found) == {"c": 300}


def test_where_none_suffices_the_largest_goes_first() -> None:
    found = covered(500, supply("a", 200, "1"), supply("b", 400, "2"))
    assert list(taken(found).items()) == [("b", 400), ("a", 100)]
    assert found.dye_lots == ("2", "1")


def test_here_goes_before_coming() -> None:
    found = covered(300, supply("a", 310, "1", LATER), supply("b", 800, "2"))
    assert taken(found) == {"b": 300}
    assert found.ready_on is None


def test_within_a_dye_lot_what_is_here_is_knitted_first() -> None:
    found = covered(300, supply("a", 400, "1", LATER), supply("b", 100, "1"))
    assert list(taken(found).items()) == [("b", 100), ("a", 200)]
    assert found.ready_on == LATER


def test_too_little_is_all_taken_and_said() -> None:
    found = covered(300, supply("a", 100, "1"))
    assert taken(found) == {"a": 100}
    assert found.have_m.mean == 100


def test_none_at_all_is_said_in_the_working() -> None:
    found = covered(300)
    assert (found.have_m.mean, found.taken) == (0, ())
    assert "none" in found.have_m.steps[0].says


def test_what_is_stated_is_not_called_measured() -> None:
    """Whole put-ups are known by their band alone."""
    yarn = Yarn(key="dk", name="DK", length_m=115, mass_g=50)
    lots = [Lot(key="a", yarn="dk", colour="Oat", put_ups=2), Lot(key="b", yarn="dk", colour="Oat", mass_g=20)]
    by_band, weighed = (covered(100, *supplies([lot], [], {"dk": yarn})).have_m.origin for lot in lots)
    assert (by_band, weighed) == (Origin.STATED, Origin.MEASURED)


def test_reserved_is_what_suffices_that_surely() -> None:
    found = covered(300, supply("a", 900, "1"), sd=20, sureness=0.95)
    assert taken(found)["a"] == pytest.approx(stats.norm.ppf(0.95, 300, 20))


def test_only_what_is_left_counts() -> None:
    stock = supply("a", 900, "1", sd=27)
    found = cover(Estimate.known("need", 100, "m", Origin.STATED), [stock], {"a": 300}, SURE)
    assert (found.have_m.mean, found.have_m.sd) == pytest.approx((300, 9))


STOCK = st.lists(st.tuples(st.floats(0, 500), st.sampled_from(["", "1", "2"]), st.booleans()), max_size=6)


@given(STOCK, st.floats(1, 1500), st.floats(0, 100), st.floats(0.5, 0.99))
def test_never_more_than_a_lot_holds_nor_than_is_wanted(
    stock: list[tuple[float, str, bool]], need_m: float, sd: float, sureness: float
) -> None:
    lots = [supply(f"s{n}", m, lot, LATER if late else None) for n, (m, lot, late) in enumerate(stock)]
    found = covered(need_m, *lots, sd=sd, sureness=sureness)
    holds = {one.key: one.length_m.mean for one in lots}
    assert all(0 < metres <= holds[key] for key, metres in taken(found).items())
    wanted = need_m + stats.norm.ppf(sureness) * sd
    assert sum(taken(found).values()) == pytest.approx(min(wanted, sum(holds.values())))


@given(st.permutations([("a", 210.0, "1"), ("b", 160.0, "2"), ("c", 90.0, "1")]), st.floats(1, 600))
def test_the_order_of_lots_changes_nothing(lots: list[tuple[str, float, str]], need_m: float) -> None:
    """With different lengths; equal ones are taken in her order, and then totals are the same but not the lots."""
    usual = covered(need_m, supply("a", 210, "1"), supply("b", 160, "2"), supply("c", 90, "1"))
    shuffled = covered(need_m, *(supply(*lot) for lot in lots))
    assert taken(shuffled) == pytest.approx(taken(usual))
    assert shuffled.have_m.mean == pytest.approx(usual.have_m.mean)


def test_a_parcel_is_a_supply_for_each_line() -> None:
    yarn = Yarn(key="dk", name="DK", length_m=115, mass_g=50)
    lines = (OrderLine(yarn="dk", colour="Oat", put_ups=2, dye_lot="9"), OrderLine(yarn="dk", colour="Rust", put_ups=1))
    found = supplies([], [YarnOrder(key="post", arrives_on=LATER, lines=lines)], {"dk": yarn})
    assert [(one.key, one.length_m.mean, one.dye_lot) for one in found] == [("post-1", 230, "9"), ("post-2", 115, "")]
    assert {one.arrives_on for one in found} == {LATER}
