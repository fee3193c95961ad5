"""Strands of several colours held together, or plies of different colour: the colour seen from afar.

Patches too fine to be told apart are seen as the average of their light, weighted by area (partitive mixing, the law of
Maxwell's spinning disc). The average of stored sRGB, CIELAB or OKLab values is wrong by 5 to 30 ΔE00: too dark.
A blend of fibres before spinning follows another law and comes out darker; do not use this for heathers.
"""

from __future__ import annotations

import math

import numpy as np
import numpy.typing as npt

from loopwright.colour.spaces import Floats, linear_from_srgb, srgb_from_linear
from loopwright.units import BadInput

__all__ = ["blur_distance_m", "mix_strands", "strand_shares"]


def strand_shares(tex: npt.ArrayLike) -> Floats:
    """Give the share of the surface that each strand shows.

    A strand shows in proportion to its diameter, which goes with the square root of its mass per length:
    ``w ∝ √tex``. That assumes yarns of equal density (geometry, our proposal).

    :param tex: grist of each strand in g/km, shape (n,), above nothing.
    :returns: shape (n,), adding up to 1.
    :raises BadInput: there is no strand, or a grist is nothing or less.
    """
    grist = np.asarray(tex, dtype=np.float64)
    if grist.ndim != 1 or not grist.size:
        raise BadInput("no strand", "one strand or more")
    if not (np.isfinite(grist) & (grist > 0)).all():
        raise BadInput(f"{grist.min():g} tex", "a grist above nothing")
    width = np.sqrt(grist)
    return np.asarray(width / width.sum(), dtype=np.float64)


def mix_strands(colours: npt.ArrayLike, tex: npt.ArrayLike | None = None) -> Floats:
    """Give the colour that strands held together make from afar: ``encode(Σ wᵢ · decode(rgbᵢ))``.

    :param colours: sRGB of the strands, shape (n, 3), 0 to 1.
    :param tex: grist of each, shape (n,); left out, all are alike. How it weighs: :func:`strand_shares`.
    :returns: sRGB, shape (3,), 0 to 1.
    :raises BadInput: there is no strand, a grist is nothing or less, or there are more or fewer of them.
    Source: D. Briggs, The Dimensions of Colour, section 4.4, and a lighting maker's guide (cross-read).
    """
    light = linear_from_srgb(colours)
    shares = strand_shares(np.ones(len(light)) if tex is None else tex)
    if len(shares) != len(light):
        raise BadInput(f"{len(shares)} grists", f"one for each of {len(light)} strands")
    return srgb_from_linear(shares @ light)


def blur_distance_m(period_mm: float, cycles_per_degree: float) -> float:
    """Give the distance from which a regular pattern can no longer be told apart.

    ``distance = period / (2 tan(½ · 1/c))``. The eye's limit is 11.5 cycles per degree for a difference of colour alone
    (K. T. Mullen, Journal of Physiology 359, 1985, 381-400: 11 to 12), about 50 for light and dark (from memory).

    :param period_mm: of the pattern, above nothing: about twice a strand's width for two strands twisted together.
    :param cycles_per_degree: the limit, above nothing.
    """
    return period_mm / 1000 / (2 * math.tan(math.radians(1 / cycles_per_degree) / 2))
