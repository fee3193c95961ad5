"""Balls from metres, packs and steps of postage: tables of our study of buying.

Prices are invented there, answers computed and printed in full, so they are compared exactly. Rows marked in the
first table came out one ball too high in plain binary floats. Source: `pack_and_currency`, `postage_model`.
"""

import pytest

from loopwright.need import balls_to_buy
from loopwright.parcels import Postage, cheapest_packs
from loopwright.uncertainty import Estimate, Origin
from loopwright.units import Money

NOTHING = Estimate.known("none", 0, "m", Origin.STATED)


@pytest.mark.parametrize(
    ("need_m", "ball_m", "margin", "balls"),
    [
        (1150, 200, 0, 6),
        (1150, 200, 0.05, 7),
        (1200, 200, 0, 6),
        (1100, 110, 0.10, 11),
        (850, 85, 0.10, 11),  # one too many in binary floats
        (200, 110, 0.10, 2),  # so here
        (1500, 50, 0.10, 33),  # and here
        (1320, 125, 0, 11),
        (780, 420, 0.10, 3),
        (2400, 115, 0.08, 23),
        (95, 210, 0, 1),
        (3000, 400, 0.075, 9),
    ],
)
def test_balls_from_metres(need_m: float, ball_m: float, margin: float, balls: int) -> None:
    need = Estimate.known("need", need_m * (1 + margin), "m", Origin.STATED)
    assert balls_to_buy(NOTHING, need, ball_m, 0.95, relative_sd=0) == balls


def test_round_up_per_colour_then_add() -> None:
    needs = [Estimate.known("need", metres, "m", Origin.STATED) for metres in (480, 160, 90)]
    assert sum(balls_to_buy(NOTHING, need, 210, 0.95, relative_sd=0) for need in needs) == 5


SINGLE_390, SINGLE_450 = [(1, 390), (10, 3600)], [(1, 450), (5, 2050)]


@pytest.mark.parametrize(
    ("balls", "offers", "packs", "cost", "left_over"),
    [
        (9, SINGLE_390, (9, 0), 3510, 0),
        (10, SINGLE_390, (0, 1), 3600, 0),
        (19, SINGLE_390, (9, 1), 7110, 0),
        (9, [(1, 420), (10, 3700)], (0, 1), 3700, 1),
        (12, SINGLE_450, (2, 2), 5000, 0),
        (14, SINGLE_450, (4, 2), 5900, 0),
        (4, [(1, 550), (5, 2150)], (0, 1), 2150, 1),
        (13, [(5, 2150), (10, 4000)], (1, 1), 6150, 2),
        (23, [(1, 480), (5, 2250), (10, 4200)], (3, 0, 2), 9840, 0),
    ],
)
def test_cheapest_packs(
    balls: int, offers: list[tuple[int, int]], packs: tuple[int, ...], cost: int, left_over: int
) -> None:
    choice = cheapest_packs(balls, offers)
    assert (choice.packs, choice.cost_minor, choice.balls - balls) == (packs, cost, left_over)


PACKET = [(100, "3.20"), (250, "4.40"), (500, "5.90"), (1000, "8.30"), (2000, "12.40")]
PARCEL = [(5000, "22.00"), (10_000, "31.00"), (20_000, "46.00")]
TARIFF = Postage.model_validate(
    {"steps": [{"up_to": f"{top} g", "price": f"{price} EUR"} for top, price in (*PACKET, *PARCEL)]}
)
"""The cheaper of packet and parcel at each mass: packets end at 2000 g, where the parcel's first step costs more."""


@pytest.mark.parametrize(
    ("mass_g", "price"),
    [
        (100, "3.20"),
        (101, "4.40"),
        (250, "4.40"),
        (999, "8.30"),
        (1000, "8.30"),
        (1001, "12.40"),
        (2000, "12.40"),
        (2001, "22.00"),
        (5000, "22.00"),
        (20_000, "46.00"),
    ],
)
def test_postage_steps(mass_g: float, price: str) -> None:
    assert TARIFF.price(Money.of("50", "EUR"), mass_g) == Money.of(price, "EUR")


def test_above_the_last_step_it_is_not_sent() -> None:
    assert TARIFF.price(Money.of("50", "EUR"), 20_001) is None
