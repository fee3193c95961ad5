"""What a remnant can knit: consistent with the section's need, and monotone."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.need import change_rows, finishing_from_row, p_rows, row_lengths, rows_possible, section_needs
from loopwright.need.remnant import RowLengths
from loopwright.uncertainty import Estimate, Origin
from tests.need.drafts import STRAND, pullover

DRAFT = pullover()
PLACES = tuple(
    row_lengths(section, need)
    for need in section_needs(DRAFT, {"main": STRAND})
    for section in [DRAFT.section(need.piece, need.section)]
)
lengths = st.sampled_from(PLACES)
metres = st.floats(0.5, 900)
surenesses = st.floats(0.5, 0.99)
FEW = settings(max_examples=60, deadline=None)


def have(mean: float) -> Estimate:
    return Estimate.known("remnant", mean, "m", Origin.MEASURED, sd=0.03 * mean)


def test_rows_and_edges_are_the_sections_need() -> None:
    for need, one in zip(section_needs(DRAFT, {"main": STRAND}), PLACES, strict=True):
        assert one.metres(0, one.rows) == pytest.approx(need.length_m / need.made)
        assert one.need(0, one.rows).sd == pytest.approx(need.sd_m / need.made)


def plain(rows: int = 10, end_m: float = 0.0) -> RowLengths:
    """Rows of 2 m without doubt, and an edge."""
    return RowLengths(0.0, np.full(rows, 2.0), end_m, 0.0)


def sure(mean: float) -> Estimate:
    return Estimate.known("remnant", mean, "m", Origin.MEASURED)


def test_by_hand() -> None:
    assert rows_possible(sure(7.9), plain()) == 3
    assert rows_possible(sure(7.9), plain(), from_row=8) == 2
    assert finishing_from_row(sure(7.9), plain()) == 7


def test_the_last_row_counts_only_with_its_edge() -> None:
    assert rows_possible(sure(20.9), plain(end_m=1)) == 9
    assert rows_possible(sure(21), plain(end_m=1)) == 10
    assert finishing_from_row(sure(2.9), plain(end_m=1)) == 10


def test_where_to_change() -> None:
    """12 m in hand last 6 rows; 11 m of another finish from row 5 on."""
    assert change_rows(sure(12), sure(11), plain()) == range(5, 7)
    assert change_rows(sure(6), sure(11), plain()) is None


@FEW
@given(lengths, metres, metres, surenesses)
def test_more_yarn_never_knits_fewer_rows(one: RowLengths, some: float, other: float, sureness: float) -> None:
    less, more = sorted((some, other))
    assert rows_possible(have(less), one, 0, sureness) <= rows_possible(have(more), one, 0, sureness)
    assert finishing_from_row(have(less), one, sureness) >= finishing_from_row(have(more), one, sureness)


@FEW
@given(lengths, metres, surenesses, surenesses)
def test_surer_is_never_more_rows(one: RowLengths, some: float, low: float, high: float) -> None:
    low, high = sorted((low, high))
    assert rows_possible(have(some), one, 0, high) <= rows_possible(have(some), one, 0, low)


@FEW
@given(lengths, metres, surenesses, st.floats(0, 1))
def test_the_rows_it_knits_are_the_most(one: RowLengths, some: float, sureness: float, share: float) -> None:
    start = int(share * (one.rows - 1))
    rows = rows_possible(have(some), one, start, sureness)
    if rows:
        assert p_rows(have(some), one, start, start + rows) >= sureness
    if start + rows < one.rows:
        assert p_rows(have(some), one, start, start + rows + 1) < sureness


@FEW
@given(lengths, metres, surenesses)
def test_from_where_it_finishes_it_knits_all_that_is_left(one: RowLengths, some: float, sureness: float) -> None:
    row = finishing_from_row(have(some), one, sureness)
    assert rows_possible(have(some), one, row, sureness) == one.rows - row


def test_rows_beyond_the_section() -> None:
    with pytest.raises(ValueError, match="within 0 to 10"):
        plain().metres(3, 11)
