"""What is settled for one garment by itself: size, measures, stitches, need and hours."""

from __future__ import annotations

import math
from collections.abc import Mapping

from pydantic import Field

from loopwright.body import Body, Wearer
from loopwright.calendar import hours_for
from loopwright.fabric import STRUCTURES, Swatch, gauge_sd, loop_length_mm
from loopwright.fit import (
    BODY_MEASURE_OF,
    SizeChoice,
    SizeFit,
    finished_at_gauge,
    intended_ease_cm,
    rank_sizes,
    score_size,
    size_between,
    size_named,
)
from loopwright.garment import Garment, fabric_area_cm2, stitch_count
from loopwright.need import RoleNeed, role_needs
from loopwright.need.model import allowance
from loopwright.pattern import Construction, PatternFacts
from loopwright.records import Record
from loopwright.season.result import GaugeAnswer
from loopwright.season.season import Season
from loopwright.uncertainty import Estimate, Origin, Step, total

__all__ = ["Settled", "settle"]

DEFAULT_STRETCH = 0.2
"""Stretch of stocking stitch in wool when no swatch was pulled: common practice 0.2 to 0.3."""


class Settled(Record):
    """One garment before yarn is shared out and dates are set."""

    garment: Garment
    pattern: PatternFacts
    body: Body | None
    swatch: Swatch | None
    choice: SizeChoice | None
    fits: tuple[SizeFit, ...] = ()
    finished_cm: Mapping[str, float] = Field(default_factory=dict)
    gauge: GaugeAnswer | None = None
    needs: tuple[RoleNeed, ...] = ()
    stitches: Estimate | None = None
    hours: Estimate | None = None

    @property
    def unknown_roles(self) -> tuple[str, ...]:
        """Give the roles whose need cannot be worked out."""
        known = {need.role for need in self.needs}
        return tuple(role.key for role in self.garment.yarns if role.key not in known)


def settle(season: Season, garment: Garment) -> Settled:
    """Work out one garment: size and fit, finished measures, stitches, need per role, hours."""
    pattern = season.pattern_by_key[garment.pattern]
    body = season.body_by_key[garment.wearer] if garment.wearer else None
    swatch = season.swatch_by_key[garment.swatch] if garment.swatch else None
    fits = _fits(garment, pattern, body, swatch)
    choice = _choice(garment, pattern, fits)
    if choice is None:
        return Settled(garment=garment, pattern=pattern, body=body, swatch=swatch, choice=None, fits=fits)
    measures = finished_at_gauge(pattern, choice, swatch.gauge if swatch else None)
    if garment.changes.bust_girth_cm is not None and body is not None:
        fits = _with_own_size(garment, pattern, body, swatch, measures, choice, fits)
    area = fabric_area_cm2(pattern.construction, measures)
    needs = role_needs(garment, pattern, choice, swatch, season.yarn_by_key, measures, area)
    changed = _changed(measures, garment)
    stitches = _stitches(pattern, swatch, fabric_area_cm2(pattern.construction, changed), needs)
    hours = None
    if stitches is not None:
        hours = hours_for(
            stitches,
            swatch.fabric if swatch else pattern.fabric,
            pattern.construction.value,
            season.pace,
            child=body is not None and body.wearer is Wearer.CHILD,
            knitted=garment.knitted or 0.0,
        )
    return Settled(
        garment=garment,
        pattern=pattern,
        body=body,
        swatch=swatch,
        choice=choice,
        fits=fits,
        finished_cm=changed,
        gauge=_gauge(pattern, swatch, changed),
        needs=needs,
        stitches=stitches,
        hours=hours,
    )


def _body_points(body: Body) -> dict[str, float]:
    points = {
        point: body.chest_or_bust_cm if point == "bust_girth" else body.measure_cm(measure)
        for point, measure in BODY_MEASURE_OF.items()
    }
    return {point: cm for point, cm in points.items() if cm is not None}


def _intended(garment: Garment, pattern: PatternFacts, body: Body) -> dict[str, float]:
    """Give the ease she wants per point: her own figure, else the style's."""
    hat = pattern.construction is Construction.HAT
    wanted = {}
    for point in BODY_MEASURE_OF:
        own: float | None = getattr(garment.ease, point)
        ease = (
            own if own is not None else intended_ease_cm(point, garment.fit, child=body.wearer is Wearer.CHILD, hat=hat)
        )
        if ease is not None:
            wanted[point] = ease
    return wanted


def _stretch(swatch: Swatch | None) -> float:
    return DEFAULT_STRETCH if swatch is None or swatch.stretch is None else swatch.stretch


def _fits(garment: Garment, pattern: PatternFacts, body: Body | None, swatch: Swatch | None) -> tuple[SizeFit, ...]:
    """Score every size against the wearer; empty where body and pattern share no point."""
    if body is None or not (pattern.construction.is_top or pattern.construction is Construction.HAT):
        return ()
    points, intended = _body_points(body), _intended(garment, pattern, body)
    fits = []
    for name in pattern.sizes:
        measures = finished_at_gauge(pattern, size_named(pattern, name), swatch.gauge if swatch else None)
        if any(point in points and point in intended for point in measures):
            fits.append(score_size(name, points, measures, intended, pattern.construction, _stretch(swatch)))
    return rank_sizes(fits)


def _with_own_size(
    garment: Garment,
    pattern: PatternFacts,
    body: Body,
    swatch: Swatch | None,
    measures: dict[str, float],
    choice: SizeChoice,
    fits: tuple[SizeFit, ...],
) -> tuple[SizeFit, ...]:
    """Add the size between two that she chose to the ranking."""
    points, intended = _body_points(body), _intended(garment, pattern, body)
    if not any(point in points and point in intended for point in measures):
        return fits
    own = score_size(choice.name, points, measures, intended, pattern.construction, _stretch(swatch))
    return rank_sizes((*fits, own))


def _choice(garment: Garment, pattern: PatternFacts, fits: tuple[SizeFit, ...]) -> SizeChoice | None:
    """Give her own choice, else the best fitting size, else the only one."""
    if garment.changes.bust_girth_cm is not None:
        return size_between(pattern, garment.changes.bust_girth_cm)
    if garment.size is not None:
        return size_named(pattern, garment.size)
    if fits:
        return size_named(pattern, fits[0].size)
    if len(pattern.sizes) == 1:
        return size_named(pattern, pattern.sizes[0])
    return None


def _changed(measures: dict[str, float], garment: Garment) -> dict[str, float]:
    changed = dict(measures)
    for name, longer in (
        ("length", garment.changes.body_longer_cm),
        ("sleeve_length", garment.changes.sleeves_longer_cm),
    ):
        if longer is not None and name in changed:
            changed[name] += longer
    return changed


def _gauge(pattern: PatternFacts, swatch: Swatch | None, measures: dict[str, float]) -> GaugeAnswer | None:
    if swatch is None:
        return None
    point = next((name for name in ("bust_girth", "head_girth", "width") if name in measures), None)
    wash = swatch.wash_factors
    return GaugeAnswer(
        pattern=pattern.gauge,
        own=swatch.gauge,
        is_washed=swatch.is_washed,
        width_point=point,
        width_doubt_cm=None if point is None else measures[point] * gauge_sd(swatch.places),
        wash_width=wash[0] if wash else None,
        wash_length=wash[1] if wash else None,
    )


def _stitches(
    pattern: PatternFacts, swatch: Swatch | None, area: Estimate | None, needs: tuple[RoleNeed, ...]
) -> Estimate | None:
    """Count stitches from the area; where the measures do not give it, from the yarn and its loop length."""
    gauge = swatch.gauge if swatch else pattern.gauge
    if area is not None:
        return stitch_count(area, gauge, swatch.places if swatch else 1)
    if not needs:
        return None
    metres = total([need.strand_m for need in needs], unit="m", correlation=0.5)
    extra = allowance(pattern)
    fabric = swatch.fabric if swatch else pattern.fabric
    loop_mm = loop_length_mm(gauge, needs[0].grist_tex) * STRUCTURES[fabric].yarn_per_stitch
    mean = metres.mean * 1000 / loop_mm / extra.mean
    sd = mean * math.hypot(metres.relative_sd, 0.06)
    step = Step(
        says="stitches, from the yarn and its loop length",
        working=f"{metres.mean:.4g} m / {loop_mm:.4g} mm / {extra.mean:g} for edges and seams",
        value=mean,
        sd=sd,
        unit="sts",
        origin=Origin.COMPUTED,
        source="loop length after Dalidovich and Munden",
    )
    return Estimate(mean=mean, sd=sd, unit="sts", origin=Origin.COMPUTED, steps=(*metres.steps, step))
