"""A size of a pattern, or a place between two, and its finished measures at her own gauge."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from loopwright.fabric import Gauge
from loopwright.pattern import PatternFacts
from loopwright.records import Record
from loopwright.units import BadInput

__all__ = ["ACROSS", "SizeChoice", "finished_at_gauge", "size_between", "size_named"]

ACROSS = frozenset(
    {
        "bust_girth",
        "waist_girth",
        "hip_girth",
        "upper_arm_girth",
        "wrist_girth",
        "shoulder_width",
        "head_girth",
    }
)
"""Measures that stitches decide; the others are knitted to a length and do not follow the stitch gauge. The width of
a rectangle or cowl is cast on by count and follows it too; that of a shawl is knitted to a size."""


class SizeChoice(Record):
    """A place in the size row: column ``low``, or ``share`` of the way from ``low`` to ``high``.

    :ivar counts_kept: she works the pattern's own stitch counts, so girths follow her gauge; between two sizes she
        works counts of her own for the girth she wants.
    """

    low: int
    high: int
    share: float = 0.0
    name: str
    counts_kept: bool = True

    def of(self, row: Sequence[float | None]) -> float | None:
        """Give the figure of this size in a row, by straight line between two sizes; None where it is not stated."""
        low, high = row[self.low], row[self.high]
        if self.share == 0:
            return low
        if low is None or high is None:
            return None
        return low + (high - low) * self.share


def size_named(pattern: PatternFacts, name: str) -> SizeChoice:
    """Give the size of that name.

    :raises BadInput: the pattern has no such size.
    """
    if name not in pattern.sizes:
        raise BadInput(found=f"the size '{name}'", wanted=f"one of {', '.join(pattern.sizes)}")
    column = pattern.sizes.index(name)
    return SizeChoice(low=column, high=column, name=name)


def size_between(pattern: PatternFacts, bust_girth_cm: float) -> SizeChoice:
    """Give the place in the size row whose finished bust is ``bust_girth_cm``.

    :raises BadInput: the pattern states no bust, or the girth lies outside its sizes.
    """
    row = pattern.finished.bust_girth
    stated = [(n, girth) for n, girth in enumerate(row or ()) if girth is not None]
    if not stated:
        raise BadInput(found=f"a pattern without finished bust ({pattern.name})", wanted="finished.bust_girth per size")
    for number, girth in stated:
        if abs(girth - bust_girth_cm) < 1e-9:
            return size_named(pattern, pattern.sizes[number]).model_copy(update={"counts_kept": False})
    for (low, low_girth), (high, high_girth) in pairwise(stated):
        if min(low_girth, high_girth) < bust_girth_cm < max(low_girth, high_girth):
            share = (bust_girth_cm - low_girth) / (high_girth - low_girth)
            name = f"between {pattern.sizes[low]} and {pattern.sizes[high]}"
            return SizeChoice(low=low, high=high, share=share, name=name, counts_kept=False)
    girths = [girth for _, girth in stated]
    raise BadInput(
        found=f"a finished bust of {bust_girth_cm:g} cm",
        wanted=f"from {min(girths):g} to {max(girths):g} cm, the pattern's sizes",
    )


def finished_at_gauge(pattern: PatternFacts, choice: SizeChoice, gauge: Gauge | None) -> dict[str, float]:
    """Give the finished measures in cm of a size worked at her gauge.

    Where she keeps the pattern's counts, girths and widths become ``stated × pattern's stitches / her stitches``;
    lengths are knitted to measure and stay. Source: definition of gauge.
    """
    factor = 1.0
    if gauge is not None and choice.counts_kept:
        factor = pattern.gauge.stitches_per_10cm / gauge.stitches_per_10cm
    across = ACROSS | {"width"} if pattern.construction.width_is_cast_on else ACROSS
    measures = {}
    for point, row in pattern.finished.rows():
        stated = choice.of(row)
        if stated is not None:
            measures[point] = stated * (factor if point in across else 1.0)
    return measures
