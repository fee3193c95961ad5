"""Colour difference: laws, the paper's formula written plainly, and arrays of any shape."""

import tracemalloc

import numpy as np
import pytest
from hypothesis import given

from loopwright.colour import Floats, delta_e_cie76, delta_e_ciede2000, difference_matrix, lab_from_srgb
from tests.colour.plain_ciede2000 import ciede2000
from tests.colour.samples import labs, table_of


@given(labs, labs)
def test_the_same_either_way_round_and_never_below_nothing(one: Floats, other: Floats) -> None:
    difference = float(delta_e_ciede2000(one, other))
    assert difference >= 0
    assert float(delta_e_ciede2000(other, one)) == pytest.approx(difference, abs=1e-9)


@given(labs)
def test_a_colour_does_not_differ_from_itself(lab: Floats) -> None:
    assert (float(delta_e_ciede2000(lab, lab)), float(delta_e_cie76(lab, lab))) == (0, 0)


@given(labs, labs)
def test_it_is_the_formula_of_the_paper(one: Floats, other: Floats) -> None:
    assert float(delta_e_ciede2000(one, other)) == pytest.approx(ciede2000(one.tolist(), other.tolist()), abs=1e-8)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ((50, 0, 0), (50, 0, 0)),
        ((50, 0, 0), (60, 20, -30)),
        ((50, -0.0, 0), (50, -40, 5)),
        ((50, -0.0, -0.0), (50, 10, -40)),
        ((50, 30, -1e-17), (50, 30, 5)),
        ((50, 40, -8), (50, 40, 8)),
    ],
)
def test_greys_and_hues_about_nought(one: tuple[float, ...], other: tuple[float, ...]) -> None:
    assert float(delta_e_ciede2000(one, other)) == pytest.approx(ciede2000(one, other), abs=1e-9)


def test_cie76_is_the_distance() -> None:
    assert float(delta_e_cie76([50, 1, 2], [53, 5, 14])) == 13


def test_an_array_of_many_chunks_equals_its_pairs() -> None:
    one, other = lab_from_srgb(table_of(30_000, 1)), lab_from_srgb(table_of(30_000, 2))
    whole = delta_e_ciede2000(one, other)
    for at in range(0, 30_000, 997):
        assert whole[at] == pytest.approx(float(delta_e_ciede2000(one[at], other[at])), abs=1e-10)


def test_shapes_broadcast() -> None:
    many, few = lab_from_srgb(table_of(700, 3)), lab_from_srgb(table_of(50, 4))
    crossed = delta_e_ciede2000(many[:, None], few)
    assert crossed.shape == (700, 50)
    np.testing.assert_allclose(crossed[:, 7], delta_e_ciede2000(many, few[7]), rtol=0, atol=1e-10)
    assert delta_e_ciede2000(few[0], few[1]).shape == ()
    assert delta_e_ciede2000(np.empty((0, 3)), few[0]).shape == (0,)


def test_the_table_of_all_pairs_is_symmetric() -> None:
    matrix = difference_matrix(lab_from_srgb(table_of(20, 5)))
    assert (matrix == matrix.T).all()
    assert not matrix.diagonal().any()


def test_memory_does_not_grow_with_the_pairs() -> None:
    """Beyond the result, less than 4 MB for a million pairs of which a single list of values would take 8."""
    labs_of = lab_from_srgb(table_of(1000, 6))
    tracemalloc.start()
    result = delta_e_ciede2000(labs_of[:, None], labs_of)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert peak - result.nbytes < 4_000_000


@pytest.mark.parametrize("wrong", [5.0, [[1, 2], [3, 4]]])
def test_three_are_wanted(wrong: object) -> None:
    with pytest.raises(ValueError, match=r"wanted \(\.\.\., 3\)"):
        delta_e_ciede2000(wrong, wrong)  # type: ignore[arg-type]
