"""Shaping whole rounds: repeats worked operation by operation, even ratios and their counts."""

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.garment.shaping import even_counts, even_ratio, nearest_count, rows_at, worked_across
from loopwright.units import BadInput

operations = st.sampled_from([(1, 1), (2, 1), (0, 1), (3, 1), (1, 2)])
repeats = st.lists(operations, min_size=1, max_size=6).filter(lambda repeat: any(takes for takes, _ in repeat))


def one_by_one(stitches: int, repeat: list[tuple[int, int]]) -> int:
    """Work the row as hands do."""
    left, made = stitches, 0
    while True:
        for at, (takes, leaves) in enumerate(repeat):
            if takes > left or (left == 0 and any(takes for takes, _ in repeat[at:])):
                return made + left
            left, made = left - takes, made + leaves


@given(st.integers(0, 200), repeats)
def test_a_repeat_is_worked_until_it_no_longer_fits(stitches: int, repeat: list[tuple[int, int]]) -> None:
    assert worked_across(stitches, repeat) == one_by_one(stitches, repeat)


@pytest.mark.parametrize("repeat", [[], [(0, 1)], [(1, 1), (-1, 0)]])
def test_a_repeat_takes_stitches(repeat: list[tuple[int, int]]) -> None:
    with pytest.raises(BadInput, match="takes a stitch or more"):
        worked_across(20, repeat)


@given(st.integers(1, 400), st.integers(1, 400), st.integers(1, 8))
def test_equal_ratios_lead_to_the_neck(base: int, neck: int, rounds: int) -> None:
    assert base * even_ratio(base, neck, rounds) ** rounds == pytest.approx(neck)


@given(st.integers(40, 400), st.floats(0.25, 4), st.integers(2, 6), st.sampled_from([1, 2, 4]))
def test_counts_run_evenly_from_base_to_neck(base: int, share: float, rounds: int, multiple: int) -> None:
    neck = nearest_count(base * share, multiple=multiple)
    try:
        counts = even_counts(base, neck, rounds, multiple=multiple)
    except BadInput as fault:
        assert "in more rounds" in str(fault) or "no count" in str(fault)
        return
    assert (len(counts), counts[-1]) == (rounds, neck)
    assert list(counts) == sorted(counts, reverse=neck < base)
    for before, after in pairwise((base, *counts)):
        assert before <= 2 * after
        assert after <= 2 * before
    ratio = (neck / base) ** (1 / rounds)
    for i, count in enumerate(counts, 1):
        assert count % multiple == 0
        assert abs(count - base * ratio**i) <= multiple


def test_a_round_that_more_than_halves_is_refused() -> None:
    with pytest.raises(BadInput, match='round from 268 to 80 stitches"; wanted at most half'):
        even_counts(268, 80, 1)


def test_a_round_may_halve_or_double() -> None:
    assert even_counts(80, 20, 2) == (40, 20)
    assert even_counts(20, 80, 2) == (40, 80)


@given(st.integers(0, 300), st.lists(st.fractions(0, 1), max_size=5).map(sorted))
def test_shares_of_a_depth_are_in_it(rows: int, shares: list[Fraction]) -> None:
    found = rows_at(rows, shares)
    assert list(found) == sorted(found)
    assert all(
        abs(at - rows * share) <= Fraction(1, 2) + Fraction(1, 10**6) for at, share in zip(found, shares, strict=True)
    )


def test_a_share_beyond_the_depth_is_refused() -> None:
    with pytest.raises(BadInput, match="0 % to 100 %"):
        rows_at(70, [Fraction(3, 2)])
