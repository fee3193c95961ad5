"""Random small seasons: garments of three constructions, lots, parcels and shops. All invented."""

import datetime as dt
from typing import Any

from hypothesis import strategies as st

from loopwright.records import FROM_FILE
from loopwright.season import Season
from tests.season.small import BASE, TODAY

__all__ = ["facts_of_seasons", "read"]

COLOURS = ("Oat", "Rust")
PATTERNS: dict[str, Any] = BASE["patterns"] | {
    "cap": {
        "name": "Cap",
        "construction": "hat",
        "gauge": "22 sts x 30 rows = 10 cm",
        "sizes": "small (large)",
        "ball_length": "120 m",
        "ball_mass": "50 g",
        "finished": {"head_girth": "50 (55) cm", "length": "21 (23) cm"},
        "yarn": {"main": {"balls": "1 (2)"}},
    },
    "wrap": {
        "name": "Wrap",
        "construction": "rectangle",
        "gauge": "20 sts x 28 rows = 10 cm",
        "sizes": "one",
        "finished": {"width": "45 cm", "length": "170 cm"},
    },
}
SIZES = {"plain": ("S", "M", "L"), "cap": ("small", "large"), "wrap": ("one",)}

DAYS = st.integers(-5, 200).map(lambda number: TODAY + dt.timedelta(days=number))
LOTS = st.fixed_dictionaries(
    {"yarn": st.just("dk"), "colour": st.sampled_from(COLOURS), "dye_lot": st.sampled_from(["", "1", "2"])},
).flatmap(
    lambda lot: st.one_of(
        st.integers(1, 12).map(lambda n: lot | {"put_ups": n}),
        st.integers(5, 90).map(lambda grams: lot | {"weighed": f"{grams} g"}),
    )
)
SHOPS = st.builds(
    lambda single, pack, postage, free, days: {
        "name": "A shop",
        "currency": "NZD",
        "days_to_arrive": days,
        "postage": {"flat": f"{postage}.00 NZD"} | ({"free_from": f"{free}.00 NZD"} if free else {}),
        "offers": [
            {"yarn": "dk", "price": f"{single}.00 NZD"},
            {"yarn": "dk", "price": f"{pack}.00 NZD", "balls": 5},
        ],
    },
    st.integers(6, 14),
    st.integers(28, 70),
    st.integers(0, 15),
    st.none() | st.integers(30, 120),
    st.integers(0, 30),
)


@st.composite
def garments(draw: st.DrawFn) -> dict[str, Any]:
    pattern = draw(st.sampled_from(list(PATTERNS)))
    facts: dict[str, Any] = {
        "name": f"A {pattern}",
        "pattern": pattern,
        "size": draw(st.sampled_from(SIZES[pattern])),
        "yarns": {"main": {"yarn": "dk", "colour": draw(st.sampled_from(COLOURS))}},
    }
    if draw(st.booleans()):
        facts["swatch"] = "plain"
    if draw(st.booleans()):
        facts["due"] = draw(DAYS)
    if draw(st.integers(0, 3)) == 0:
        facts |= {"begun_on": TODAY - dt.timedelta(days=9), "knitted": "40 %"}
    return facts


def _keyed(prefix: str, rows: list[Any]) -> dict[str, Any]:
    return {f"{prefix}-{number}": row for number, row in enumerate(rows)}


@st.composite
def facts_of_seasons(draw: st.DrawFn) -> dict[str, Any]:
    """A season as a file has it: one to four garments, up to four lots, up to two shops."""
    coming = draw(st.lists(st.integers(1, 6), max_size=1))
    order = {"arrives_on": TODAY + dt.timedelta(days=8), "lines": []}
    lines = [{"yarn": "dk", "colour": "Oat", "put_ups": number} for number in coming]
    return BASE | {
        "patterns": PATTERNS,
        "garments": _keyed("g", draw(st.lists(garments(), min_size=1, max_size=4))),
        "cupboard": _keyed("lot", draw(st.lists(LOTS, max_size=4))),
        "shops": _keyed("shop", draw(st.lists(SHOPS, max_size=2))),
        "orders": {"post": order | {"lines": lines}} if lines else {},
    }


def read(facts: dict[str, Any]) -> Season:
    return Season.model_validate(facts, context=FROM_FILE)
