"""Synthetic seasons and purchases of any size; no chance in them, so that two runs measure the same."""

import datetime as dt
from typing import Any

from loopwright.parcels import Shop, Shortfall
from loopwright.records import FROM_FILE
from loopwright.season import Season
from tests.season.small import BASE, TODAY

__all__ = ["purchase", "season_of"]

COLOURS = [f"Colour {letter}" for letter in "ABCDEFGHIJ"]


def season_of(garments: int) -> Season:
    """The small season of the tests with so many garments, in ten colours, every third with a deadline."""
    jumper: dict[str, Any] = BASE["garments"]["jumper"]

    def garment(number: int) -> dict[str, Any]:
        colour = COLOURS[number % len(COLOURS)]
        due = {"due": TODAY + dt.timedelta(days=60 + 37 * number % 900)} if number % 3 == 0 else {}
        return jumper | {"name": f"No. {number}", "yarns": {"main": {"yarn": "dk", "colour": colour}}} | due

    lot = {"yarn": "dk", "dye_lot": "1", "put_ups": 9}
    return Season.model_validate(
        BASE
        | {
            "garments": {f"g{number}": garment(number) for number in range(garments)},
            "cupboard": {f"lot{number}": lot | {"colour": colour} for number, colour in enumerate(COLOURS[:7])},
        },
        context=FROM_FILE,
    )


def purchase(needs: int, shops: int) -> tuple[list[Shortfall], list[Shop]]:
    """So many shortfalls, each sold singly and in packs of five by every shop, with steps and free postage."""
    short = [
        Shortfall(yarn=f"y{n}", colour="Oat", balls=3 + n % 6, ball_mass_g=50, garments=(f"g{n}",))
        for n in range(needs)
    ]

    def shop(number: int) -> Shop:
        offers: list[dict[str, Any]] = []
        for n in range(needs):
            single = 700 + 37 * (n * 5 + number * 3) % 500
            offers.append({"yarn": f"y{n}", "price": f"{single / 100:.2f} NZD"})
            offers.append({"yarn": f"y{n}", "price": f"{(single * 5 - 250) / 100:.2f} NZD", "balls": 5})
        steps = [{"up_to": f"{top} g", "price": f"{price}.50 NZD"} for top, price in ((500, 5), (1000, 9), (9000, 14))]
        postage = {"steps": steps, "packing": "40 g", "free_from": f"{120 + 40 * number}.00 NZD"}
        facts = {"key": f"s{number}", "name": f"S{number}", "currency": "NZD", "postage": postage, "offers": offers}
        return Shop.model_validate(facts)

    return short, [shop(number) for number in range(shops)]
