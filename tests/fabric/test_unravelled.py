"""A measured loop on a swatch: read at the edge, kept as written, held against the gauge."""

from typing import Any

import pytest
from pydantic import ValidationError

from loopwright.fabric import Swatch, Unravelled
from loopwright.units import BadInput


def swatch(**more: Any) -> Swatch:
    return Swatch.model_validate({"key": "s", "yarns": ["y"], "after": "20 sts = 10 cm"} | more)


@pytest.mark.parametrize(
    ("text", "stitch_mm"), [("40 sts = 52 cm", 13), ("30 sts = 18 in", 15.24), ("50 stitches in 1 m", 20)]
)
def test_the_yarn_in_a_stitch(text: str, stitch_mm: float) -> None:
    assert Unravelled.read(text).stitch_mm == pytest.approx(stitch_mm)


@pytest.mark.parametrize("text", ["52 cm", "40 rows = 52 cm", "4 sts/in", "forty", ""])
def test_what_says_nothing_of_it(text: str) -> None:
    with pytest.raises(BadInput, match="40 sts = 52 cm"):
        Unravelled.read(text)


def test_a_stitch_no_yarn_makes() -> None:
    with pytest.raises(BadInput, match=r"0\.75 mm a stitch"):
        Unravelled.read("40 sts = 3 cm")


def test_the_width_of_the_knitting_is_not_the_yarn() -> None:
    with pytest.raises(ValidationError, match="not the width of the knitting"):
        swatch(unravelled="20 sts = 10 cm")


def test_it_is_kept_as_it_was_written() -> None:
    kept = swatch(unravelled="40 sts = 30 in").model_dump(mode="json", exclude_none=True)
    assert kept["unravelled"] == "40 sts = 30 in"
    assert Swatch.model_validate(kept).unravelled == Unravelled.read("40 sts = 76.2 cm")
