"""Picking up: groups sum, ratios reduce, slants follow from each other."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.garment.shaping import (
    pick_up_pattern,
    pick_up_ratio,
    pick_up_steps,
    picked_up,
    slant_rise_cm,
    slanted_length_cm,
)
from loopwright.units import BadInput

counts = st.integers(1, 200)


def sums(groups: tuple[tuple[int, int], ...]) -> tuple[int, int]:
    return sum(stitches for stitches, _ in groups), sum(rows for _, rows in groups)


@given(counts, counts)
def test_groups_sum_to_stitches_and_rows(rows: int, stitches: int) -> None:
    assert sums(pick_up_pattern(rows, stitches)) == (stitches, rows)


@given(counts, st.data())
def test_groups_differ_by_one_and_the_last_is_none_of_the_larger(rows: int, data: st.DataObject) -> None:
    stitches = data.draw(st.integers(rows // 2 + 1, rows))
    *most, last = pick_up_pattern(rows, stitches)
    assert last[0] == last[1] >= 1
    assert all(of == taken + 1 and taken - last[0] in (0, 1) for taken, of in most)
    assert len(most) == rows - stitches


@given(counts, st.data())
def test_half_the_rows_or_fewer_give_one_to_a_group(rows: int, data: st.DataObject) -> None:
    stitches = data.draw(st.integers(1, max(1, rows // 2)))
    groups = pick_up_pattern(rows, stitches)
    assert {taken for taken, _ in groups} == {1}
    assert max(of for _, of in groups) - min(of for _, of in groups) <= 1


@given(st.fractions(Fraction(1, 20), 3, max_denominator=30))
def test_steps_of_a_ratio_sum_to_it(ratio: Fraction) -> None:
    assert sums(pick_up_steps(ratio)) == (ratio.numerator, ratio.denominator)


@given(st.integers(1, 60), st.integers(1, 20))
def test_a_ratio_survives_the_change_of_measures(stitches: int, rows: int) -> None:
    assert pick_up_ratio(stitches / 1.016, rows / 1.016) == Fraction(stitches, rows)


@given(st.floats(3, 150), st.floats(3, 150), st.integers(1, 30))
def test_no_fraction_of_that_length_is_nearer(band: float, edge: float, longest: int) -> None:
    if band / edge < 1 / longest:
        return
    found = pick_up_ratio(band, edge, longest=longest)
    others = [Fraction(round(band / edge * rows), rows) for rows in range(1, longest + 1)]
    wanted = Fraction(band / edge)
    assert found.denominator <= longest
    assert abs(found - wanted) == min(abs(other - wanted) for other in others)


@given(counts, st.fractions(Fraction(1, 4), 2, max_denominator=20), st.integers(1, 8), st.integers(0, 8))
def test_a_band_keeps_its_repeat(edge_rows: int, ratio: Fraction, multiple: int, plus: int) -> None:
    found = picked_up(edge_rows, ratio, multiple=multiple, plus=plus)
    assert (found - plus) % multiple == 0
    assert 2 * abs(found - edge_rows * ratio) <= multiple + Fraction(1, 10**3) or found <= max(plus, multiple)


@pytest.mark.parametrize(("band", "edge"), [(0.0, 28.0), (20.0, 0.0), (-1.0, 28.0), (1.0, 100.0)])
def test_no_ratio_of_nothing(band: float, edge: float) -> None:
    with pytest.raises(BadInput, match=r"both over 0|at least one stitch"):
        pick_up_ratio(band, edge)


def test_no_stitches_from_no_edge() -> None:
    with pytest.raises(BadInput, match="wanted 1 or more"):
        picked_up(0, Fraction(3, 4))
    with pytest.raises(BadInput, match="a ratio over 0"):
        picked_up(10, Fraction(0))


@given(st.floats(0, 200), st.floats(0.1, 200))
def test_the_rise_of_a_slant_is_the_one_it_was_made_of(run_cm: float, rise_cm: float) -> None:
    assert slant_rise_cm(slanted_length_cm(run_cm, rise_cm), run_cm) == pytest.approx(rise_cm, abs=1e-5)


def test_an_edge_is_no_shorter_than_what_it_crosses() -> None:
    with pytest.raises(BadInput, match="4 cm over 5 cm"):
        slant_rise_cm(4, 5)
