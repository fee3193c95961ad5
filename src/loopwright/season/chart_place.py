"""A chart laid on a part of a garment with nothing but the first role before and after it, as its colours say it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import takewhile

from loopwright.garment.wanted.colours import MOST_TIMES, ColourPlace, ColourRun

__all__ = ["ChartPlace", "read_place"]


@dataclass(frozen=True, slots=True)
class ChartPlace:
    """Where a chart is laid.

    :ivar before: rows of the garment's first role that come before it, in the order of knitting.
    :ivar times: how often it is worked one above the other, after which the first role goes on; None for on to the end.
    """

    place: ColourPlace
    before: int
    times: int | None

    def runs(self, chart: str, main: str) -> tuple[ColourRun, ...]:
        """Give it as the runs of a plan of colours.

        :param main: the garment's first role.
        """
        first = (ColourRun(role=main, times=self.before),) if self.before else ()
        last = () if self.times is None else (ColourRun(role=main),)
        return (*first, ColourRun(chart=chart, times=self.times), *last)


def read_place(place: ColourPlace, runs: Sequence[ColourRun], chart: str, main: str) -> ChartPlace | None:
    """Read runs that lay one chart with nothing but the first role before and after it; None where they hold more.

    What is given back has the same rows as the runs.
    """
    lead = list(takewhile(lambda run: run.role == main and run.times is not None, runs))
    if len(lead) == len(runs) or runs[len(lead)].chart != chart:
        return None
    before = sum(run.times or 0 for run in lead)
    laid, after = runs[len(lead)], runs[len(lead) + 1 :]
    if before > MOST_TIMES or any(run.role != main for run in after):
        return None
    if not after:
        again = laid.times is not None and before > 0  # every run has a number: they are worked again and again
        return None if again else ChartPlace(place, before, None)
    return None if after[-1].times is not None else ChartPlace(place, before, laid.times or 1)
