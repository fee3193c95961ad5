"""What a knitter says of the colours of one garment, row by row, with the charts that she names."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain, cycle, islice, repeat

from loopwright.chart import Chart
from loopwright.chart.repeat import repeat_of
from loopwright.garment.wanted.colours import ColourPlace, ColourPlan, ColourRun

__all__ = ["ColourRow", "ColourWork"]


@dataclass(frozen=True, slots=True)
class ColourRow:
    """One row: a role, or a row of a chart, counted from 0.

    :ivar chart: key of the chart; empty for a plain row.
    """

    role: str = ""
    chart: str = ""
    chart_row: int = 0


@dataclass(frozen=True, slots=True)
class ColourWork:
    """A plan of colours with its charts.

    :ivar main: the role of all that is not named.
    :ivar charts: by key; of a chart with a repeat, what lies in its box is laid side by side.
    """

    plan: ColourPlan
    main: str
    charts: tuple[tuple[str, Chart], ...] = ()

    def chart(self, key: str) -> Chart:
        """Give the part of a chart that repeats across."""
        return repeat_of(dict(self.charts)[key])

    def rows(self, place: ColourPlace, first: int, count: int) -> tuple[ColourRow, ...]:
        """Give rows of one part of the garment.

        :param first: rows of the part that lie before them.
        """
        runs = self.plan.runs(place)
        if not runs:
            return (ColourRow(role=self.main),) * count
        return tuple(islice(self._on(runs), first, first + count))

    def _on(self, runs: tuple[ColourRun, ...]) -> Iterator[ColourRow]:
        """Give the rows of runs without end."""
        *numbered, last = runs
        if last.times is not None:
            return cycle(row for run in runs for row in self._rows(run))
        begin = [row for run in numbered for row in self._rows(run)]
        return chain(begin, chain.from_iterable(repeat(self._rows(last))))

    def _rows(self, run: ColourRun) -> list[ColourRow]:
        """Give the rows of a run; of one that goes on, those that it repeats."""
        if run.chart is None:
            return [ColourRow(role=run.role or self.main)] * (run.times or 1)
        high = self.chart(run.chart).rows
        return [ColourRow(chart=run.chart, chart_row=row) for row in range(high)] * (run.times or 1)
