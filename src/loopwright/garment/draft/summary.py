"""What is done to a section, told in runs: the same shaping, every so many rows, so many times."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby, pairwise

from loopwright.garment.draft.section import Kind, Section, Shaping, Side

__all__ = ["ShapingRun", "shaping_runs"]

_IN_PAIRS = {Kind.CAST_OFF, Kind.CAST_ON, Kind.REST, Kind.TAKE_UP}
"""Done at one edge in a row and at the other in the next, and told together."""


@dataclass(frozen=True, slots=True)
class ShapingRun:
    """The same shaping again and again.

    :ivar sides: where in the row; both edges where it is done at both alike.
    :ivar stitches: at each of the sides, each time.
    :ivar places: at how many places of the row they are shared out.
    :ivar first_row: of the section, from 1, in which it is first done.
    :ivar every: (rows from one to the next, how often), the first counted from the begin of the section; empty where it
        is done once.
    """

    kind: Kind
    sides: tuple[Side, ...]
    stitches: int
    places: int
    first_row: int
    every: tuple[tuple[int, int], ...]

    @property
    def times(self) -> int:
        """Give how often it is done."""
        return sum(times for _, times in self.every) or 1


_Done = tuple[Kind, tuple[Side, ...], int, int]


def _by_row(shapings: Iterable[Shaping]) -> dict[int, list[_Done]]:
    """Give what is done in each row, the two edges together where they are shaped alike."""
    sides: dict[tuple[int, Kind, int, int], list[Side]] = {}
    for one in shapings:
        edge = one.side in ("left", "right")
        row = one.row // 2 * 2 if edge and one.kind in _IN_PAIRS else one.row
        sides.setdefault((row, one.kind, one.stitches, one.places), []).append(one.side)
    done: dict[int, list[_Done]] = {}
    for (row, kind, stitches, places), where in sides.items():
        done.setdefault(row, []).append((kind, tuple(sorted(where)), stitches, places))
    return done


def shaping_runs(section: Section) -> tuple[ShapingRun, ...]:
    """Give the shaping of a section in runs, in the order in which they begin."""
    rows_of: dict[_Done, list[int]] = {}
    order: list[tuple[_Done, int]] = []
    for row, changes in sorted(_by_row(section.shapings).items()):
        order += [(change, row) for change in changes]
    runs: list[ShapingRun] = []
    for change, rows in _unbroken(order, rows_of):
        runs.append(_run(change, rows))
    return tuple(sorted(runs, key=lambda run: run.first_row))


def _unbroken(order: list[tuple[_Done, int]], open_runs: dict[_Done, list[int]]) -> Iterator[tuple[_Done, list[int]]]:
    """Give each change with its rows, broken where another change of the same place comes between."""
    last_at: dict[tuple[Side, ...], _Done] = {}
    for change, row in order:
        place = change[1]
        before = last_at.get(place)
        if before is not None and before != change and before in open_runs:
            yield before, open_runs.pop(before)
        last_at[place] = change
        open_runs.setdefault(change, []).append(row)
    yield from open_runs.items()


def _run(change: _Done, rows: list[int]) -> ShapingRun:
    kind, sides, stitches, places = change
    gaps = [later - row for row, later in pairwise(rows)]
    if not gaps:
        return ShapingRun(kind, sides, stitches, places, rows[0] + 1, ())
    first = rows[0] + 1
    intervals = [first, *gaps] if first == gaps[0] else gaps
    every = [(gap, len(list(group))) for gap, group in groupby(intervals)]
    if len(intervals) == len(gaps):
        every = [(every[0][0], every[0][1] + 1), *every[1:]]
    return ShapingRun(kind, sides, stitches, places, first, tuple(every))
