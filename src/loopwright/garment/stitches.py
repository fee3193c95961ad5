"""Stitches in a garment: area times stitch density."""

from __future__ import annotations

import math

from loopwright.fabric import COUNT_RELATIVE_SD, Gauge
from loopwright.uncertainty import Estimate

__all__ = ["ONE_COUNT_DENSITY_SD", "stitch_count"]

ONE_COUNT_DENSITY_SD = math.sqrt(2) * COUNT_RELATIVE_SD
"""Doubt of stitches × rows, as a share, when each was counted once."""


def stitch_count(area_cm2: Estimate, gauge: Gauge, density_sd: float = ONE_COUNT_DENSITY_SD) -> Estimate:
    """Give the stitches of a fabric of this area: ``area × s/10 × r/10``.

    :param gauge: stitches s and rows r to 10 cm of the washed fabric; missing rows are taken as 1.38 s.
    :param density_sd: doubt of stitches × rows as a share, from their counts.
    Source: definition of stitch density; doubt by first-order propagation.
    """
    rows = gauge.rows_or_usual_per_10cm
    mean = area_cm2.mean * gauge.stitches_per_10cm * rows / 100
    relative = math.hypot(area_cm2.relative_sd, density_sd)
    return Estimate.worked(
        "stitches in the garment",
        f"{area_cm2.mean:,.0f} cm² × {gauge.stitches_per_10cm:.4g} × {rows:.4g} / 100",
        mean,
        relative * mean,
        "sts",
        source="definition of stitch density",
        after=area_cm2.steps,
    )
