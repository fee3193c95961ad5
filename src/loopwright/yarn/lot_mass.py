"""The mass of a lot: put-ups by their band, opened yarn by the scale."""

from __future__ import annotations

import math

from loopwright.uncertainty import Estimate, Origin
from loopwright.yarn.lot import LABEL_RELATIVE_SD, SCALE_SD_G, Lot
from loopwright.yarn.yarn import Yarn

__all__ = ["mass_in_lot"]


def mass_in_lot(lot: Lot, yarn: Yarn) -> Estimate:
    """Give the grams in a lot: ``put-ups · band mass + weighed``.

    :returns: grams; put-ups stray with their band, what was weighed by the scale's reading error only.
    """
    by_band_g = lot.put_ups * yarn.mass_g
    weighed_g = lot.mass_g or 0.0
    sd = math.hypot(by_band_g * LABEL_RELATIVE_SD, SCALE_SD_G if lot.mass_g is not None else 0.0)
    parts = []
    if lot.put_ups:
        parts.append(f"{lot.put_ups} × {yarn.mass_g:g} g")
    if lot.mass_g is not None:
        parts.append(f"{lot.mass_g:g} g weighed")
    return Estimate.worked(
        "in the cupboard",
        " + ".join(parts),
        by_band_g + weighed_g,
        sd,
        "g",
        origin=Origin.STATED if lot.mass_g is None else Origin.MEASURED,
        source="mass on the band ± 3 %, the scale ± 1 g (our judgement)",
    )
