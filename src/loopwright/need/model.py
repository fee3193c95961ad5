"""Need from the fabric itself: mass per area of the washed swatch, or loop length."""

from __future__ import annotations

import math

from loopwright.fabric import Swatch
from loopwright.need.loops import stitch_on_swatch
from loopwright.pattern import Construction, PatternFacts
from loopwright.uncertainty import Estimate, Origin, combine_by_precision
from loopwright.yarn.lot import LABEL_RELATIVE_SD, SCALE_SD_G

__all__ = ["allowance", "density_by_loop", "density_by_mass", "modelled_need", "yarn_density"]

SEWN = frozenset({Construction.SET_IN, Construction.DROP, Construction.SLEEVELESS})
"""Constructions that are usually sewn together from pieces."""


def allowance(pattern: PatternFacts) -> Estimate:
    """Give the factor for what the plain area leaves out: edges, ribs, seams, ends, bands.

    1.04 for a flat piece (cast-on, cast-off and ends only: 1 to 2 % for ends and a row and a half for an edge), 1.10
    for a garment in one piece, 1.15 in pieces, 1.35 for a cardigan with bands: published amounts of tops run 1.06 to
    1.25 and 1.3 to 1.45 times the bare need. Source: our study of published pullover amounts; the flat piece is
    common practice.
    """
    mean, sd, what = (1.04, 0.02, "a flat piece")
    if pattern.construction.is_top or pattern.construction is Construction.HAT:
        mean, sd, what = (1.10, 0.03, "worked in one piece")
    if pattern.construction in SEWN:
        mean, sd, what = (1.15, 0.04, "in pieces")
    if pattern.opens_in_front:
        mean, sd, what = (1.35, 0.05, "with front bands")
    return Estimate.known(
        f"edges, seams and ends, {what}",
        mean,
        "×",
        Origin.TABLE,
        sd=sd,
        source="published amounts against bare area, our study",
    )


def modelled_need(area_cm2: Estimate, metres_per_m2: Estimate, extra: Estimate) -> Estimate:
    """Give the metres of strand in a garment: area × metres to the square metre × what the area leaves out."""
    bare_m = area_cm2.mean / 10_000 * metres_per_m2.mean
    sd = bare_m * math.hypot(metres_per_m2.relative_sd, area_cm2.relative_sd)
    bare = Estimate.worked(
        "yarn in that area",
        f"{area_cm2.mean:,.0f} cm² × {metres_per_m2.mean:.4g} m/m²",
        bare_m,
        sd,
        "m",
        after=(*area_cm2.steps, *metres_per_m2.steps),
    )
    return bare.times(extra, "whole garment by its fabric", f"{bare_m:.4g} m × {extra.mean:g}")


def yarn_density(swatch: Swatch, grist_tex: float, swatch_tex: float | None = None) -> Estimate:
    """Give metres of strand in a square metre of her fabric.

    They come from the loop length and, when the washed swatch was weighed, from its mass per area, joined by their
    precision: a small swatch on a kitchen scale says little.

    :param grist_tex: of the strand that the garment is knitted with, all yarns held together.
    :param swatch_tex: of the strand that the swatch was knitted with, whose mass was weighed; the same when left out.
    """
    by_mass = density_by_mass(swatch, swatch_tex or grist_tex)
    ways = [way for way in (by_mass, density_by_loop(swatch, grist_tex, swatch_tex)) if way is not None]
    return combine_by_precision(ways, "yarn in a square metre of your fabric")


def density_by_mass(swatch: Swatch, grist_tex: float) -> Estimate | None:
    """Give metres to the square metre from the swatch on the scale, or None when it was not weighed.

    :param grist_tex: of the strand that the swatch was knitted with.
    """
    per_area = swatch.mass_per_area_g_m2
    if per_area is None or swatch.mass_g is None:
        return None
    mean = per_area / grist_tex * 1000
    sd = mean * math.hypot(SCALE_SD_G / swatch.mass_g, LABEL_RELATIVE_SD)
    return Estimate.worked(
        "yarn in a square metre, by your weighed swatch",
        f"{per_area:.4g} g/m² / {grist_tex:.4g} tex",
        mean,
        sd,
        "m/m²",
        origin=Origin.MEASURED,
        source="arithmetic; scale ± 1 g and grist ± 3 % (our judgement)",
    )


def density_by_loop(swatch: Swatch, grist_tex: float, swatch_tex: float | None = None) -> Estimate:
    """Give metres to the square metre from stitch density and the loop, unravelled or from gauge and grist.

    :param swatch_tex: of the strand that the swatch was knitted with; the same when left out.
    Source: arithmetic; loop as in :func:`loopwright.need.loops.stitch_on_swatch`.
    """
    gauge = swatch.gauge
    rows = gauge.rows_or_usual_per_10cm
    stitch_mm = stitch_on_swatch(swatch, grist_tex, swatch_tex or grist_tex)
    mean = gauge.stitches_per_10cm * rows * 100 * stitch_mm.mean / 1000
    sd = mean * math.hypot(swatch.density_relative_sd, stitch_mm.relative_sd)
    return Estimate.worked(
        "yarn in a square metre, by loop length",
        f"{gauge.stitches_per_10cm:.4g} × {rows:.4g} × 100 sts × {stitch_mm.mean:.4g} mm",
        mean,
        sd,
        "m/m²",
        source=stitch_mm.steps[-1].source,
    )
