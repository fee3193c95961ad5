"""What is settled for one garment by itself: size, measures, stitches, need and hours."""

from __future__ import annotations

import math
from collections.abc import Mapping

from pydantic import Field

from loopwright.body import Body, Wearer
from loopwright.calendar import hours_for
from loopwright.fabric import STRUCTURES, Swatch, loop_length_mm
from loopwright.fit import FitWish, SizeChoice, SizeFit, finished_at_gauge
from loopwright.garment import Garment, fabric_area_cm2, stitch_count
from loopwright.need import RoleNeed, SectionNeed
from loopwright.need.model import allowance
from loopwright.pattern import PatternFacts
from loopwright.records import Record
from loopwright.season.changed import changed_lengths
from loopwright.season.colour_work import draft_in_colours, stranded_share, work_of
from loopwright.season.drafted import Drafted, as_wished, brief_for, drafted_stitches, try_draft
from loopwright.season.garment_need import needs_of
from loopwright.season.own_draft import facts_of
from loopwright.season.result import GaugeAnswer
from loopwright.season.season import Season
from loopwright.season.sizing import choice_of, fits_of, wish_of
from loopwright.uncertainty import Estimate, total
from loopwright.units import Told

__all__ = ["Settled", "settle"]


class Settled(Record):
    """One garment before yarn is shared out and dates are set."""

    garment: Garment
    pattern: PatternFacts
    body: Body | None
    swatch: Swatch | None
    choice: SizeChoice | None
    wish: FitWish | None = None
    fits: tuple[SizeFit, ...] = ()
    finished_cm: Mapping[str, float] = Field(default_factory=dict)
    gauge: GaugeAnswer | None = None
    drafted: Drafted | None = None
    draft_fault: Told = Told()
    needs: tuple[RoleNeed, ...] = ()
    sections: tuple[SectionNeed, ...] = ()
    stitches: Estimate | None = None
    hours: Estimate | None = None

    @property
    def unknown_roles(self) -> tuple[str, ...]:
        """Give the roles whose need cannot be worked out."""
        known = {need.role for need in self.needs}
        return tuple(role.key for role in self.garment.yarns if role.key not in known)


def settle(season: Season, garment: Garment) -> Settled:
    """Work out one garment: size and fit, finished measures, stitches, need per role, hours."""
    pattern = facts_of(season, garment)
    body = season.body_by_key[garment.wearer] if garment.wearer else None
    swatch = season.swatch_by_key[garment.swatch] if garment.swatch else None
    gauge = swatch.gauge if swatch else None
    wish = wish_of(garment, pattern, body, swatch)
    fits = fits_of(wish, garment, pattern, gauge)
    choice = choice_of(garment, pattern, fits)
    if choice is None:
        return Settled(garment=garment, pattern=pattern, body=body, swatch=swatch, choice=None, wish=wish, fits=fits)
    measures = finished_at_gauge(pattern, choice, gauge)
    changed = as_wished(changed_lengths(measures, garment), garment.draft)
    drafted, draft_fault = try_draft(garment, pattern, changed, swatch, body)
    work, stranded = work_of(season, garment), 0.0
    if drafted is not None:
        stranded = stranded_share(draft_in_colours(brief_for(garment, pattern, changed, swatch, body), work))
    needs, sections = needs_of(garment, pattern, choice, swatch, body, season.yarn_by_key, work)
    still_to_knit = 1 - (garment.knitted or 0.0)
    if drafted is not None:
        stitches: Estimate | None = drafted_stitches(drafted, own=garment.pattern is None)
    else:
        stitches = _stitches(pattern, swatch, fabric_area_cm2(pattern.construction, changed), needs, still_to_knit)
    hours = None
    if stitches is not None:
        hours = hours_for(
            stitches,
            swatch.fabric if swatch else pattern.fabric,
            pattern.construction.value,
            season.pace,
            child=body is not None and body.wearer is Wearer.CHILD,
            knitted=garment.knitted or 0.0,
            stranded=stranded,
        )
    return Settled(
        garment=garment,
        pattern=pattern,
        body=body,
        swatch=swatch,
        choice=choice,
        wish=wish,
        fits=fits,
        finished_cm=changed,
        gauge=_gauge(pattern, swatch, changed),
        drafted=drafted,
        draft_fault=draft_fault,
        needs=needs,
        sections=sections,
        stitches=stitches,
        hours=hours,
    )


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
        width_doubt_cm=None if point is None else measures[point] * swatch.stitches.relative_se,
        wash_width=wash[0] if wash else None,
        wash_length=wash[1] if wash else None,
    )


def _stitches(
    pattern: PatternFacts,
    swatch: Swatch | None,
    area: Estimate | None,
    needs: tuple[RoleNeed, ...],
    still_to_knit: float,
) -> Estimate | None:
    """Count the whole garment's stitches from the area; where the measures do not give it, from yarn and loop length.

    :param still_to_knit: share that the needs are for; the stitches already knitted are counted too.
    """
    gauge = swatch.gauge if swatch else pattern.gauge
    if area is not None:
        return stitch_count(area, gauge, swatch.density_relative_sd) if swatch else stitch_count(area, gauge)
    if not needs:
        return None
    metres = total([need.strand_m for need in needs], unit="m", correlation=0.5)
    extra = allowance(pattern)
    fabric = swatch.fabric if swatch else pattern.fabric
    loop_mm = loop_length_mm(gauge, needs[0].grist_tex) * STRUCTURES[fabric].yarn_per_stitch
    mean = metres.mean * 1000 / loop_mm / extra.mean / still_to_knit
    sd = mean * math.hypot(metres.relative_sd, 0.06)
    return Estimate.worked(
        "stitches, from the yarn and its loop length",
        f"{metres.mean:.4g} m / {loop_mm:.4g} mm / {extra.mean:g} for edges and seams"
        + (f" / {still_to_knit:.3g} still to knit" if still_to_knit < 1 else ""),
        mean,
        sd,
        "sts",
        source="loop length after Dalidovich and Munden",
        after=metres.steps,
    )
