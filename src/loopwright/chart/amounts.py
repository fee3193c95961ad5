"""Yarn by colour, from cells and floats."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.chart.areas import areas_per_role
from loopwright.chart.floats import find_floats
from loopwright.chart.grid import Chart
from loopwright.units import BadInput

__all__ = ["END_CM", "RoleMetres", "metres_by_role"]

END_CM: Final = 15.0
"""Yarn of one end that is woven in: common practice, no source."""


@dataclass(frozen=True, slots=True)
class RoleMetres:
    """What one role takes.

    :ivar stitches: cells that it knits.
    :ivar float_stitches: stitches that it passes behind.
    :ivar ends: ends of its areas, where it is knitted in areas.
    :ivar metres: its yarn.
    """

    role: str
    stitches: int
    float_stitches: int
    ends: int
    metres: float


def metres_by_role(
    chart: Chart,
    loop_mm: float,
    stitch_width_mm: float,
    *,
    slack: float = 0.0,
    across: int = 1,
    up: int = 1,
    in_areas: bool = False,
) -> tuple[RoleMetres, ...]:
    r"""Give the yarn of every role of a chart worked so many times.

    .. math:: L = n\,l + F\,w\,(1 + s)

    with n cells of the role, l the yarn of one stitch, F the stitches that it floats behind, w the stitch's width and s
    the slack. In the round with two colours in every row that is N (l + w) in all, whatever the motif.

    :param loop_mm: yarn of one stitch.
    :param stitch_width_mm: width of one stitch.
    :param slack: how much longer floats lie than what they span, 0 to 1; up to 0.1 is our proposal.
    :param across, up: how often the chart is worked side by side and above itself.
    :param in_areas: every area has a length of its own and nothing floats; each end takes 15 cm more.
    :raises BadInput: a length that is not above 0, or a slack below 0.
    Source: a stitch's loop already holds the step of one stitch, so a float adds what it spans; worked examples in
    the tests.
    """
    for value, what in ((loop_mm, "loop"), (stitch_width_mm, "stitch width")):
        if not value > 0:
            raise BadInput(found=f"a {what} of {value:g} mm", wanted="a length above nothing", place=what)
    if slack < 0 or min(across, up) < 1:
        raise BadInput(found=f"slack {slack:g}, {across} × {up}", wanted="no slack below 0, one repeat or more")
    times = across * up
    counts = np.bincount(chart.cells[chart.worked], minlength=len(chart.roles))
    passed = np.zeros(len(chart.roles), np.int64) if in_areas else _passed(chart, across) * up
    areas = areas_per_role(chart) if in_areas else {}
    told = []
    for at, role in enumerate(chart.roles):
        ends = 2 * times * areas.get(role.name, 0)
        mm = counts[at] * times * loop_mm + passed[at] * stitch_width_mm * (1 + slack) + ends * END_CM * 10
        told.append(RoleMetres(role.name, int(counts[at]) * times, int(passed[at]), ends, float(mm) / 1000))
    return tuple(told)


def _passed(chart: Chart, across: int) -> NDArray[np.int64]:
    """Give the stitches that each role floats behind in the chart worked side by side, one repeat high.

    A repeat that is followed by itself floats as in the round; flat, the way round is missing once.
    """
    number = len(chart.roles)
    plain = _sums(chart, wraps=False)
    if across == 1 and not chart.in_the_round:
        return plain[:number]
    around = _sums(chart, wraps=True)
    return around * across if chart.in_the_round else around * (across - 1) + plain


def _sums(chart: Chart, *, wraps: bool) -> NDArray[np.int64]:
    read = Chart(chart.cells, chart.stitches, chart.roles, in_the_round=wraps)
    found = find_floats(read)
    return np.bincount(found.role, weights=found.stitches, minlength=len(chart.roles)).astype(np.int64)
