"""Fabric area of a garment from its finished measures: what stitches, yarn and hours are counted from."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Final

from loopwright.pattern import Construction
from loopwright.uncertainty import Estimate

__all__ = ["AREA_RELATIVE_SD", "WRIST_SHARE_OF_ARM", "fabric_area_cm2"]

AREA_RELATIVE_SD = 0.08
"""Spread of the area formulas below about a drawn schematic; our judgement."""
BODY_SHARE = 0.92
"""Share of the body's rectangle left when neck and armholes are taken off; our judgement, calibrated on published
pullover amounts. Replaced by the schematic once a garment is drafted."""
SLEEVELESS_SHARE = 0.84
"""The same without sleeves, whose armholes are cut deeper; our judgement."""
CAP_SHARE_OF_ARM = 7.2
"""Area of one sleeve cap in cm² per cm of upper arm: 0.6 × 12 cm; our judgement."""
WRIST_SHARE_OF_ARM = 0.65
"""Wrist over upper arm where the pattern states no wrist; our judgement."""

Measures = Mapping[str, float]


def _top(m: Measures, share: float = BODY_SHARE) -> tuple[float, str]:
    area = share * m["bust_girth"] * m["length"]
    return area, f"body {share} × {m['bust_girth']:.4g} × {m['length']:.4g}"


def _sleeves(m: Measures) -> tuple[float, str]:
    wrist = m.get("wrist_girth", WRIST_SHARE_OF_ARM * m["upper_arm_girth"])
    area = 2 * ((m["upper_arm_girth"] + wrist) / 2 * m["sleeve_length"] + CAP_SHARE_OF_ARM * m["upper_arm_girth"])
    return (
        area,
        f"sleeves 2 × ({m['upper_arm_girth']:.4g} + {wrist:.4g})/2 × {m['sleeve_length']:.4g} "
        f"and caps 2 × {CAP_SHARE_OF_ARM} × {m['upper_arm_girth']:.4g}",
    )


def _with_sleeves(m: Measures) -> tuple[float, str]:
    (body, body_says), (sleeves, sleeves_say) = _top(m), _sleeves(m)
    return body + sleeves, f"{body_says}; {sleeves_say}"


def _sleeveless(m: Measures) -> tuple[float, str]:
    return _top(m, SLEEVELESS_SHARE)


def _hat(m: Measures) -> tuple[float, str]:
    """Tube to two thirds of the height, then a crown that closes to a point."""
    girth, height = m["head_girth"], m["length"]
    return girth * height * (2 / 3 + 1 / 6), f"tube and crown {girth:.4g} × {height:.4g} × 5/6"


def _half_round(m: Measures) -> tuple[float, str]:
    return math.pi / 4 * m["width"] * m["depth"], f"half ellipse π/4 × {m['width']:.4g} × {m['depth']:.4g}"


def _triangle(m: Measures) -> tuple[float, str]:
    return m["width"] * m["depth"] / 2, f"triangle {m['width']:.4g} × {m['depth']:.4g} / 2"


def _crescent(m: Measures) -> tuple[float, str]:
    """Between two parabolas that meet in the tips: see :mod:`loopwright.garment.draft.lie`."""
    return 2 / 3 * m["width"] * m["depth"], f"crescent 2/3 × {m['width']:.4g} × {m['depth']:.4g}"


def _rectangle(m: Measures) -> tuple[float, str]:
    return m["width"] * m["length"], f"{m['width']:.4g} × {m['length']:.4g}"


_SLEEVED = ("bust_girth", "length", "upper_arm_girth", "sleeve_length")
_SHAPES: Final[dict[Construction, tuple[tuple[str, ...], Callable[[Measures], tuple[float, str]]]]] = {
    Construction.SET_IN: (_SLEEVED, _with_sleeves),
    Construction.RAGLAN: (_SLEEVED, _with_sleeves),
    Construction.YOKE: (_SLEEVED, _with_sleeves),
    Construction.DROP: (_SLEEVED, _with_sleeves),
    Construction.SLEEVELESS: (("bust_girth", "length"), _sleeveless),
    Construction.HAT: (("head_girth", "length"), _hat),
    Construction.HALF_ROUND_SHAWL: (("width", "depth"), _half_round),
    Construction.TRIANGLE_SHAWL: (("width", "depth"), _triangle),
    Construction.CRESCENT_SHAWL: (("width", "depth"), _crescent),
    Construction.RECTANGLE: (("width", "length"), _rectangle),
    Construction.COWL: (("width", "length"), _rectangle),
}


def fabric_area_cm2(construction: Construction, measures: Measures) -> Estimate | None:
    """Give the fabric area in cm², or None when a measure that shapes it is not known.

    A top is its body rectangle less neck and armholes, plus two sleeves as trapeziums with caps (body 0.92 of the
    rectangle, 0.84 without sleeves). Bands and turned hems are not counted. Standard deviation 8 % (judged).

    :param measures: finished measures in cm by name, after all changes.
    Source: shapes are plain geometry; the shares are our judgement, calibrated on published pullover amounts.
    """
    needed, shape = _SHAPES[construction]
    if any(name not in measures for name in needed):
        return None
    area, working = shape(measures)
    sd = AREA_RELATIVE_SD * area
    if construction.width_is_cast_on:
        sd = 0.02 * area
    return Estimate.worked(
        "fabric area from the finished measures",
        working,
        area,
        sd,
        "cm²",
        source="geometry; shares our judgement",
    )
