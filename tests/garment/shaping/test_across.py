"""Shaping within a row: sums, evenness, mirror images, and the order of preference against every arrangement."""

from fractions import Fraction
from itertools import accumulate, combinations_with_replacement, pairwise, product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.garment.shaping import even_sections, runs, spread_across, spread_decreases, tally
from loopwright.units import BadInput

rows = st.integers(1, 400)


def astray(lengths: tuple[int, ...]) -> Fraction:
    """Sum of the squared distances of all cuts from their ideal places."""
    whole, count = sum(lengths), len(lengths)
    return sum(((cut - Fraction(i * whole, count)) ** 2 for i, cut in enumerate(accumulate(lengths), 1)), Fraction(0))


def arrangements(stitches: int, sections: int) -> list[tuple[int, ...]]:
    """Every way to cut ``stitches`` into ``sections``, empty ones included."""
    cuts = combinations_with_replacement(range(stitches + 1), sections - 1)
    return [tuple(b - a for a, b in pairwise((0, *inner, stitches))) for inner in cuts]


@pytest.mark.parametrize(("stitches", "sections"), list(product(range(10), range(1, 7))))
def test_no_arrangement_is_more_even(stitches: int, sections: int) -> None:
    every = arrangements(stitches, sections)
    level = [one for one in every if max(one) - min(one) <= 1]
    least = min(map(astray, level))
    mirrored, plain = even_sections(stitches, sections), even_sections(stitches, sections, mirrored=False)
    for found in (mirrored, plain):
        assert found in level
        assert astray(found) == least
    if any(one == one[::-1] for one in level):
        assert mirrored == mirrored[::-1]


@given(rows, st.integers(1, 400))
def test_sections_differ_by_one_and_sum(stitches: int, sections: int) -> None:
    for mirrored in (True, False):
        found = even_sections(stitches, sections, mirrored=mirrored)
        assert (len(found), sum(found)) == (sections, stitches)
        assert max(found) - min(found) <= 1


@given(rows, st.integers(1, 400))
def test_a_flat_row_is_a_mirror_image_where_it_can_be(stitches: int, sections: int) -> None:
    found = even_sections(stitches, sections)
    assert (found == found[::-1]) is (sections % 2 == 1 or stitches % 2 == 0)


@given(rows, st.integers(1, 60))
def test_in_the_round_long_and_short_alternate(stitches: int, sections: int) -> None:
    """As balanced as can be, across the join too: any two arcs of as many sections differ by one stitch at most."""
    found = even_sections(stitches, sections, mirrored=False) * 2
    for arc in range(1, sections):
        sums = {sum(found[start : start + arc]) for start in range(sections)}
        assert max(sums) - min(sums) <= 1


@given(rows, st.data())
def test_increases_keep_the_stitches(stitches: int, data: st.DataObject) -> None:
    times = data.draw(st.integers(1, stitches))
    flat, round_ = (spread_across(stitches, times, in_the_round=one) for one in (False, True))
    assert (len(flat), sum(flat)) == (times + 1, stitches)
    assert (len(round_), sum(round_)) == (times, stitches)
    assert min(*flat[:-1], *round_) >= 1


@given(rows, st.data())
def test_decreases_take_two_stitches_each(stitches: int, data: st.DataObject) -> None:
    times = data.draw(st.integers(0, stitches // 2))
    flat, round_ = (spread_decreases(stitches, times, in_the_round=one) for one in (False, True))
    assert len(flat) == times + 1
    assert len(round_) == max(1, times)
    assert sum(flat) + 2 * times == sum(round_) + 2 * times == stitches
    assert max(flat) - min(flat) <= 1


def test_a_flat_row_mirrors_and_a_round_goes_on() -> None:
    """56 − 16 alternates k1 and k2 all the way round (a mitten of 2011, read); flat it is mirrored."""
    assert spread_decreases(56, 16, in_the_round=True) == (1, 2) * 8
    flat = spread_decreases(56, 16, in_the_round=False)
    assert flat == flat[::-1]
    assert set(pairwise(spread_across(60, 24, in_the_round=True))) == {(2, 3), (3, 2)}


def test_a_row_is_doubled_stitch_by_stitch() -> None:
    assert spread_across(4, 4, in_the_round=False) == (1, 1, 1, 1, 0)
    assert spread_across(4, 4, in_the_round=True) == (1, 1, 1, 1)


@pytest.mark.parametrize("in_the_round", [True, False])
def test_a_row_without_shaping_is_one_stretch(in_the_round: bool) -> None:
    assert spread_across(9, 0, in_the_round=in_the_round) == (9,)
    assert spread_decreases(9, 0, in_the_round=in_the_round) == (9,)


@pytest.mark.parametrize("in_the_round", [True, False])
def test_too_many_are_refused_with_the_most(in_the_round: bool) -> None:
    with pytest.raises(BadInput, match="wanted at most 9, so"):
        spread_across(9, 10, in_the_round=in_the_round)
    with pytest.raises(BadInput, match="wanted at most 4, as"):
        spread_decreases(9, 5, in_the_round=in_the_round)


@given(st.lists(st.integers(0, 5)))
def test_runs_say_all_and_a_tally_sums_them(values: list[int]) -> None:
    assert [value for value, often in runs(values) for _ in range(often)] == values
    assert sorted(tally(values)) == [(value, values.count(value)) for value in sorted(set(values))]
