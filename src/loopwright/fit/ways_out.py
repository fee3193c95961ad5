"""When the gauge is not the pattern's: another size at her gauge, or other counts for this size."""

from __future__ import annotations

import math
import re
from typing import Annotated, Final

from pydantic import Field

from loopwright.fabric import Gauge, Swatch
from loopwright.fit.sizes import ACROSS, SizeChoice, size_named
from loopwright.pattern import Construction, PatternFacts
from loopwright.records import Record
from loopwright.units import BadInput

__all__ = [
    "CountWay",
    "Repeat",
    "RowEffect",
    "SizeWay",
    "WaysOut",
    "count_for_repeat",
    "read_repeat",
    "stitches_for_width",
    "ways_out",
]

SURE_SE: Final = 2.0
"""Standard errors that a gauge has to be off before it is called another: nineteen times in twenty."""
CAP_SHARE_OF_ARMHOLE: Final = 2 / 3
"""Height of a set-in sleeve's cap over the armhole's depth: the two-thirds rule, common practice; a worked cap by
Pythagoras comes to 0.67."""
ROWS_DECIDE: Final = {
    Construction.YOKE: ("round yoke", 1.0),
    Construction.RAGLAN: ("raglan", 1.0),
    Construction.SET_IN: ("sleeve cap", CAP_SHARE_OF_ARMHOLE),
}
"""What is shaped by counting rows, and its length over the armhole's depth."""
_REPEAT: Final = re.compile(r"\s*(\d{1,3})\s*n?\s*(?:([+−-])\s*(\d{1,3}))?\s*")


class Repeat(Record):
    """A stitch repeat ``m·n + p``: a multiple of ``multiple``, plus ``plus``."""

    multiple: Annotated[int, Field(ge=1, le=500)] = 1
    plus: Annotated[int, Field(ge=-500, le=500)] = 0

    def __str__(self) -> str:
        return (
            f"{self.multiple}n {'+' if self.plus > 0 else '−'} {abs(self.plus)}" if self.plus else f"{self.multiple}n"
        )


class SizeWay(Record):
    """The size whose counts, at her gauge, come nearest to the wanted girth.

    :ivar bust_cm: finished bust of that size worked at her gauge.
    :ivar bust_sd_cm: what her counting leaves in doubt of it.
    :ivar off_cm: that minus the wanted girth.
    """

    size: str
    bust_cm: float
    bust_sd_cm: float
    off_cm: float


class CountWay(Record):
    """Stitches for one width of this size.

    :ivar point: the measure, such as ``bust_girth``.
    :ivar width_cm: as the pattern means it.
    :ivar pattern_stitches: at the pattern's gauge, nearest to the repeat.
    :ivar own_stitches: at hers, nearest to the repeat.
    :ivar comes_to_cm: width of ``own_stitches`` at her gauge.
    """

    point: str
    width_cm: float
    pattern_stitches: int
    own_stitches: int
    comes_to_cm: float

    @property
    def more(self) -> int:
        """Give how many more stitches than at the pattern's gauge; below nothing, fewer."""
        return self.own_stitches - self.pattern_stitches


class RowEffect(Record):
    """What her rows do where rows decide the shape.

    :ivar part: ``round yoke``, ``raglan``, ``sleeve cap``, or empty where lengths are knitted to measure.
    :ivar length_cm: length of that part in the pattern; None where the pattern does not state the armhole's depth.
    :ivar off_cm: how much longer it comes out when worked by the pattern's rows; below nothing, shorter.
    :ivar off_sd_cm: what her counting leaves in doubt of it.
    :ivar per_10cm: the same for each 10 cm of the pattern's length.
    """

    part: str
    length_cm: float | None
    off_cm: float | None
    off_sd_cm: float | None
    per_10cm: float


class WaysOut(Record):
    """Her gauge against the pattern's, and what can be done.

    :ivar stitches_off, rows_off: her count over the pattern's, minus one; rows None where one of them is not counted.
    :ivar stitches_differ, rows_differ: whether that is more than two of its standard errors.
    :ivar of_size: the size whose widths and lengths are meant.
    :ivar wanted_bust_cm: the finished bust that she means to have; None where the pattern states none.
    :ivar as_it_is_cm: the bust that the pattern's counts of this size give at her gauge.
    :ivar size: another size's counts, this one's lengths; None where no bust is stated.
    :ivar counts: other counts for this size, one for each width.
    :ivar rows: what her rows do; None where they do not differ.
    """

    stitches_off: float
    stitches_differ: bool
    rows_off: float | None
    rows_differ: bool
    of_size: str
    wanted_bust_cm: float | None
    as_it_is_cm: float | None
    size: SizeWay | None
    counts: tuple[CountWay, ...]
    rows: RowEffect | None


def read_repeat(text: str) -> Repeat:
    """Read a stitch repeat such as ``4``, ``4n``, ``4n + 2`` or ``12n - 1``.

    :raises BadInput: it is none.
    """
    match = _REPEAT.fullmatch(text)
    if match is None or int(match[1]) == 0 or int(match[1]) > 500 or int(match[3] or 0) > 500:
        raise BadInput(found=text, wanted="a repeat such as 4n, 4n + 2 or 12n + 1, up to 500")
    plus = int(match[3] or 0)
    return Repeat(multiple=int(match[1]), plus=plus if match[2] in (None, "+") else -plus)


def count_for_repeat(stitches: float, repeat: Repeat) -> int:
    """Give the whole count nearest to ``stitches`` that fits ``m·n + p``, the larger of two as near; at least one n.

    Source: handbooks of knitting; rounding a half up is our choice.
    """
    times = math.floor((stitches - repeat.plus) / repeat.multiple + 0.5)
    least = max(1, math.ceil((1 - repeat.plus) / repeat.multiple))
    return repeat.multiple * max(times, least) + repeat.plus


def stitches_for_width(width_cm: float, gauge: Gauge, repeat: Repeat | None = None) -> int:
    """Give the stitches to cast on for a width, nearest to the repeat: ``width × stitches / 10``."""
    return count_for_repeat(gauge.stitches_in(width_cm), repeat or Repeat())


def ways_out(
    pattern: PatternFacts,
    choice: SizeChoice,
    swatch: Swatch,
    repeat: Repeat | None = None,
    wanted_bust_cm: float | None = None,
) -> WaysOut:
    """Give both ways out of a gauge that is not the pattern's.

    a) Each size's girth at her gauge is ``stated × pattern's stitches / hers``; the nearest to the wanted bust is
    taken, the larger of two as near. Lengths stay those of the size she wants.

    b) For each width of this size ``width × stitches / 10``, to the nearest count that fits the repeat.

    Rows: worked by count, a part becomes ``length × pattern's rows / hers``. The pattern's gauge is taken as exact.

    :param choice: the size that she would work at the pattern's gauge.
    :param wanted_bust_cm: finished bust that she wants; left out, what the pattern states for that size.
    Source: definition of gauge; the check of two standard errors is ours.
    """
    theirs, own = pattern.gauge, swatch.gauge
    stitches, rows = swatch.stitches, swatch.rows
    ratio = theirs.stitches_per_10cm / stitches.mean
    stated = choice.of(pattern.finished.bust_girth) if pattern.finished.bust_girth else None
    wanted = None if stated is None else wanted_bust_cm or stated
    rows_off = None if rows is None or theirs.rows_per_10cm is None else rows.mean / theirs.rows_per_10cm - 1
    rows_differ = (
        rows is not None and rows_off is not None and abs(rows.mean - (theirs.rows_per_10cm or 0.0)) > SURE_SE * rows.se
    )
    return WaysOut(
        stitches_off=1 / ratio - 1,
        stitches_differ=abs(stitches.mean - theirs.stitches_per_10cm) > SURE_SE * stitches.se,
        rows_off=rows_off,
        rows_differ=rows_differ,
        of_size=choice.name,
        wanted_bust_cm=wanted,
        as_it_is_cm=None if stated is None else stated * ratio,
        size=None if wanted is None else _nearest_size(pattern, swatch, wanted),
        counts=_count_ways(pattern, choice, own, repeat or Repeat()),
        rows=_row_effect(pattern, choice, swatch) if rows_differ else None,
    )


def _nearest_size(pattern: PatternFacts, swatch: Swatch, wanted_cm: float) -> SizeWay | None:
    ratio = pattern.gauge.stitches_per_10cm / swatch.stitches.mean
    ways = []
    for name in pattern.sizes:
        stated = size_named(pattern, name).of(pattern.finished.bust_girth or ())
        if stated is not None:
            bust = stated * ratio
            sd = bust * swatch.stitches.relative_se
            ways.append(SizeWay(size=name, bust_cm=bust, bust_sd_cm=sd, off_cm=bust - wanted_cm))
    return min(ways, key=lambda way: (round(abs(way.off_cm), 9), -way.bust_cm), default=None)


def _count_ways(pattern: PatternFacts, choice: SizeChoice, own: Gauge, repeat: Repeat) -> tuple[CountWay, ...]:
    across = ACROSS | {"width"} if pattern.construction.width_is_cast_on else ACROSS
    ways = []
    for point, row in pattern.finished.rows():
        width = choice.of(row)
        if point in across and width is not None:
            count = stitches_for_width(width, own, repeat)
            ways.append(
                CountWay(
                    point=point,
                    width_cm=width,
                    pattern_stitches=stitches_for_width(width, pattern.gauge, repeat),
                    own_stitches=count,
                    comes_to_cm=own.width_cm(count),
                )
            )
    return tuple(ways)


def _row_effect(pattern: PatternFacts, choice: SizeChoice, swatch: Swatch) -> RowEffect:
    assert swatch.rows is not None  # rows that differ are known on both sides
    assert pattern.gauge.rows_per_10cm is not None
    ratio = pattern.gauge.rows_per_10cm / swatch.rows.mean
    part, share = ROWS_DECIDE.get(pattern.construction, ("", 0.0))
    depth = choice.of(pattern.finished.armhole_depth) if pattern.finished.armhole_depth else None
    length = None if depth is None or not part else depth * share
    return RowEffect(
        part=part,
        length_cm=length,
        off_cm=None if length is None else length * (ratio - 1),
        off_sd_cm=None if length is None else length * ratio * swatch.rows.relative_se,
        per_10cm=10 * (ratio - 1),
    )
