"""Numbers with a unit: read at the edge, refused when bare in a file, written so that they read back."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.records import (
    FROM_FILE,
    GrowthCm,
    LengthCm,
    MassG,
    MoneyField,
    NeedleMm,
    Record,
    Share,
    YarnLengthM,
)
from loopwright.units import Money


class Facts(Record):
    width: LengthCm = 1
    more: GrowthCm = 1
    yarn: YarnLengthM = 1
    mass: MassG = 1
    needle: NeedleMm = 1
    share: Share = 1
    price: MoneyField = Money(1, "NZD")


@pytest.mark.parametrize(
    ("field", "text", "number"),
    [
        ("width", "14 1/2 in", 36.83),
        ("width", "5 ft 10 in", 177.8),
        ("more", "-1 1/2 in", -3.81),
        ("yarn", "470 yd", 429.768),
        ("mass", "1 3/4 oz", 49.61166546875),
        ("needle", "4.5 mm", 4.5),
        ("needle", "0.45 cm", 4.5),
        ("share", "95 %", 0.95),
    ],
)
def test_text_is_read_in_the_inside_unit(field: str, text: str, number: float) -> None:
    """Inch, yard and ounce are exact by the agreement of 1959 (from memory)."""
    assert getattr(Facts.model_validate({field: text}), field) == number


@pytest.mark.parametrize("field", ["width", "more", "yarn", "mass", "needle", "share"])
def test_a_bare_number_in_a_file_is_refused(field: str) -> None:
    with pytest.raises(ValueError, match="could be any unit"):
        Facts.model_validate({field: 36}, context=FROM_FILE)
    assert getattr(Facts.model_validate({field: 1}), field) == 1


@pytest.mark.parametrize("value", [0, -1, math.inf, math.nan, True, None, [1], "0 cm", "-3 cm", "wide"])
def test_what_is_no_width(value: Any) -> None:
    with pytest.raises(ValueError, match="width"):
        Facts.model_validate({"width": value})


@pytest.mark.parametrize(("field", "value"), [("needle", "8 cm"), ("needle", 61), ("share", "101 %"), ("share", 1.01)])
def test_more_than_there_can_be(field: str, value: Any) -> None:
    with pytest.raises(ValueError, match=r"at most|from 0 % to 100 %"):
        Facts.model_validate({field: value})


@pytest.mark.parametrize("price", ["-1.00 NZD", "12.505 NZD", "12.50", "$12.50", 12.5])
def test_what_is_no_price(price: Any) -> None:
    with pytest.raises(ValueError, match="price"):
        Facts.model_validate({"price": price})


@given(
    st.floats(0.01, 1e4),
    st.floats(-1e4, 1e4),
    st.floats(1, 1e6),
    st.floats(0.01, 1e6),
    st.floats(0.1, 60),
    st.floats(0.001, 1),
)
def test_written_facts_read_back_to_the_very_same(
    width: float, more: float, yarn: float, mass: float, needle: float, share: float
) -> None:
    facts = Facts(width=width, more=more, yarn=yarn, mass=mass, needle=needle, share=share)
    assert Facts.model_validate(facts.model_dump(mode="json"), context=FROM_FILE) == facts


@pytest.mark.parametrize(
    ("field", "text"),
    [
        ("width", "0.0001 cm"),
        ("width", "2000 m"),
        ("more", "-2000 m"),
        ("yarn", "5 cm"),
        ("mass", "0.0001 g"),
        ("needle", "0.01 mm"),
    ],
)
def test_what_no_knitter_has_is_refused(field: str, text: str) -> None:
    """Figures of such size are slips, and what is worked out from them would overflow."""
    with pytest.raises(ValueError, match=r"at (least|most)"):
        Facts.model_validate({field: text}, context=FROM_FILE)
