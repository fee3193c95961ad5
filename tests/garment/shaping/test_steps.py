"""Steps and curves: sums, falling steps, and the best curve against every curve."""

from collections.abc import Iterator
from itertools import accumulate
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.garment.shaping import cast_off_curve, even_steps, shoulder_steps
from loopwright.units import BadInput


def falling(stitches: int, steps: int, most: int) -> Iterator[tuple[int, ...]]:
    """Every way to part ``stitches`` into at most ``steps`` parts, none over ``most``, none larger than the last."""
    if stitches == 0:
        yield ()
    elif steps:
        for size in range(min(most, stitches), 0, -1):
            for rest in falling(stitches - size, steps - 1, size):
                yield (size, *rest)


def off_the_ellipse(curve: tuple[int, ...], steps: int) -> float:
    """Squared distance from a quarter ellipse at the middle of every pair of rows, in floats."""
    stitches = sum(curve)
    taken = [*accumulate(curve)] + [stitches] * (steps - len(curve))
    heights = [(2 * step + 1) / (2 * steps) for step in range(steps)]
    return sum((c - stitches * sqrt(1 - (1 - y) ** 2)) ** 2 for c, y in zip(taken, heights, strict=True))


@pytest.mark.parametrize("rows", [4, 5, 6, 8, 11, 14, 20])
@pytest.mark.parametrize("stitches", range(2, 19))
def test_no_curve_is_nearer_to_the_ellipse(stitches: int, rows: int) -> None:
    steps = rows // 2
    every = [curve for curve in falling(stitches, steps, stitches) if curve[-1] == 1]
    found = cast_off_curve(stitches, rows)
    assert found in every
    assert off_the_ellipse(found, steps) <= min(off_the_ellipse(curve, steps) for curve in every) + 1e-4


@given(st.integers(1, 60), st.integers(2, 80))
def test_a_curve_falls_to_one_and_sums(stitches: int, rows: int) -> None:
    found = cast_off_curve(stitches, rows)
    assert sum(found) == stitches
    assert len(found) <= rows // 2
    assert list(found) == sorted(found, reverse=True)
    assert found[-1] == 1 or rows < 4


def test_two_rows_take_all_at_once() -> None:
    assert cast_off_curve(7, 2) == cast_off_curve(7, 3) == (7,)


@pytest.mark.parametrize(("stitches", "rows", "wanted"), [(0, 8, "1 or more"), (7, 1, "2 or more")])
def test_no_curve_of_nothing(stitches: int, rows: int, wanted: str) -> None:
    with pytest.raises(BadInput, match=f"wanted {wanted}"):
        cast_off_curve(stitches, rows)


@given(st.integers(1, 200), st.data(), st.booleans())
def test_steps_differ_by_one_in_order(stitches: int, data: st.DataObject, larger_first: bool) -> None:
    steps = data.draw(st.integers(1, stitches))
    found = even_steps(stitches, steps, larger_first=larger_first)
    assert (len(found), sum(found)) == (steps, stitches)
    assert max(found) - min(found) <= 1
    assert list(found) == sorted(found, reverse=larger_first)


def test_more_steps_than_stitches_are_refused() -> None:
    with pytest.raises(BadInput, match="at most 3 steps"):
        even_steps(3, 4)


@given(st.integers(1, 100), st.integers(0, 40))
def test_a_shoulder_has_a_step_for_two_rows(stitches: int, slope_rows: int) -> None:
    found = shoulder_steps(stitches, slope_rows)
    assert sum(found) == stitches
    assert len(found) == min(stitches, max(1, slope_rows // 2))
    assert min(found) >= 1
