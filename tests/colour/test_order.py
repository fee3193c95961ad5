"""The order of a fade: lighter end first, the weakest step and the steps to blend."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.colour import delta_e_ciede2000, fade_order, lab_from_srgb, lightness, srgb_from_lab
from loopwright.units import BadInput
from tests.colour.samples import table_of


@settings(max_examples=30)
@given(st.integers(1, 15), st.integers(0, 10_000))
def test_steps_are_the_differences_along_the_order(number: int, seed: int) -> None:
    colours = table_of(number, seed)
    fade = fade_order(colours)
    labs = lab_from_srgb(colours)[list(fade.order)]
    assert fade.steps == pytest.approx(delta_e_ciede2000(labs[:-1], labs[1:]).tolist())
    assert fade.total == pytest.approx(sum(fade.steps))
    assert labs[0, 0] >= labs[-1, 0]
    assert fade.proven == (number <= 12)


@settings(max_examples=15)
@given(st.integers(2, 7), st.integers(0, 10_000))
def test_the_order_of_the_input_is_nothing(number: int, seed: int) -> None:
    colours = table_of(number, seed)
    assert fade_order(colours[::-1]).total == pytest.approx(fade_order(colours).total)


def test_a_grey_scale_comes_in_order_with_its_gap_named() -> None:
    levels = [40, 85, 15, 30, 95]
    fade = fade_order(srgb_from_lab([[level, 0, 0] for level in levels]))
    assert [levels[at] for at in fade.order] == [95, 85, 40, 30, 15]
    assert fade.weakest == 1
    assert fade.blend_at == (1,)


def test_the_ends_are_kept() -> None:
    colours = table_of(6, 4)
    fade = fade_order(colours, first=3, last=0)
    assert (fade.order[0], fade.order[-1]) == (3, 0)
    assert fade.total >= fade_order(colours).total
    assert float(lightness(colours[fade_order(colours, last=3).order[-1]])) == float(lightness(colours[3]))


def test_the_limit_for_blending_can_be_another() -> None:
    colours = table_of(5, 1)
    assert fade_order(colours, blend_above=0).blend_at == (0, 1, 2, 3)
    assert fade_order(colours, blend_above=200).blend_at == ()


def test_one_skein_has_no_step() -> None:
    fade = fade_order([[0.2, 0.3, 0.4]])
    assert (fade.order, fade.steps, fade.total, fade.weakest, fade.blend_at) == ((0,), (), 0, None, ())


def test_no_skein_is_refused() -> None:
    with pytest.raises(BadInput, match="one skein or more"):
        fade_order([])
