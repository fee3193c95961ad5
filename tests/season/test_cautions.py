"""Cautions: for whom and for what they are shown. Each names its source; none promises anything."""

import re
from typing import Any

import pytest

from loopwright.data import table
from loopwright.season import plan
from loopwright.season.cautions import caution
from tests.season.small import season

BY_AGE = {"cord-neck", "cord-neck-older", "small-parts", "floats", "sleep", "lace-holes"}
CHILD = BY_AGE | {"nightwear", "neck-passes-head"}


def keys(changes: dict[str, Any]) -> set[str]:
    return {one.key for one in plan(season(changes)).garment("jumper").cautions}


def child(age: float | None) -> dict[str, Any]:
    facts = {"name": "Pip", "wearer": "child", "chest_girth": "56 cm"}
    return {"bodies.mo": facts if age is None else facts | {"age_years": age}}


@pytest.mark.parametrize(
    ("age", "expected"),
    [
        (0.5, {"cord-neck", "small-parts", "floats", "sleep"}),
        (1, {"cord-neck", "small-parts", "floats"}),
        (2.9, {"cord-neck", "small-parts", "floats"}),
        (3, {"cord-neck"}),
        (6.9, {"cord-neck"}),
        (8, {"cord-neck-older"}),
        (13, {"cord-neck-older"}),
        (None, {"cord-neck", "small-parts", "floats"}),
    ],
)
def test_by_age(age: float | None, expected: set[str]) -> None:
    """Seven and three years: EN 14682 as explained by Tukes (read) and 16 CFR 1501 (read); one year: AAP 2022."""
    assert keys(child(age)) & CHILD == expected | {"nightwear", "neck-passes-head"}


def test_on_the_seventh_birthday_the_stricter_one_stands() -> None:
    assert "cord-neck" in keys(child(7))


def test_lace_for_a_small_child() -> None:
    assert "lace-holes" in keys(child(1) | {"patterns.plain.fabric": "lace"})
    assert "lace-holes" not in keys(child(4) | {"patterns.plain.fabric": "lace"})


def test_a_grown_wearer_hears_none_for_children() -> None:
    assert keys({}) & CHILD == set()


def test_nor_a_garment_without_a_wearer() -> None:
    assert keys({"garments.jumper.for": None, "garments.jumper.size": "M"}) & CHILD == set()


@pytest.mark.parametrize(
    ("fibre", "expected"),
    [
        ("wool", "itch"),
        ("cotton", "flame-cellulose"),
        ("viscose", "flame-cellulose"),
        ("acrylic", "flame-synthetic"),
        ("alpaca", "animal-hair"),
        ("merino", None),
    ],
)
def test_by_fibre(fibre: str, expected: str | None) -> None:
    """Fine merino does not prickle (Zallmann et al. 2017, abstract read)."""
    assert keys({"yarns.dk.fibres": {fibre: 100}}) == ({expected} if expected else set())


def test_a_strand_held_along_counts_too() -> None:
    held = {"garments.jumper.yarns.main.held_with": [{"yarn": "lace", "colour": "Mist"}]}
    assert keys(held) == {"itch", "animal-hair"}


def test_no_caution_is_said_twice() -> None:
    found = [one.key for one in plan(season(child(0.5))).garment("jumper").cautions]
    assert len(found) == len(set(found))


def test_each_has_a_source_and_none_promises() -> None:
    rows = table("caution/cautions.csv")
    assert [row["id"] for row in rows if not (row["text"] and row["source"] and row["status"])] == []
    promises = re.compile(r"\b(safe|compliant|certified)\b", re.IGNORECASE)
    assert [row["id"] for row in rows if promises.search(row["text"])] == []


def test_hands_are_named_in_every_season() -> None:
    assert "hands" in {one.key for one in plan(season()).cautions}


def test_an_unknown_caution() -> None:
    with pytest.raises(KeyError):
        caution("moths")
