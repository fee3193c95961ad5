"""Everything that is known of a chart: its size, floats, colours in a row, yarn, and where it fits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from loopwright.chart import (
    Chart,
    ChartRole,
    CountFault,
    LongFloat,
    NamedChart,
    areas_per_role,
    count_faults,
    find_floats,
    long_floats,
    metres_by_role,
    roles_per_row,
    usual_limit,
    young_child_limit,
)
from loopwright.fabric import Gauge, StructureName, Swatch
from loopwright.fabric.loop import plain_loop_mm
from loopwright.garment import Garment
from loopwright.season.chart_fits import SectionFit, section_fits
from loopwright.season.colour_choices import likeness
from loopwright.season.own_draft import facts_of
from loopwright.season.season import Season
from loopwright.units import BadInput
from loopwright.yarn import grist_held_together

__all__ = [
    "USUAL_GAUGE",
    "ChartReport",
    "RoleTold",
    "chart_report",
    "named_chart",
    "report_of",
    "with_shades",
]

USUAL_GAUGE = Gauge(stitches_per_10cm=22, rows_per_10cm=30)
"""What proportions are drawn at where nothing was counted: a usual DK; our choice."""


@dataclass(frozen=True, slots=True)
class RoleTold:
    """What one role takes of the chart worked once.

    :ivar name: its colour, where a yarn plays it.
    :ivar mass_g: None where the yarn's grist is not known.
    """

    role: str
    name: str
    stitches: int
    float_stitches: int
    metres: float
    mass_g: float | None


@dataclass(frozen=True, slots=True)
class ChartReport:
    """What is known of a chart.

    :ivar chart: with the shades of the garment's yarns, where it has none of its own.
    :ivar gauge_from: where the gauge is from, in words.
    :ivar counted: whether the gauge was counted or stated, rather than the usual one.
    :ivar limit: stitches that a float may pass; ``for_young_child`` says that it is the shorter one.
    :ivar longest: of all floats, in stitches.
    :ivar many: numbers of the rows with more than two roles, and how many they have.
    :ivar areas: areas of one colour, by role.
    :ivar fits: of the garment's sections, edges left out.
    :ivar garment: its name; empty where it is for none.
    """

    chart: Chart
    gauge: Gauge
    gauge_from: str
    counted: bool
    limit: int
    for_young_child: bool
    longest: int
    long: tuple[LongFloat, ...]
    many: tuple[tuple[int, int], ...]
    most_roles: int
    areas: Mapping[str, int]
    faults: tuple[CountFault, ...]
    loop_mm: float
    roles: tuple[RoleTold, ...]
    fits: tuple[SectionFit, ...] = ()
    garment: str = ""

    @property
    def stitch_width_mm(self) -> float:
        """Give the width of one stitch."""
        return 100 / self.gauge.stitches_per_10cm

    @property
    def ratio(self) -> float:
        """Give the height of a cell over its width: stitches over rows."""
        return self.gauge.stitches_per_10cm / self.gauge.rows_or_usual_per_10cm

    @property
    def has_stitches(self) -> bool:
        """Say whether any cell is other than knit."""
        return bool((self.chart.stitches != 0).any())


def report_of(
    chart: Chart,
    gauge: Gauge,
    *,
    gauge_from: str = "as stated",
    counted: bool = True,
    fabric: StructureName = "stocking stitch",
    tex: Mapping[str, float] | None = None,
    limit: int | None = None,
    for_young_child: bool = False,
) -> ChartReport:
    """Work out a chart at a gauge.

    :param fabric: of the gauge; the yarn of a stitch is that of stocking stitch, its floats are added.
    :param tex: grist by role; the first role's decides the loop.
    :param limit: stitches that a float may pass; left out, the usual for this width.
    """
    width_mm = 100 / gauge.stitches_per_10cm
    grist = tex or {}
    loop_mm = plain_loop_mm(gauge, fabric, grist.get(chart.roles[0].name))
    usual = young_child_limit(width_mm) if for_young_child else usual_limit(width_mm)
    at_most = usual if limit is None else limit
    used = roles_per_row(chart)
    return ChartReport(
        chart=chart,
        gauge=gauge,
        gauge_from=gauge_from,
        counted=counted,
        limit=at_most,
        for_young_child=for_young_child and limit is None,
        longest=find_floats(chart).longest,
        long=long_floats(chart, at_most, width_mm),
        many=tuple((int(row) + 1, int(used[row])) for row in np.flatnonzero(used > 2)),
        most_roles=int(used.max()),
        areas=areas_per_role(chart),
        faults=count_faults(chart),
        loop_mm=loop_mm,
        roles=tuple(
            RoleTold(
                role=one.role,
                name=one.role,
                stitches=one.stitches,
                float_stitches=one.float_stitches,
                metres=one.metres,
                mass_g=one.metres * grist[one.role] / 1000 if one.role in grist else None,
            )
            for one in metres_by_role(chart, loop_mm, width_mm)
        ),
    )


def named_chart(season: Season, key: str) -> NamedChart:
    """Give a chart of a season.

    :raises BadInput: there is none of that key.
    """
    if key not in season.chart_by_key:
        known = ", ".join(season.chart_by_key) or "none"
        raise BadInput(found=f"the chart '{key}'", wanted=f"a chart of this season ({known})", place="charts")
    return season.chart_by_key[key]


def chart_report(season: Season, key: str) -> ChartReport:
    """Work out a chart of a season, with the garment it is for.

    :raises BadInput: there is none of that key, or the garment cannot be worked out.
    """
    named = named_chart(season, key)
    garment = season.garment_by_key[named.garment] if named.garment else None
    swatch_key = named.swatch or (garment.swatch if garment else None)
    swatch = season.swatch_by_key[swatch_key] if swatch_key else None
    gauge, gauge_from = _gauge(season, named, garment, swatch)
    body = season.body_by_key[garment.wearer] if garment and garment.wearer else None
    report = report_of(
        with_shades(season, named),
        gauge or USUAL_GAUGE,
        gauge_from=gauge_from,
        counted=gauge is not None,
        fabric="stocking stitch" if named.gauge or swatch is None else swatch.fabric,
        tex=_tex(season, named, garment, swatch),
        for_young_child=body is not None and body.is_young_child,
    )
    if garment is None:
        return report
    colours = {role.key: role.colour for role in garment.yarns}
    roles = tuple(replace(one, name=colours.get(one.role, one.role)) for one in report.roles)
    return replace(report, roles=roles, fits=section_fits(season, report.chart, garment), garment=garment.name)


def _gauge(
    season: Season, named: NamedChart, garment: Garment | None, swatch: Swatch | None
) -> tuple[Gauge | None, str]:
    if named.gauge is not None:
        return named.gauge, "as stated with the chart"
    if swatch is not None:
        return swatch.gauge, f"counted on the swatch {swatch.key}"
    if garment is not None:
        facts = facts_of(season, garment)
        return facts.gauge, f"the pattern's, {facts.name}"
    return None, "the usual of a DK yarn, since nothing was counted"


def with_shades(season: Season, named: NamedChart) -> Chart:
    """Give the chart with the likeness of each role's yarn where it has no shade of its own."""
    garment = season.garment_by_key[named.garment] if named.garment else None
    if garment is None:
        return named.chart
    shades = {role.key: likeness(season, role.yarn, role.colour, role.lots) for role in garment.yarns}
    roles = tuple(ChartRole(role.name, role.shade or shades.get(role.name)) for role in named.chart.roles)
    return replace(named.chart, roles=roles)


def _tex(season: Season, named: NamedChart, garment: Garment | None, swatch: Swatch | None) -> dict[str, float]:
    """Give the grist of each role: of its yarn in the garment, else of the swatch's yarn."""
    yarns = season.yarn_by_key
    found = {}
    if garment is not None:
        for role in garment.yarns:
            strands = [role.yarn] * role.strands + [strand.yarn for strand in role.held_with]
            found[role.key] = grist_held_together([yarns[yarn].grist_tex for yarn in strands])
    if swatch is not None:
        usual = grist_held_together([yarns[yarn].grist_tex for yarn in swatch.yarns])
        found = {role.role: found.get(role.role, usual) for role in named.roles}
    return found
