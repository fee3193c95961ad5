"""Yarn, blends, strands and lots."""

import math

import pytest
from pydantic import ValidationError

from loopwright.uncertainty import Origin
from loopwright.units import BadInput
from loopwright.yarn import Lot, Yarn, effective_diameter_mm, grist_held_together, length_in_lot

DK = Yarn.model_validate(
    {"key": "dk", "name": "Stone", "fibres": {"merino": 80, "silk": 20}, "length": "115 m", "mass": "50 g"}
)


def lot(**facts: object) -> Lot:
    return Lot.model_validate({"key": "oat", "yarn": "dk", "colour": "Oat", **facts})


def test_grist_is_grams_to_the_kilometre() -> None:
    assert DK.grist_tex == pytest.approx(50 / 0.115)


def test_linear_densities_add() -> None:
    """Definition of tex, ASTM D861: 420 m and 840 m to 100 g, two strands of the second."""
    assert grist_held_together([100 / 0.420, 100 / 0.840, 100 / 0.840]) == pytest.approx(2 * 100 / 0.420)


def test_four_strands_lie_twice_as_thick_as_one() -> None:
    assert effective_diameter_mm(4 * 250) == pytest.approx(2 * effective_diameter_mm(250))


def test_effective_density_is_that_which_is_said() -> None:
    """A cylinder of 0.0564·√tex mm has 0.40 g/cm³: mass per length over its cross-section."""
    area_mm2 = math.pi / 4 * effective_diameter_mm(500) ** 2
    mass_g_per_mm = 500 / 1_000_000
    assert mass_g_per_mm / area_mm2 * 1000 == pytest.approx(0.40, abs=0.002)


def test_whole_put_ups_and_a_remnant() -> None:
    both = length_in_lot(lot(put_ups=3, weighed="25 g"), DK)
    assert both.mean == pytest.approx(3.5 * 115)
    assert both.origin is Origin.MEASURED


def test_a_lot_by_its_band_is_stated() -> None:
    by_band = length_in_lot(lot(put_ups=3), DK)
    assert by_band.origin is Origin.STATED
    assert by_band.relative_sd == pytest.approx(0.03)


def test_a_small_remnant_is_the_more_doubtful() -> None:
    """A gram of reading error is much of 5 g: √(3 %² + 20 %²)."""
    assert length_in_lot(lot(weighed="5 g"), DK).relative_sd == pytest.approx(math.hypot(0.03, 0.2))


def test_ounces_weigh_as_grams() -> None:
    in_ounces, in_grams = (length_in_lot(lot(weighed=text), DK).mean for text in ("1 oz", "28.349523125 g"))
    assert in_ounces == in_grams


def test_a_lot_holds_something() -> None:
    with pytest.raises(ValueError, match="without put-ups and without a mass"):
        lot()


def test_fibres_sum_to_a_hundred() -> None:
    with pytest.raises(ValueError, match="sum to 90 %"):
        DK.model_validate({**DK.model_dump(), "fibres": {"wool": 90}})


def test_thirds_may_be_rounded() -> None:
    thirds = DK.model_validate({**DK.model_dump(), "fibres": {"wool": 33.3, "silk": 33.3, "alpaca": 33.3}})
    assert len(thirds.fibres) == 3


def test_an_unknown_fibre_has_a_hint() -> None:
    with pytest.raises(ValueError, match=r"did you mean 'alpaca'\?"):
        DK.model_validate({**DK.model_dump(), "fibres": {"alpacca": 100}})


@pytest.mark.parametrize("shade", ["#12345", "red", "#12345g"])
def test_a_shade_is_six_hexadecimal_figures(shade: str) -> None:
    with pytest.raises(ValueError, match="shade"):
        lot(put_ups=1, shade=shade)


def test_bad_input_is_a_value_error_with_what_was_wanted() -> None:
    with pytest.raises(ValidationError, match="without put-ups") as caught:
        lot()
    reason = caught.value.errors()[0]["ctx"]["error"]
    assert isinstance(reason, BadInput)
    assert "put_ups = 3" in reason.wanted
