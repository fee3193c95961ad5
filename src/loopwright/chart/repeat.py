"""A repeat fitted to a count of stitches: whole or cut, centred, mirrored, with edge stitches beside it."""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from loopwright.chart.grid import Chart, RepeatBox
from loopwright.chart.symbols import BOXES, KNIT, MIRRORED
from loopwright.units import BadInput

__all__ = [
    "Fit",
    "RowFit",
    "fit_chart",
    "fit_flat",
    "fit_round",
    "fit_rows",
    "laid_out",
    "middle_axis",
    "mirror_axes",
    "repeat_of",
    "whole_counts",
]


@dataclass(frozen=True, slots=True, eq=False)
class Fit:
    """A repeat laid over a count of stitches.

    :ivar count: stitches of the round or row.
    :ivar width: stitches of the repeat.
    :ivar columns: which column of the repeat each stitch shows, left to right, −1 for a plain one; shape (count,).
    :ivar mirrored: whether each stitch is shown the other way round; shape (count,).
    :ivar whole: repeats that are whole.
    :ivar plain: stitches that show none of it: edges, or the panel that takes up what is left of a round.
    :ivar exact: whether the repeats come out even, edges aside.
    :ivar fewer, more: the nearest counts below and above at which they do; ``fewer`` is 0 where there is none.
    :ivar halves_match: in the round, whether front and back can both be centred on the motif.
    :ivar axis_off: how far the middle of the motif lies beside the middle of the work, in stitches: 0 or a half.
    """

    count: int
    width: int
    in_the_round: bool
    columns: NDArray[np.int64]
    mirrored: NDArray[np.bool_]
    whole: int
    plain: int
    exact: bool
    fewer: int
    more: int
    halves_match: bool
    axis_off: float

    @property
    def repeats(self) -> float:
        """Give how often the repeat goes into the count, edges aside."""
        edges = 0 if self.in_the_round else self.plain
        return (self.count - edges) / self.width

    @property
    def cut(self) -> int:
        """Give the stitches that show a part of a repeat."""
        return self.count - self.plain - self.whole * self.width


def _check(count: int, width: int, edge: int = 0) -> None:
    if width < 1 or count < 1 or edge < 0 or count <= 2 * edge:
        raise BadInput(
            found=f"{count} stitches, a repeat of {width} and {edge} at each edge",
            wanted="some stitches beside the edges and a repeat of one or more",
        )


def fit_round(count: int, width: int) -> Fit:
    """Lay a repeat round a tube; what is left over becomes a plain panel at the start of the round.

    Even repeats need the width to divide the count; front and back share the motif's middle only if it divides half
    the count (definition).

    :raises BadInput: a count or width under 1.
    """
    _check(count, width)
    whole, left = divmod(count, width)
    columns = np.r_[np.full(left, -1), np.tile(np.arange(width), whole)].astype(np.int64)
    return Fit(
        count=count,
        width=width,
        in_the_round=True,
        columns=columns,
        mirrored=np.zeros(count, np.bool_),
        whole=whole,
        plain=left,
        exact=left == 0,
        fewer=whole * width,
        more=(whole + (left > 0)) * width,
        halves_match=count % (2 * width) == 0,
        axis_off=0.0 if count % 2 else 0.5,
    )


def fit_flat(count: int, width: int, axis: float, edge: int = 0, *, mirror: bool = False) -> Fit:
    r"""Lay a repeat over flat work with its axis in the middle.

    Over the N stitches between the edges, stitch i shows column :math:`(s + i) \bmod r` with
    :math:`s = (\lfloor c \rfloor - \lfloor (N - 1)/2 \rfloor) \bmod r`.

    :param axis: column c of the repeat that stands in the middle, from 0; a half lies between two columns.
    :param edge: plain stitches at each side, outside the centring.
    :param mirror: show the half at the right of the middle as the mirror of the other, for a motif that has no axis.
    :raises BadInput: a count or width under 1, or nothing left between the edges.
    """
    _check(count, width, edge)
    inner = count - 2 * edge
    start = (math.floor(axis) - (inner - 1) // 2) % width
    inside = (start + np.arange(inner)) % width
    turned = np.zeros(inner, np.bool_)
    if mirror:
        half = inner // 2
        inside[inner - half :] = inside[:half][::-1]
        turned[inner - half :] = True
    whole = _whole(inside, turned, width)
    edges = np.full(edge, -1)
    fewer, more = _nearest(inner, width, axis)
    return Fit(
        count=count,
        width=width,
        in_the_round=False,
        columns=np.r_[edges, inside, edges].astype(np.int64),
        mirrored=np.r_[edges < -1, turned, edges < -1],
        whole=whole,
        plain=2 * edge,
        exact=inner in (fewer, more),
        fewer=fewer + 2 * edge if fewer else 0,
        more=more + 2 * edge,
        halves_match=False,
        axis_off=0.0 if mirror or math.isclose(axis % 1, (inner - 1) / 2 % 1) else 0.5,
    )


def _whole(columns: NDArray[np.int64], turned: NDArray[np.bool_], width: int) -> int:
    """Count the repeats of which every stitch is there, in either direction."""
    found = 0
    for part in (columns[~turned], columns[turned][::-1]):
        begins = np.flatnonzero(part == 0)
        found += int((begins + width <= part.size).sum())
    return found


def _nearest(inner: int, width: int, axis: float) -> tuple[int, int]:
    """Give the counts at and around this one at which both sides end alike: a multiple, and one stitch to balance it.

    An axis through a stitch balances with one stitch more than a multiple; one between two stitches with a multiple.
    """
    plus = 0 if axis % 1 else 1
    repeats = (inner - plus) // width
    fewer = repeats * width + plus
    return fewer if repeats > 0 else 0, fewer if fewer == inner else fewer + width


def whole_counts(width: int, axis: float, about: int, edge: int = 0) -> tuple[int, int]:
    """Give the counts nearest to one, at or below and at or above, at which a flat repeat ends alike at both sides."""
    _check(about, width, edge)
    fewer, more = _nearest(about - 2 * edge, width, axis)
    return (fewer + 2 * edge if fewer else 0), more + 2 * edge


@dataclass(frozen=True, slots=True)
class RowFit:
    """A repeat over a height in rows: whole repeats, and the row of the repeat that the lowest row shows, from 0."""

    whole: int
    left: int
    first_row: int


def fit_rows(rows: int, height: int) -> RowFit:
    """Lay a repeat of ``height`` rows over ``rows`` so that it is whole at the visible top and cut, if at all, below.

    Source: common practice, no source.

    :raises BadInput: no row, or a repeat of none.
    """
    _check(rows, height)
    whole, left = divmod(rows, height)
    return RowFit(whole, left, (height - left) % height)


def mirror_axes(chart: Chart) -> tuple[float, ...]:
    """Give every column about which the repeat, endlessly laid side by side, is its own mirror.

    Roles and stitches both have to be; a half lies between two columns. From 0 at the left, in order.
    """
    width = chart.columns
    plain = chart.cells.astype(np.int64) * 256 + chart.stitches
    turned = chart.cells.astype(np.int64) * 256 + MIRRORED[chart.stitches]
    _, kinds = np.unique(np.c_[plain, turned], axis=1, return_inverse=True)
    here, there = kinds.ravel()[:width], kinds.ravel()[width:]
    column = np.arange(width)
    half = [twice for twice in range(width) if np.array_equal(here, there[(twice - column) % width])]
    return tuple(sorted(twice / 2 + other for twice in half for other in (0, width / 2)))


def middle_axis(chart: Chart) -> float:
    """Give the axis nearest to the middle of the repeat; where it has none, its middle itself."""
    middle = (chart.columns - 1) / 2
    return min(mirror_axes(chart), key=lambda axis: (abs(axis - middle), axis), default=middle)


def fit_chart(chart: Chart, count: int, *, in_the_round: bool, edge: int = 0, mirror: bool = False) -> Fit:
    """Fit a chart's repeat, or the whole chart where it has no box, to a count.

    :raises BadInput: as :func:`fit_round` and :func:`fit_flat`.
    """
    part = repeat_of(chart)
    if in_the_round:
        return fit_round(count, part.columns)
    return fit_flat(count, part.columns, middle_axis(part), edge, mirror=mirror)


def repeat_of(chart: Chart) -> Chart:
    """Give the part of a chart that repeats across, all its rows; the whole of it where it has no box."""
    box = chart.repeat
    if box is None:
        return chart
    return chart.part(RepeatBox(box.column, 0, box.columns, chart.rows))


def laid_out(chart: Chart, fit: Fit) -> Chart:
    """Give the chart of the whole row or round: the repeat where it shows, the first role's plain knitting elsewhere.

    Crossings that are cut become knit.

    :raises BadInput: it grows too large.
    """
    part = repeat_of(chart)
    shows = fit.columns >= 0
    cells = np.where(shows, part.cells[:, fit.columns], 0).astype(np.uint8)
    straight = part.stitches[:, fit.columns]
    stitches = np.where(fit.mirrored, MIRRORED[straight], straight)
    stitches = np.where(shows, stitches, KNIT).astype(np.uint8)
    if (BOXES[stitches] > 1).any():
        stitches = _without_cut_crossings(stitches)
    return replace(part, cells=cells, stitches=stitches, in_the_round=fit.in_the_round, repeat=None)


def _without_cut_crossings(stitches: NDArray[np.uint8]) -> NDArray[np.uint8]:
    whole = stitches.copy()
    for line in whole:
        edges = np.r_[0, np.flatnonzero(np.diff(line)) + 1, line.size]
        for start, end in itertools.pairwise(edges):
            if (end - start) % BOXES[line[start]]:
                line[start:end] = KNIT
    return whole
