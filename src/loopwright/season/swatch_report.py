"""Everything that is known of one swatch, and what it means on each garment that is planned with it."""

from __future__ import annotations

from loopwright.fabric import (
    CountStatistics,
    GaugeDoubt,
    Length,
    Needle,
    NeedleAdvice,
    Swatch,
    Tightness,
    WashChange,
    WashRange,
    expected_wash,
    gauge_doubts,
    knit_to_cm,
    needle_of,
    next_needle,
    swatch_tightness,
    wash_change,
)
from loopwright.fit import size_named
from loopwright.fit.ways_out import Repeat, WaysOut, ways_out
from loopwright.garment import Garment
from loopwright.pattern import PatternFacts
from loopwright.records import Record
from loopwright.season.season import Season
from loopwright.season.settle import Settled, settle
from loopwright.units import BadInput
from loopwright.yarn import Yarn, grist_held_together

__all__ = ["CountedSide", "GarmentOnSwatch", "KnitTo", "MeasureDoubt", "SwatchReport", "swatch_report"]

WIDTHS = ("bust_girth", "hip_girth", "upper_arm_girth", "head_girth", "width")
"""Measures that are told with what the counting leaves in doubt of them."""
LENGTHS = ("length", "sleeve_length", "armhole_depth", "depth")
"""Measures that are knitted to a length."""


class CountedSide(Record):
    """What was counted before the wash, or after it.

    :ivar texts: the counts as they were written.
    """

    texts: tuple[str, ...]
    stitches: CountStatistics
    rows: CountStatistics | None


class MeasureDoubt(Record):
    """A finished width and what her counting leaves in doubt of it: one standard deviation."""

    point: str
    cm: float
    sd_cm: float


class KnitTo(Record):
    """The length off the needles that washes to a finished one."""

    point: str
    finished_cm: float
    unwashed: Length


class GarmentOnSwatch(Record):
    """One garment that is planned with the swatch.

    :ivar ways: both ways out of a gauge that is not the pattern's; None until a size is settled.
    """

    key: str
    name: str
    pattern: str
    size: str | None
    counts_kept: bool
    widths: tuple[MeasureDoubt, ...]
    knit_to: tuple[KnitTo, ...]
    needle: NeedleAdvice
    ways: WaysOut | None


class SwatchReport(Record):
    """One swatch.

    :ivar needle: her needle, if it is a size of the table; ``needle_mm`` as she wrote it.
    :ivar asked: what to knit to for a length that was asked for; None if none was, or the wash is not known.
    :ivar usual_wash: what the fibres usually do: common practice, to stand beside her own.
    """

    key: str
    fabric: str
    yarns: tuple[str, ...]
    needle_mm: float | None
    needle: Needle | None
    before: CountedSide | None
    after: CountedSide | None
    is_washed: bool
    places: int
    doubts: tuple[GaugeDoubt, ...]
    wash: WashChange | None
    usual_wash: WashRange | None
    asked: KnitTo | None
    tightness: Tightness | None
    mass_per_area_g_m2: float | None
    garments: tuple[GarmentOnSwatch, ...]

    @property
    def planned(self) -> CountedSide:
        """Give the side that is planned with: washed if it was washed."""
        side = self.after or self.before
        assert side is not None  # a swatch has a gauge
        return side


def swatch_report(
    season: Season, key: str, repeat: Repeat | None = None, length_cm: float | None = None
) -> SwatchReport:
    """Give everything about one swatch of a season.

    :param repeat: stitch repeat that counts to cast on should fit.
    :param length_cm: a length after washing; the report then says what to knit to for it.
    :raises BadInput: the season has no such swatch.
    """
    if key not in season.swatch_by_key:
        raise BadInput(found=key, wanted=f"one of the swatches {', '.join(season.swatch_by_key) or '(there is none)'}")
    swatch = season.swatch_by_key[key]
    strands = [season.yarn_by_key[yarn] for yarn in swatch.yarns]
    grist_tex = grist_held_together(yarn.grist_tex for yarn in strands)
    return SwatchReport(
        key=key,
        fabric=swatch.fabric,
        yarns=tuple(yarn.name for yarn in strands),
        needle_mm=swatch.needle_mm,
        needle=None if swatch.needle_mm is None else needle_of(swatch.needle_mm),
        before=_side(swatch, washed=False),
        after=_side(swatch, washed=True),
        is_washed=swatch.is_washed,
        places=swatch.places_counted,
        doubts=gauge_doubts(swatch),
        wash=wash_change(swatch),
        usual_wash=expected_wash(strands),
        asked=None if length_cm is None else _knit_to("length", length_cm, swatch),
        tightness=swatch_tightness(swatch, grist_tex),
        mass_per_area_g_m2=swatch.mass_per_area_g_m2,
        garments=tuple(
            _on_garment(season, garment, swatch, strands, repeat)
            for garment in season.garments
            if garment.swatch == key
        ),
    )


def _side(swatch: Swatch, *, washed: bool) -> CountedSide | None:
    counts = swatch.after if washed else swatch.before
    stitches = swatch.stitches_of(counts)
    if stitches is None:
        return None
    return CountedSide(texts=tuple(count.text for count in counts), stitches=stitches, rows=swatch.rows_of(counts))


def _knit_to(point: str, finished_cm: float, swatch: Swatch) -> KnitTo | None:
    unwashed = knit_to_cm(finished_cm, swatch)
    return None if unwashed is None else KnitTo(point=point, finished_cm=finished_cm, unwashed=unwashed)


def _on_garment(
    season: Season, garment: Garment, swatch: Swatch, strands: list[Yarn], repeat: Repeat | None
) -> GarmentOnSwatch:
    settled = settle(season, garment)
    pattern: PatternFacts = settled.pattern
    finished = settled.finished_cm
    knit_to = [_knit_to(point, finished[point], swatch) for point in LENGTHS if point in finished]
    return GarmentOnSwatch(
        key=garment.key,
        name=garment.name,
        pattern=pattern.name,
        size=settled.choice.name if settled.choice else None,
        counts_kept=settled.choice is None or settled.choice.counts_kept,
        widths=tuple(
            MeasureDoubt(point=point, cm=finished[point], sd_cm=finished[point] * swatch.stitches.relative_se)
            for point in WIDTHS
            if point in finished
        ),
        knit_to=tuple(one for one in knit_to if one is not None),
        needle=next_needle(swatch, pattern.gauge, grist_held_together(yarn.grist_tex for yarn in strands)),
        ways=_ways(settled, swatch, repeat),
    )


def _ways(settled: Settled, swatch: Swatch, repeat: Repeat | None) -> WaysOut | None:
    """Give both ways out for the size that she chose.

    Where she left the size to the fit it was chosen at her own gauge already; what she wants is then body plus ease,
    and the size meant is the one that states it most nearly.
    """
    garment, pattern, choice = settled.garment, settled.pattern, settled.choice
    if choice is None:
        return None
    wish, row = settled.wish, pattern.finished.bust_girth
    left_to_fit = garment.size is None and garment.changes.bust_girth_cm is None
    if not left_to_fit or wish is None or row is None or not {"bust_girth"} <= {*wish.body_cm} & {*wish.intended_cm}:
        return ways_out(pattern, choice, swatch, repeat)
    wanted = wish.body_cm["bust_girth"] + wish.intended_cm["bust_girth"]
    stated = {name: girth for name, girth in zip(pattern.sizes, row, strict=True) if girth is not None}
    meant = min(stated, key=lambda name: (round(abs(stated[name] - wanted), 9), -stated[name]))
    return ways_out(pattern, size_named(pattern, meant), swatch, repeat, wanted)
