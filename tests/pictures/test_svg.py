"""SVG as text: equal drawings are equal text, and nothing gets out of an attribute."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.pictures.svg import element, number
from tests.pictures.drawings import drawn


@pytest.mark.parametrize(
    ("value", "text"),
    [(0, "0"), (-0.0, "0"), (-0.001, "0"), (100, "100"), (2.5, "2.5"), (1 / 3, "0.33"), (-1.25, "-1.25")],
)
def test_numbers_have_no_needless_signs(value: float, text: str) -> None:
    assert number(value) == text


@given(st.floats(-1e6, 1e6))
def test_a_number_is_within_half_a_hundredth(value: float) -> None:
    assert math.isclose(float(number(value)), value, abs_tol=0.005_000_1)


@given(st.text(st.characters(min_codepoint=32, exclude_categories=["Cs", "Cn"])))
def test_an_attribute_holds_any_text(text: str) -> None:
    inside = element("g", element("rect", aria_label=text))
    root = drawn(f'<svg xmlns="http://www.w3.org/2000/svg">{inside}</svg>')
    assert root[0][0].get("aria-label") == text
