"""The mass of a remnant as a person writes it."""

import pytest

from loopwright.season.remnant_words import read_remnant_g
from loopwright.units import BadInput


def test_a_mass_in_any_unit_of_mass() -> None:
    """An ounce is 28.349523125 g exactly (International Yard and Pound agreement, 1959)."""
    assert read_remnant_g("38 g", "--remnant") == 38
    assert read_remnant_g("2 oz", "--remnant") == pytest.approx(56.69904625, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "wanted"), [("0 g", "a mass above nothing"), ("38", "a mass with its unit"), ("much", "a mass")]
)
def test_what_weighs_nothing_or_has_no_unit_is_refused_under_its_label(text: str, wanted: str) -> None:
    with pytest.raises(BadInput, match=wanted) as refused:
        read_remnant_g(text, "On the scale")
    assert refused.value.place == "On the scale"
    assert text in str(refused.value)
