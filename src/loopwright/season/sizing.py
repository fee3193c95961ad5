"""Which size: what the fit is judged by, every size held against it, and the size that is knitted."""

from __future__ import annotations

from collections.abc import Mapping

from loopwright.body import MEASURES, Body, Wearer, body_doubts, complete
from loopwright.fabric import Gauge, Swatch
from loopwright.fit import (
    BODY_MEASURE_OF,
    FitWish,
    SizeChoice,
    SizeFit,
    fits_of_sizes,
    intended_ease_cm,
    size_between,
    size_named,
)
from loopwright.garment import Garment
from loopwright.pattern import Construction, PatternFacts
from loopwright.uncertainty import Estimate

__all__ = ["DEFAULT_STRETCH", "choice_of", "fits_of", "measure_key", "wish_of"]

DEFAULT_STRETCH = 0.2
"""Stretch of stocking stitch in wool when no swatch was pulled: common practice 0.2 to 0.3."""


def wish_of(garment: Garment, pattern: PatternFacts, body: Body | None, swatch: Swatch | None) -> FitWish | None:
    """Give what the sizes are held against, or None where nothing has to fit: no wearer, or a shawl."""
    if body is None or not (pattern.construction.is_top or pattern.construction is Construction.HAT):
        return None
    keys = {point: measure_key(point, body) for point in BODY_MEASURE_OF}
    measures = {point: body.measure_cm(key) for point, key in keys.items()}
    known = {point: cm for point, cm in measures.items() if cm is not None}
    spread = {point: MEASURES[keys[point]].plan_sd_cm for point in known}
    estimates = _estimates(body, pattern, known)
    wanted = _intended(garment, pattern, body)
    return FitWish(
        body_cm=known | {point: estimate.mean for point, estimate in estimates.items()},
        intended_cm={point: ease for point, (ease, _) in wanted.items()},
        wished_by={point: whose for point, (_, whose) in wanted.items()},
        plan_sd_cm=spread | {point: estimate.sd for point, estimate in estimates.items()},
        estimated=frozenset(estimates),
        construction=pattern.construction,
        stretch=DEFAULT_STRETCH if swatch is None or swatch.stretch is None else swatch.stretch,
    )


def _estimates(body: Body, pattern: PatternFacts, known: Mapping[str, float]) -> dict[str, Estimate]:
    """Estimate the measures that the pattern has and the body lacks, once the bust is known; never for a child."""
    if "bust_girth" not in known:
        return {}
    wanted = {point: BODY_MEASURE_OF[point] for point, _ in pattern.finished.rows() if point in BODY_MEASURE_OF}
    missing = {point: key for point, key in wanted.items() if point not in known}
    if not missing:
        return {}
    suspects = {key for doubt in body_doubts(body) for key in doubt.suspects}
    found = complete(body, leave_out=suspects).estimates
    return {point: found[key] for point, key in missing.items() if key in found}


def measure_key(point: str, body: Body) -> str:
    """Give the body measure of a point; the bust of a man or child is the chest."""
    if point == "bust_girth" and body.bust_girth_cm is None:
        return "chest_girth"
    return BODY_MEASURE_OF[point]


def _intended(garment: Garment, pattern: PatternFacts, body: Body) -> dict[str, tuple[float, str]]:
    """Give the ease that is wanted per point and whose wish it is.

    Her own figure stands first, then the style that she names, then what the pattern means, then the standard style.
    """
    hat = pattern.construction is Construction.HAT
    child = body.wearer is Wearer.CHILD
    wanted = {}
    for point in BODY_MEASURE_OF:
        own: float | None = getattr(garment.ease, point)
        designed = None if garment.fit else pattern.designed_ease_cm(point)
        by_style = intended_ease_cm(point, garment.fit or "standard", child=child, hat=hat)
        if own is not None:
            wanted[point] = (own, "your own figure")
        elif designed is not None:
            wanted[point] = (designed, "as the pattern means it")
        elif by_style is not None:
            wanted[point] = (by_style, "the usual for a hat" if hat else f"{garment.fit or 'standard'} fit")
    return wanted


def fits_of(wish: FitWish | None, garment: Garment, pattern: PatternFacts, gauge: Gauge | None) -> tuple[SizeFit, ...]:
    """Rank all sizes, and her own between two if she works one; empty where nothing has to fit."""
    if wish is None:
        return ()
    girth = garment.changes.bust_girth_cm
    return fits_of_sizes(wish, pattern, gauge, None if girth is None else size_between(pattern, girth))


def choice_of(garment: Garment, pattern: PatternFacts, fits: tuple[SizeFit, ...]) -> SizeChoice | None:
    """Give the size that is knitted: her own choice, else the best fitting one, else the only one."""
    if garment.changes.bust_girth_cm is not None:
        return size_between(pattern, garment.changes.bust_girth_cm)
    if garment.size is not None:
        return size_named(pattern, garment.size)
    if fits:
        return size_named(pattern, fits[0].size)
    if len(pattern.sizes) == 1:
        return size_named(pattern, pattern.sizes[0])
    return None
