"""Whether the counts of a swatch can be believed, and the usual reasons when they cannot."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Literal

from loopwright.fabric.count import Count
from loopwright.fabric.gauge_statistics import COUNT_RELATIVE_SD, CountStatistics, far_from_the_others
from loopwright.fabric.swatch import Swatch
from loopwright.records import Record

__all__ = ["PLAIN_ROWS_PER_STITCH", "GaugeDoubt", "gauge_doubts"]

PLAIN_ROWS_PER_STITCH = (1.15, 1.55)
"""Rows to a stitch of relaxed stocking stitch, hand-knitted: published gauges run 1.25 to 1.45; the margin is our
judgement."""
PLAIN = frozenset({"stocking stitch", "stocking stitch in the round"})
FAR_APART = 3.0
MOST_CHANGE = 0.35
"""A wash that changes a plain fabric by more is felting, or two counts that were exchanged: our judgement."""


class GaugeDoubt(Record):
    """Something about a swatch that is hard to believe.

    :ivar about: what it concerns.
    :ivar says: what was found, in words.
    :ivar reasons: the usual reasons, the likeliest first.
    """

    about: Literal["ratio", "count", "counts", "wash"]
    says: str
    reasons: tuple[str, ...]


def gauge_doubts(swatch: Swatch) -> tuple[GaugeDoubt, ...]:
    """Give what is hard to believe about the counts of a swatch: before the wash, after it, and between."""
    doubts: list[GaugeDoubt] = []
    for counts, side in ((swatch.before, "before washing"), (swatch.after, "after washing")):
        doubts += _ratio(swatch, counts, side)
        doubts += _odd_counts(counts, side)
    return (*doubts, *_wash(swatch))


def _ratio(swatch: Swatch, counts: tuple[Count, ...], side: str) -> Iterator[GaugeDoubt]:
    stitches, rows = swatch.stitches_of(counts), swatch.rows_of(counts)
    if swatch.fabric not in PLAIN or stitches is None or rows is None:
        return
    ratio, (low, high) = rows.mean / stitches.mean, PLAIN_ROWS_PER_STITCH
    if low <= ratio <= high:
        return
    reasons: tuple[str, ...]
    if ratio < 1:
        reasons = ("stitches and rows exchanged", "stretched in length", "not stocking stitch")
    elif ratio < low:
        reasons = (
            "stretched in length when it was counted or pinned",
            "not stocking stitch (garter is counted in ridges)",
        )
    else:
        reasons = ("stretched in width when it was counted or pinned", "not stocking stitch", "a row counted twice")
    yield GaugeDoubt(
        about="ratio",
        says=f"{side}, {rows.mean:.4g} rows to {stitches.mean:.4g} stitches is {ratio:.2f} rows to a stitch; "
        f"relaxed stocking stitch has {low} to {high}",
        reasons=reasons,
    )


def _odd_counts(counts: Sequence[Count], side: str) -> Iterator[GaugeDoubt]:
    stitches = [(one, one.stitches_per_10cm, one.stitch_weight) for one in counts]
    rows = [(one, one.rows_per_10cm, one.row_weight) for one in counts]
    for counted, what in ((stitches, "stitches"), (rows, "rows")):
        known = [(one, value, weight) for one, value, weight in counted if value is not None]
        values, weights = [value for _, value, _ in known], [weight for _, _, weight in known]
        for number in far_from_the_others(values, weights):
            yield GaugeDoubt(
                about="count",
                says=f'{side}, the {what} of "{known[number][0].text}" ({values[number]:.4g} to 10 cm) '
                "lie more than three standard deviations from the other counts",
                reasons=("miscounted", "another window than it says", "another place of the fabric: an edge, a border"),
            )
        if len(values) == 2 and _apart(values, weights):
            yield GaugeDoubt(
                about="counts",
                says=f"{side}, two counts of {what} lie far apart: {values[0]:.4g} and {values[1]:.4g} to 10 cm",
                reasons=("one is miscounted or has another window than it says", "a third count tells which"),
            )


def _apart(values: Sequence[float], weights: Sequence[float]) -> bool:
    spread = COUNT_RELATIVE_SD * sum(values) / 2 * math.sqrt(1 / weights[0] + 1 / weights[1])
    return abs(values[0] - values[1]) > FAR_APART * spread


def _wash(swatch: Swatch) -> Iterator[GaugeDoubt]:
    sides: tuple[tuple[CountStatistics | None, CountStatistics | None, str], ...] = (
        (swatch.stitches_of(swatch.before), swatch.stitches_of(swatch.after), "wider"),
        (swatch.rows_of(swatch.before), swatch.rows_of(swatch.after), "longer"),
    )
    for before, after, way in sides:
        if swatch.fabric not in PLAIN or before is None or after is None:
            continue
        factor = before.mean / after.mean
        if not 1 - MOST_CHANGE <= factor <= 1 + MOST_CHANGE:
            yield GaugeDoubt(
                about="wash",
                says=f"washing made it {factor:.2f} times as {'wide' if way == 'wider' else 'long'}",
                reasons=("it has felted", "before and after are exchanged", "it was pinned out and not let go"),
            )
