"""Parcels: the least landed cost against a mixed-integer programme, and by hand where taxes and fees come in."""

import datetime as dt
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from loopwright.parcels import ParcelPlan, Shop, Shortfall, cheapest_parcels
from loopwright.units import Money
from tests.parcels.mixed_integer import least_cost_minor

TODAY = dt.date(2027, 3, 1)
RATES = {"NZD": Decimal(1), "EUR": Decimal("1.98")}


def shop(key: str, *offers: dict[str, Any], currency: str = "NZD", **more: Any) -> Shop:
    facts = {"key": key, "name": key, "currency": currency, "postage": {"flat": f"5.00 {currency}"}}
    return Shop.model_validate(facts | {"offers": list(offers)} | more)


def offer(yarn: str, price: str, **more: Any) -> dict[str, Any]:
    return {"yarn": yarn, "price": price} | more


def need(yarn: str, balls: int, *garments: str, mass: float = 50) -> Shortfall:
    return Shortfall(yarn=yarn, colour="Oat", balls=balls, ball_mass_g=mass, garments=garments or ("hat",))


def bought(needs: list[Shortfall], *shops: Shop) -> ParcelPlan:
    return cheapest_parcels(needs, shops, RATES, "NZD", TODAY)


def nzd(amount: str) -> Money:
    return Money.of(amount, "NZD")


# --- By hand ------------------------------------------------------------------------------------------------


def test_one_parcel_saves_the_second_postage() -> None:
    """a: 3 × 10 + 2 × 12 + 5 = 59; splitting the second to b at 11 saves 2 and costs 5."""
    both = shop("a", offer("dk", "10.00 NZD"), offer("aran", "12.00 NZD"))
    plan = bought([need("dk", 3), need("aran", 2)], both, shop("b", offer("aran", "11.00 NZD")))
    assert [parcel.shop for parcel in plan.parcels] == ["a"]
    assert (plan.total, plan.next_best) == (nzd("59.00"), nzd("62.00"))


def test_one_ball_more_makes_the_postage_free() -> None:
    """Balls at 6.50, postage 8.00, free from 26.00: three are 19.50 and 8.00, four are 26.00; two stay two, 21.00."""
    free = shop("a", offer("dk", "6.50 NZD"), postage={"flat": "8.00 NZD", "free_from": "26.00 NZD"})
    (line,) = bought([need("dk", 3)], free).parcels[0].lines
    assert (line.balls, line.balls_needed) == (4, 3)
    assert bought([need("dk", 3)], free).total == nzd("26.00")
    assert bought([need("dk", 2)], free).total == nzd("21.00")


def test_a_lighter_mix_saves_a_step_of_postage() -> None:
    """Four balls: singles 4 × 5.50 = 22.00 and 4.00 up to 200 g, or five in a pack for 21.50 and 9.00 above it."""
    steps = {"steps": [{"up_to": "200 g", "price": "4.00 NZD"}, {"up_to": "500 g", "price": "9.00 NZD"}]}
    plan = bought([need("dk", 4)], shop("a", offer("dk", "5.50 NZD"), offer("dk", "21.50 NZD", balls=5), postage=steps))
    assert plan.total == nzd("26.00")
    assert plan.parcels[0].lines[0].balls == 4


def test_a_shelf_too_short_for_a_pack_still_has_singles() -> None:
    """Four balls on the shelf: the pack of five would be cheaper, but is not there."""
    short = shop("a", offer("dk", "5.50 NZD", in_stock=4), offer("dk", "21.50 NZD", balls=5, in_stock=4))
    plan = bought([need("dk", 4)], short)
    assert plan.unsupplied == ()
    assert plan.total == nzd("27.00")


def test_one_dye_lot_comes_from_one_shop() -> None:
    """Neither has six; three from each would be two dye lots."""
    three = [shop(key, offer("dk", "5.00 NZD", in_stock=3)) for key in "ab"]
    plan = bought([need("dk", 6)], *three)
    assert [short.balls for short in plan.unsupplied] == [6]


def test_what_nobody_sells_is_named_and_the_rest_is_bought() -> None:
    plan = bought([need("dk", 2), need("lace", 1)], shop("a", offer("dk", "5.00 NZD")))
    assert [short.yarn for short in plan.unsupplied] == ["lace"]
    assert plan.total == nzd("15.00")


def test_another_colour_is_not_sold() -> None:
    plan = bought([need("dk", 2)], shop("a", offer("dk", "5.00 NZD", colours=["Rust"])))
    assert plan.unsupplied[0].colour == "Oat"


def test_landed_is_converted_taxed_and_charged() -> None:
    """(2 × 9.20 + 8.50) EUR × 1.98 = 53.262, so 53.26; 15 % of it 7.989, so 7.99; and a fee of 2.50."""
    abroad = shop(
        "a",
        offer("dk", "9.20 EUR"),
        currency="EUR",
        postage={"flat": "8.50 EUR"},
        border_tax="15 %",
        border_fee="2.50 NZD",
        days_to_arrive=18,
    )
    (parcel,) = bought([need("dk", 2)], abroad).parcels
    assert (parcel.border_tax, parcel.border_fee, parcel.landed) == (nzd("7.99"), nzd("2.50"), nzd("63.75"))
    assert parcel.arrives_on == dt.date(2027, 3, 19)


def test_nothing_short_costs_nothing() -> None:
    assert bought([], shop("a", offer("dk", "5.00 NZD"))).total == nzd("0.00")


def test_beyond_the_number_that_can_be_priced_it_says_so() -> None:
    needs = [need(f"y{n}", 1) for n in range(12)]
    shops = [shop(key, *(offer(f"y{n}", "5.00 NZD") for n in range(12))) for key in "abc"]
    plan = bought(needs, *shops)
    assert not plan.proven
    assert plan.total == nzd("65.00")


@pytest.mark.parametrize(
    ("postage", "wrong"),
    [
        ({}, "postage as flat, or as steps"),
        ({"flat": "5.00 NZD", "steps": [{"up_to": "1 kg", "price": "5.00 NZD"}]}, "neither or both"),
        (
            {"steps": [{"up_to": "1 kg", "price": "5.00 NZD"}, {"up_to": "500 g", "price": "9.00 NZD"}]},
            "rising order",
        ),
        ({"flat": "5.00 EUR"}, "NZD, the shop's currency"),
        ({"flat": "5.00 NZD", "free_from": "50.00 EUR"}, "postage.free_from"),
    ],
)
def test_postage_that_cannot_be(postage: dict[str, Any], wrong: str) -> None:
    with pytest.raises(ValueError, match=wrong):
        shop("a", offer("dk", "5.00 NZD"), postage=postage)


def test_packing_counts_to_the_mass() -> None:
    steps = [{"up_to": "250 g", "price": "4.00 NZD"}, {"up_to": "500 g", "price": "9.00 NZD"}]
    posted = shop("a", postage={"packing": "40 g", "steps": steps}).postage
    assert posted.price(nzd("1.00"), 210) == nzd("4.00")
    assert posted.price(nzd("1.00"), 211) == nzd("9.00")


# --- Against the twin ---------------------------------------------------------------------------------------

YARNS = ("dk", "aran", "lace")
PRICES = st.integers(300, 1500)


def _money(minor: int) -> str:
    return f"{Decimal(minor) / 100:.2f} NZD"


@st.composite
def shops_of(draw: st.DrawFn, key: str) -> Shop:
    offers = []
    for yarn in draw(st.lists(st.sampled_from(YARNS), min_size=1, unique=True)):
        stock = draw(st.none() | st.integers(2, 12))
        single = draw(PRICES)
        more = {} if stock is None else {"in_stock": stock}
        offers.append(offer(yarn, _money(single), **more))
        if draw(st.booleans()):
            size = draw(st.integers(2, 5))
            offers.append(offer(yarn, _money(single * size - draw(st.integers(0, single))), balls=size, **more))
    postage: dict[str, Any] = {"flat": _money(draw(st.integers(0, 1500)))}
    if draw(st.booleans()):
        first, second = draw(st.integers(100, 600)), draw(st.integers(100, 1500))
        postage = {
            "packing": "40 g",
            "steps": [
                {"up_to": "300 g", "price": _money(first)},
                {"up_to": "900 g", "price": _money(first + second)},
            ],
        }
    if draw(st.booleans()):
        postage["free_from"] = _money(draw(st.integers(1500, 9000)))
    return shop(key, *offers, postage=postage)


NEEDS = st.tuples(st.sampled_from(YARNS), st.integers(1, 7))
INSTANCES = st.tuples(
    st.lists(NEEDS, min_size=1, max_size=3, unique_by=lambda row: row[0]),
    st.tuples(shops_of("a"), shops_of("b"), shops_of("c")),
)


@settings(max_examples=60)
@given(INSTANCES)
def test_no_programme_finds_it_cheaper(instance: tuple[list[tuple[str, int]], tuple[Shop, ...]]) -> None:
    """Free postage, steps, packs and shelves; where one need cannot be met alone the two differ by design."""
    rows, shops = instance
    needs = [need(yarn, balls) for yarn, balls in rows]
    plan = bought(needs, *shops)
    assume(not plan.unsupplied)
    assert plan.total.minor == least_cost_minor(needs, shops)


@settings(max_examples=60)
@given(INSTANCES)
def test_sums_hold_and_needs_are_met(instance: tuple[list[tuple[str, int]], tuple[Shop, ...]]) -> None:
    rows, shops = instance
    plan = bought([need(yarn, balls) for yarn, balls in rows], *shops)
    assert plan.total.minor == sum(parcel.landed.minor for parcel in plan.parcels)
    lines = [line for parcel in plan.parcels for line in parcel.lines]
    assert all(line.balls >= line.balls_needed for line in lines)
    found = {line.yarn: line.balls_needed for line in lines} | {s.yarn: s.balls for s in plan.unsupplied}
    assert found == dict(rows)


@settings(max_examples=40)
@given(INSTANCES, st.randoms())
def test_the_order_of_shops_and_needs_changes_no_total(
    instance: tuple[list[tuple[str, int]], tuple[Shop, ...]], random: Any
) -> None:
    """Which of two equally dear ways is taken may change; what it costs may not."""
    rows, shops = instance
    needs = [need(yarn, balls) for yarn, balls in rows]
    usual = bought(needs, *shops)
    mixed_needs, mixed_shops = random.sample(needs, len(needs)), random.sample(shops, len(shops))
    mixed = bought(mixed_needs, *mixed_shops)
    assert (mixed.total, mixed.next_best) == (usual.total, usual.next_best)


def test_too_heavy_for_the_post_the_dearer_lighter_mix_is_sent() -> None:
    """Two singles, 100 g, go for 3.00; the cheaper pack of five, 250 g, is above the only step."""
    light = {"steps": [{"up_to": "120 g", "price": "3.00 NZD"}]}
    one = shop("a", offer("dk", "6.00 NZD"), offer("dk", "10.00 NZD", balls=5), postage=light)
    assert bought([need("dk", 2)], one).total == nzd("15.00")


def test_more_parcels_than_can_be_priced_are_not_called_proven() -> None:
    """Sixteen colours in two shops make 65,536 parcels each."""
    shops = [shop(key, offer("dk", "10.00 NZD")) for key in ("a", "b")]
    needs = [need("dk", 1).model_copy(update={"colour": f"c{number}"}) for number in range(16)]
    found = bought(needs, *shops)
    assert (found.proven, found.total) == (False, nzd("165.00"))
