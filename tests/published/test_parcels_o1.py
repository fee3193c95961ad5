"""Problem O1 of our study of buying: three garments, three shops, a proven optimum (`parcels_o1.json`).

Prices and shops are invented, the optimum was found by complete enumeration and again by a mixed-integer programme;
exact in pence. A garment may be knitted in one of several yarns there, so each choice of yarns is priced by itself.
In the optimum one ball more than needed is bought, because it makes the postage free.
"""

import datetime as dt
import json
import math
from decimal import Decimal
from itertools import product
from pathlib import Path
from typing import Any

import pytest

from loopwright.parcels import ParcelPlan, Shop, Shortfall, cheapest_parcels

O1: dict[str, Any] = json.loads((Path(__file__).parent / "parcels_o1.json").read_text(encoding="utf-8"))


def pounds(pence: int) -> str:
    return f"{Decimal(pence) / 100:.2f} GBP"


def shops() -> list[Shop]:
    return [
        Shop.model_validate(
            {
                "key": key.lower(),
                "name": key,
                "currency": "GBP",
                "postage": {
                    "packing": f"{shop['tare_g']} g",
                    "steps": [{"up_to": f"{top} g", "price": pounds(pence)} for top, pence in shop["postage"]],
                    "free_from": shop["free_from"] and pounds(shop["free_from"]),
                },
                "offers": [
                    {"yarn": yarn, "price": pounds(pence), "balls": balls}
                    for yarn, packs in shop["offers"].items()
                    for balls, pence in packs
                ],
            }
        )
        for key, shop in O1["shops"].items()
    ]


def shortfall(garment: str, yarn: str) -> Shortfall:
    facts = O1["yarns"][yarn]
    balls = math.ceil(O1["garments"][garment]["need_m"] / facts["ball_m"])
    return Shortfall(yarn=yarn, colour="any", balls=balls, ball_mass_g=facts["ball_g"], garments=(garment.lower(),))


@pytest.fixture(scope="module")
def plans() -> dict[tuple[str, ...], ParcelPlan]:
    names = list(O1["garments"])
    choices = product(*(O1["garments"][name]["yarns"] for name in names))
    return {
        yarns: cheapest_parcels(
            [shortfall(garment, yarn) for garment, yarn in zip(names, yarns, strict=True)],
            shops(),
            {"GBP": Decimal(1)},
            "GBP",
            dt.date(2027, 1, 1),
        )
        for yarns in choices
    }


def test_the_optimum(plans: dict[tuple[str, ...], ParcelPlan]) -> None:
    yarns, best = min(plans.items(), key=lambda item: item[1].total)
    assert best.total.minor == O1["optimum"]["cost"]
    assert yarns == tuple(O1["optimum"]["assignment"][garment][0] for garment in O1["garments"])


def test_the_orders_of_the_optimum(plans: dict[tuple[str, ...], ParcelPlan]) -> None:
    best = min(plans.values(), key=lambda plan: plan.total)
    found = {
        parcel.shop.upper(): (
            {line.yarn: line.balls for line in parcel.lines},
            parcel.goods.minor,
            parcel.postage.minor,
        )
        for parcel in best.parcels
    }
    orders = O1["optimum"]["orders"]
    assert found == {key: (order["balls"], order["goods"], order["postage"]) for key, order in orders.items()}


def test_the_best_with_each_yarn_stands_in_the_ranking(plans: dict[tuple[str, ...], ParcelPlan]) -> None:
    for yarns, plan in plans.items():
        ranked = [
            row["cost"]
            for row in O1["ranking"]
            if tuple(row["assignment"][garment][0] for garment in O1["garments"]) == yarns
        ]
        assert plan.total.minor == min(ranked), yarns
        assert plan.next_best is not None
        assert plan.next_best.minor == sorted(ranked)[1], yarns
