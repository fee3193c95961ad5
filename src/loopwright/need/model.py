"""Need from the fabric itself: mass per area of the washed swatch, or loop length."""

from __future__ import annotations

import math

from loopwright.fabric import STRUCTURES, Swatch, loop_length_mm
from loopwright.fabric.loop import LOOP_RELATIVE_SD
from loopwright.garment import stitch_count
from loopwright.pattern import Construction, PatternFacts
from loopwright.uncertainty import Estimate, Origin, Step
from loopwright.yarn.lot import LABEL_RELATIVE_SD, SCALE_SD_G

__all__ = ["allowance", "modelled_need"]

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


def modelled_need(area_cm2: Estimate, swatch: Swatch, grist_tex: float, extra: Estimate) -> Estimate:
    """Give the metres of strand in a garment of this area.

    A weighed swatch gives ``area × mass per area / grist``; else ``stitches × loop length``. Then times ``extra``
    for what the area leaves out.

    :param grist_tex: of the strand, all yarns held together.
    Source: arithmetic; loop length as named in :mod:`loopwright.fabric.loop`.
    """
    bare = _by_mass(area_cm2, swatch, grist_tex) or _by_loop(area_cm2, swatch, grist_tex)
    return bare.times(extra, "whole garment by its fabric", f"{bare.mean:.4g} m × {extra.mean:g}")


def _by_mass(area_cm2: Estimate, swatch: Swatch, grist_tex: float) -> Estimate | None:
    per_area = swatch.mass_per_area_g_m2
    if per_area is None or swatch.mass_g is None:
        return None
    mean = area_cm2.mean / 10_000 * per_area / grist_tex * 1000
    relative = math.sqrt(area_cm2.relative_sd**2 + (SCALE_SD_G / swatch.mass_g) ** 2 + LABEL_RELATIVE_SD**2)
    step = Step(
        says="yarn in that area, from your washed and weighed swatch",
        working=f"{area_cm2.mean:,.0f} cm² × {per_area:.4g} g/m² / {grist_tex:.4g} tex",
        value=mean,
        sd=relative * mean,
        unit="m",
        origin=Origin.MEASURED,
        source="arithmetic",
    )
    return Estimate(mean=mean, sd=relative * mean, unit="m", origin=Origin.COMPUTED, steps=(*area_cm2.steps, step))


def _by_loop(area_cm2: Estimate, swatch: Swatch, grist_tex: float) -> Estimate:
    stitches = stitch_count(area_cm2, swatch.gauge, swatch.places)
    state = "washed" if swatch.is_washed else "unwashed"
    loop_mm = loop_length_mm(swatch.gauge, grist_tex, state) * STRUCTURES[swatch.fabric].yarn_per_stitch
    mean = stitches.mean * loop_mm / 1000
    sd = mean * math.hypot(stitches.relative_sd, LOOP_RELATIVE_SD)
    step = Step(
        says="yarn in those stitches, by loop length",
        working=f"{stitches.mean:,.0f} sts × {loop_mm:.4g} mm",
        value=mean,
        sd=sd,
        unit="m",
        origin=Origin.COMPUTED,
        source="loop length after Dalidovich and Munden",
    )
    return Estimate(mean=mean, sd=sd, unit="m", origin=Origin.COMPUTED, steps=(*stitches.steps, step))
