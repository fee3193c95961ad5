"""Floats against a plain loop over the cells, and catches against every place that they could have."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.chart import (
    Chart,
    RepeatBox,
    catch_cells,
    find_floats,
    long_floats,
    roles_per_row,
    tiled,
    unrolled,
    usual_limit,
    young_child_limit,
)
from loopwright.units import BadInput
from tests.chart.samples import any_charts, lettered, stitched


def plain_floats(chart: Chart, row: int, wraps: bool) -> list[tuple[int, int, int]]:
    """Role, column before and length of every float of a row, cell by cell; edges of a repeat are not seen."""
    line = [(int(chart.cells[row, at]), at) for at in range(chart.columns) if chart.worked[row, at]]
    found = []
    for place, (role, column) in enumerate(line):
        for step in range(1, len(line) + 1):
            if place + step >= len(line) and not wraps:
                break
            if line[(place + step) % len(line)][0] == role:
                if step > 1:
                    found.append((role, column, step - 1))
                break
    return sorted(found)


@given(any_charts(), st.booleans())
def test_floats_are_those_of_a_plain_loop(chart: Chart, wraps: bool) -> None:
    plain = Chart(chart.cells, chart.stitches, chart.roles, in_the_round=wraps)
    found = find_floats(plain)
    for row in range(plain.rows):
        of_row = found.row == row
        triples = zip(*(array[of_row].tolist() for array in (found.role, found.after, found.stitches)), strict=True)
        assert sorted(triples) == plain_floats(plain, row, wraps)


@given(any_charts(stitches=False), st.integers(2, 4))
def test_a_round_is_a_repeat_worked_for_ever(chart: Chart, times: int) -> None:
    """Every float of the tube comes as often as it is laid side by side."""
    tube = Chart(chart.cells, chart.stitches, chart.roles, in_the_round=True)
    assert sorted(find_floats(tiled(tube, times)).stitches) == sorted(find_floats(tube).stitches.tolist() * times)


@given(any_charts(stitches=False))
def test_the_way_to_the_next_repeat_is_found(chart: Chart) -> None:
    """The longest float of a repeat between edges is in sight once it is worked twice."""
    flat = Chart(chart.cells, chart.stitches, chart.roles, repeat=chart.repeat)
    if flat.repeat is not None and flat.repeat.rows == flat.rows and not flat.wraps:
        inside = find_floats(tiled(flat.part(flat.repeat), 3)).longest
        assert find_floats(flat).longest >= min(inside, find_floats(unrolled(flat, 3)).longest)


def test_a_float_runs_behind_boxes_without_a_stitch_for_nothing() -> None:
    chart = stitched(["knit", "no-stitch", "no-stitch", "knit"])
    assert len(find_floats(chart)) == 0


def test_both_strands_to_both_edges() -> None:
    chart = lettered("AAABAA")
    assert len(find_floats(chart)) == 1
    carried = find_floats(chart, carry_to_edge=True)
    assert sorted(zip(carried.after.tolist(), carried.stitches.tolist(), strict=True)) == [(-1, 3), (2, 1), (3, 2)]
    assert len(find_floats(lettered("AAAA"), carry_to_edge=True)) == 0


def test_from_one_repeat_to_the_next() -> None:
    chart = lettered("AABAAAA", repeat=RepeatBox(1, 0, 4, 1))
    found = find_floats(chart)
    assert [(int(s), bool(n)) for s, n in zip(found.stitches, found.to_next_repeat, strict=True)] == [
        (1, False),
        (3, True),
    ]
    (long,) = long_floats(chart, 2, 4.5)
    assert (long.columns, long.catch_columns) == ((1, 4, 3), (4,))


@given(st.integers(1, 60), st.integers(1, 8))
def test_no_piece_is_longer_than_the_limit_and_no_fewer_catches_would_do(stitches: int, limit: int) -> None:
    catches = catch_cells(stitches, limit)
    pieces = [after - before - 1 for before, after in itertools.pairwise([0, *catches, stitches + 1])]
    assert max(pieces) <= limit
    fewer = len(catches) - 1
    assert fewer < 0 or (fewer + 1) * limit + fewer < stitches


def test_a_limit_is_one_stitch_or_more() -> None:
    with pytest.raises(BadInput, match="one stitch or more"):
        catch_cells(5, 0)


@given(any_charts(stitches=False, most_side=14), st.integers(2, 4))
def test_catches_lie_on_their_float_and_leave_no_long_piece(chart: Chart, limit: int) -> None:
    below: dict[int, set[int]] = {}
    for one in long_floats(chart, limit, 5.0):
        places = [one.columns.index(column) + 1 for column in one.catch_columns]
        pieces = [b - a - 1 for a, b in itertools.pairwise([0, *places, one.stitches + 1])]
        assert max(pieces) <= limit
        if not one.stacked:
            assert not below.get(one.row - 1, set()).intersection(one.catch_columns)
        below.setdefault(one.row, set()).update(one.catch_columns)


def test_catches_do_not_stand_above_each_other() -> None:
    one, other = long_floats(lettered("BAAAAAAAB", "BAAAAAAAB"), 5, 5.0)
    assert set(one.catch_columns).isdisjoint(other.catch_columns)
    assert not one.stacked
    assert not other.stacked


@pytest.mark.parametrize(("width_mm", "limit", "young"), [(4.5455, 5, 3), (6.25, 4, 3), (9.0, 3, 2), (25, 3, 1)])
def test_the_usual_limit_is_five_stitches_or_an_inch(width_mm: float, limit: int, young: int) -> None:
    """Common practice of tutorials; for a small child about 2 cm or three stitches, our caution."""
    assert (usual_limit(width_mm), young_child_limit(width_mm)) == (limit, young)


def test_colours_are_counted_in_every_row() -> None:
    assert roles_per_row(lettered("ABCA", "AAAA", "ABAB")).tolist() == [2, 1, 3]
