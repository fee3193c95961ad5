"""Yarn by colour, and areas of one colour."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.chart import Chart, areas_per_role, find_floats, metres_by_role, roles_per_row, tiled
from loopwright.units import BadInput
from tests.chart.samples import any_charts, lettered


@given(any_charts(stitches=False), st.integers(1, 4), st.integers(1, 3))
def test_many_times_is_the_chart_laid_out(chart: Chart, across: int, up: int) -> None:
    plain = Chart(chart.cells, chart.stitches, chart.roles, chart.in_the_round)
    once = metres_by_role(tiled(plain, across, up), 17.0, 4.5, slack=0.1)
    times = metres_by_role(plain, 17.0, 4.5, slack=0.1, across=across, up=up)
    assert [one.metres for one in times] == pytest.approx([one.metres for one in once])


@given(any_charts(stitches=False))
def test_two_colours_in_every_round_make_loop_and_width_a_stitch(chart: Chart) -> None:
    """Law of stranded knitting in the round: N (l + w) in all, whatever the motif."""
    tube = Chart(chart.cells, chart.stitches, chart.roles, in_the_round=True)
    if (roles_per_row(tube) == 2).all():
        total = sum(one.metres for one in metres_by_role(tube, 17.0, 4.5))
        assert total == pytest.approx(tube.cells.size * (17.0 + 4.5) / 1000)
    assert find_floats(tube).stitches.sum() == tube.cells.size * 0 + sum(
        one.float_stitches for one in metres_by_role(tube, 17.0, 4.5)
    )


def test_in_areas_nothing_floats_but_every_area_has_two_ends() -> None:
    (main, contrast) = metres_by_role(lettered("ABA", "ABA"), 10.0, 5.0, in_areas=True)
    assert (main.float_stitches, main.ends, contrast.ends) == (0, 4, 2)
    assert main.metres == pytest.approx(4 * 0.01 + 4 * 0.15)


def flooded(chart: Chart) -> dict[str, int]:
    """Areas counted by flooding from cell to cell."""
    seen: set[tuple[int, int]] = set()
    found = dict.fromkeys((role.name for role in chart.roles), 0)
    for row in range(chart.rows):
        for column in range(chart.columns):
            if (row, column) in seen or not chart.worked[row, column]:
                continue
            found[chart.roles[chart.cells[row, column]].name] += 1
            waiting = [(row, column)]
            while waiting:
                place = waiting.pop()
                if place in seen:
                    continue
                seen.add(place)
                for up, right in ((1, 0), (-1, 0), (0, 1), (0, -1)):
                    there, aside = place[0] + up, place[1] + right
                    aside = aside % chart.columns if chart.in_the_round else aside
                    if not (0 <= there < chart.rows and 0 <= aside < chart.columns) or not chart.worked[there, aside]:
                        continue
                    if chart.cells[there, aside] == chart.cells[place]:
                        waiting.append((there, aside))
    return found


@given(any_charts())
def test_areas_are_those_found_by_flooding(chart: Chart) -> None:
    assert areas_per_role(chart) == flooded(chart)


@pytest.mark.parametrize(("loop", "width", "slack"), [(0.0, 4.5, 0.0), (17.0, -1.0, 0.0), (17.0, 4.5, -0.1)])
def test_what_has_no_length_is_refused(loop: float, width: float, slack: float) -> None:
    with pytest.raises(BadInput):
        metres_by_role(lettered("AB"), loop, width, slack=slack)
