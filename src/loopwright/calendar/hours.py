"""Hours of one garment from its stitches, its fabric and her pace."""

from __future__ import annotations

import math

from loopwright.calendar.pace import (
    DEFAULT_STITCHES_PER_MINUTE,
    GUESSED_RELATIVE_SD,
    MEASURED_RELATIVE_SD,
    Pace,
)
from loopwright.data import table
from loopwright.fabric import STRUCTURES
from loopwright.uncertainty import Estimate, Origin
from loopwright.units import write_percent

__all__ = ["fixed_hours", "hours_for", "stitches_per_minute"]

STRANDED = "stranded colourwork"
FIXED_RELATIVE_SD = 0.3
"""Spread of the hours that do not depend on stitches; our judgement."""


def stitches_per_minute(fabric: str, pace: Pace) -> Estimate:
    """Give her pace in a fabric: measured in it, else her plain pace over the fabric's multiplier.

    The multipliers are common practice with wide ranges; the range is taken as four standard deviations.
    """
    own = pace.in_fabric(fabric)
    if own is not None:
        return Estimate.known(f"your pace in {fabric}", own, "sts/min", Origin.MEASURED, sd=MEASURED_RELATIVE_SD * own)
    plain = pace.stitches_per_minute or DEFAULT_STITCHES_PER_MINUTE
    measured = pace.stitches_per_minute is not None
    base = Estimate.known(
        "your plain pace" if measured else "plain pace of a regular knitter",
        plain,
        "sts/min",
        Origin.MEASURED if measured else Origin.GUESS,
        sd=plain * (MEASURED_RELATIVE_SD if measured else GUESSED_RELATIVE_SD),
        source="" if measured else "planning default; hobby knitters report 28 to 51",
    )
    structure = STRUCTURES[fabric]
    typical = structure.time_typical
    if typical == 1 and structure.time_low == structure.time_high:
        return base
    slower = Estimate.known(
        f"{fabric} takes {typical:g} × the time of a knit stitch",
        1 / typical,
        "×",
        Origin.TABLE,
        sd=(structure.time_high - structure.time_low) / 4 / typical**2,
        source=structure.time_source,
    )
    return base.times(slower, f"pace in {fabric}", f"{plain:g} / {typical:g}")


def _mixed_pace(fabric: str, pace: Pace, stranded: float) -> Estimate:
    """Give the pace over a garment of which a share is stranded: the times of a stitch add up by their shares."""
    plain = stitches_per_minute(fabric, pace)
    if stranded <= 0 or fabric == STRANDED:
        return plain
    two = stitches_per_minute(STRANDED, pace)
    times = (1 - stranded) / plain.mean, stranded / two.mean
    mean = 1 / sum(times)
    relative = (times[0] * plain.relative_sd + times[1] * two.relative_sd) * mean
    return Estimate.worked(
        f"pace with {write_percent(stranded)} of the stitches in rows of several colours",
        f"1 / ({1 - stranded:.3g} / {plain.mean:.3g} + {stranded:.3g} / {two.mean:.3g})",
        mean,
        relative * mean,
        "sts/min",
        after=(*plain.steps, *two.steps),
    )


def fixed_hours(construction: str, *, child: bool) -> Estimate:
    """Give the hours for casting on, bands, seams, ends and blocking. Source: ``data/pace/fixed.csv``."""
    for row in table("pace/fixed.csv"):
        if row["construction"] == construction:
            hours = float(row["hours_child" if child else "hours_adult"])
            return Estimate.known(
                "swatch, casting on, seams, ends, blocking",
                hours,
                "h",
                Origin.TABLE,
                sd=FIXED_RELATIVE_SD * hours,
                source=row["source"],
            )
    raise KeyError(construction)


def hours_for(
    stitches: Estimate,
    fabric: str,
    construction: str,
    pace: Pace,
    *,
    child: bool = False,
    knitted: float = 0.0,
    stranded: float = 0.0,
) -> Estimate:
    """Give the hours still to be knitted: ``stitches / (60 × pace) × (1 + overhead) + fixed``.

    :param stitches: of the whole garment.
    :param knitted: share already done, 0 to under 1.
    :param stranded: share of the stitches that stand in rows of several colours, 0 to 1.
    Source: arithmetic; overhead and fixed hours are common practice until she logs her own.
    """
    speed = _mixed_pace(fabric, pace, stranded)
    fixed = fixed_hours(construction, child=child)
    left = 1 - knitted
    knitting = stitches.mean * left / (60 * speed.mean) * (1 + pace.overhead)
    knitting_sd = knitting * math.hypot(stitches.relative_sd, speed.relative_sd)
    says = f"{stitches.mean:,.0f} sts" + (f" × {write_percent(left)} still to do" if knitted else "")
    work = Estimate.worked(
        f"knitting, with {write_percent(pace.overhead)} for counting and small mistakes",
        f"{says} / (60 × {speed.mean:.3g}) × {1 + pace.overhead:.3g}",
        knitting,
        knitting_sd,
        "h",
        after=(*stitches.steps, *speed.steps),
    )
    return work.plus(fixed, "hours in all", f"{knitting:.1f} h + {fixed.mean:g} h")
