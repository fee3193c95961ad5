"""Needle sizes, and which to try next when the gauge is not the wanted one."""

from __future__ import annotations

import math
from typing import Final, Literal

from loopwright.data import table
from loopwright.fabric.gauge import Gauge
from loopwright.fabric.swatch import Swatch
from loopwright.records import Record
from loopwright.yarn import effective_diameter_mm

__all__ = ["NEEDLES", "Needle", "NeedleAdvice", "needle_of", "next_needle"]

Direction = Literal["hold", "larger", "smaller"]
SURE_SE = 2.0
"""Standard errors that a gauge has to be off before another needle is advised."""
SMALL_RANGE = 0.15
"""Beyond this share the model is stretched: our judgement."""


class Needle(Record):
    """A needle size by its diameter, with the numbers it is sold under.

    :ivar us, old_uk: American and old British or Canadian number; empty where the lists have none.
    :ivar status: ``cross-read`` in two lists, ``read`` in one, or from ``memory``.
    :ivar remark: where lists differ.
    """

    mm: float
    us: str
    old_uk: str
    source: str
    status: str
    remark: str


NEEDLES: Final = tuple(
    Needle(
        mm=float(row["mm"]),
        us=row["us"],
        old_uk=row["old_uk"],
        source=row["source"],
        status=row["status"],
        remark=row["remark"],
    )
    for row in table("fabric/needles.csv")
)
"""Needle sizes, the thinnest first. Source: ``data/fabric/needles.csv``."""


class NeedleAdvice(Record):
    """Which needle to try next.

    :ivar direction: ``hold`` to stay with the needle, because the gauge is within counting error (``why`` says
        ``counting``) or because no size comes nearer (``between``).
    :ivar off: how far her stitches are from the wanted ones, as a share; above nothing there are too many.
    :ivar off_se: standard error of that.
    :ivar model_mm: what the model asks for, before it is snapped to a size; None when her needle is not known.
    :ivar needle: the size to try; None when hers is not known or she holds.
    :ivar expected_per_10cm: stitches that the model expects on it (on her own where she holds).
    :ivar far: whether the change is so large that the model hardly reaches; another yarn may be the answer.
    """

    direction: Direction
    why: Literal["counting", "between", "off"]
    off: float
    off_se: float
    needle_mm: float | None
    model_mm: float | None
    needle: Needle | None
    expected_per_10cm: float
    far: bool


def needle_of(mm: float) -> Needle | None:
    """Give the size of this diameter, or None where it is no size of the table."""
    return next((needle for needle in NEEDLES if math.isclose(needle.mm, mm, abs_tol=0.01)), None)


def next_needle(swatch: Swatch, wanted: Gauge, grist_tex: float | None = None) -> NeedleAdvice:
    """Give the needle to try next so that the stitches come out as wanted.

    Direction: too many stitches to 10 cm want a larger needle, too few a smaller one (trade texts, cross-read). It is
    judged by stitches alone; rows are met by measuring. Within two standard errors of the counts she holds.

    Size: the width of a stitch is taken as proportional to the loop that lies on the needle, the needle with the yarn
    on both sides, ``W ∝ D + 2d``; without a grist as proportional to the needle itself, which promises too much of it.
    Both are our judgement and meant for a small range: swatch again. The size is the nearest of the table on the right
    side, and none if staying comes nearer.

    :param wanted: the gauge to reach.
    :param grist_tex: of the strand, all yarns held together.
    """
    stitches = swatch.stitches
    off, off_se = stitches.mean / wanted.stitches_per_10cm - 1, stitches.se / wanted.stitches_per_10cm
    own_mm, ratio = swatch.needle_mm, stitches.mean / wanted.stitches_per_10cm
    yarn_mm = 0.0 if grist_tex is None else 2 * effective_diameter_mm(grist_tex)
    model_mm = None if own_mm is None else (own_mm + yarn_mm) * ratio - yarn_mm
    known = {"off": off, "off_se": off_se, "needle_mm": own_mm, "model_mm": model_mm}
    hold = {"direction": "hold", "needle": None, "expected_per_10cm": stitches.mean, "far": False}
    if abs(off) <= SURE_SE * off_se:
        return NeedleAdvice.model_validate({**known, **hold, "why": "counting"})
    larger = off > 0
    way = {"direction": "larger" if larger else "smaller", "why": "off", "far": abs(off) > SMALL_RANGE}
    if own_mm is None:
        return NeedleAdvice.model_validate({**known, **way, "needle": None, "expected_per_10cm": stitches.mean})

    def expected(needle: Needle) -> float:
        return stitches.mean * (own_mm + yarn_mm) / (needle.mm + yarn_mm)

    def miss(per_10cm: float) -> float:
        return abs(math.log(per_10cm / wanted.stitches_per_10cm))

    sizes = [needle for needle in NEEDLES if (needle.mm > own_mm + 0.01 if larger else needle.mm < own_mm - 0.01)]
    best = min(sizes, key=lambda needle: miss(expected(needle)), default=None)
    if best is None or miss(expected(best)) >= miss(stitches.mean):
        return NeedleAdvice.model_validate({**known, **hold, "why": "between"})
    return NeedleAdvice.model_validate({**known, **way, "needle": best, "expected_per_10cm": expected(best)})
