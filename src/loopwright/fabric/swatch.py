"""A knitted, measured, washed, measured and weighed sample."""

from __future__ import annotations

import math
from functools import cached_property
from typing import Annotated

from pydantic import Field, model_validator

from loopwright.fabric.count import Count, Counts
from loopwright.fabric.gauge import ROWS_PER_STITCH_RELATIVE_SD, Gauge
from loopwright.fabric.gauge_statistics import CountStatistics, count_statistics
from loopwright.fabric.structure import StructureName
from loopwright.fabric.unravelled import UnravelledField
from loopwright.records import Keyed, LengthCm, MassG, NeedleMm, Share
from loopwright.units import BadInput

__all__ = ["Swatch"]

PLAUSIBLE_LOOP_WIDTHS = (1.8, 9.0)
"""Yarn in a stitch over the stitch's width: about 4 in stocking stitch, 2.6 where half is slipped, 6 in a relaxed rib;
outside of these a figure is slipped. Our judgement."""


class Swatch(Keyed):
    """A sample in the garment's own fabric: both gauges and, weighed, the mass per area.

    :ivar yarns: keys of the yarns worked together as one strand; name one twice for two strands of it.
    :ivar before: counts off the needles, unwashed; one text, or a list of several places.
    :ivar after: counts after washing and drying as the garment will be: the ones that finished measures obey.
    :ivar places: in how many places the first count was taken, if it is their mean; several counts stand in a list.
    :ivar mass_g, width_cm, height_cm: of the washed swatch, for its mass per area.
    :ivar unravelled: stitches of it that were unravelled, away from the edges, and the yarn that they gave; the surest
        measure of the yarn in a stitch.
    :ivar stretch: share by which it pulls wider in comfort, for negative ease.
    """

    yarns: Annotated[tuple[str, ...], Field(min_length=1)]
    fabric: StructureName = "stocking stitch"
    needle_mm: NeedleMm | None = Field(default=None, alias="needle")
    before: Counts = ()
    after: Counts = ()
    places: Annotated[int, Field(ge=1, le=50)] = 1
    mass_g: MassG | None = Field(default=None, alias="mass")
    width_cm: LengthCm | None = Field(default=None, alias="width")
    height_cm: LengthCm | None = Field(default=None, alias="height")
    unravelled: UnravelledField | None = None
    stretch: Share | None = None
    note: str = ""

    @model_validator(mode="after")
    def _has_a_gauge(self) -> Swatch:
        if not self.before and not self.after:
            raise BadInput(
                found="a swatch without a gauge",
                wanted='after = "22 sts x 30 rows = 10 cm" (and before, if it was counted unwashed too)',
            )
        return self

    @model_validator(mode="after")
    def _unravelled_fits_the_gauge(self) -> Swatch:
        if self.unravelled is None or not (self.before or self.after):
            return self
        width_mm = 100 / self.stitches.mean
        low, high = PLAUSIBLE_LOOP_WIDTHS
        if not low * width_mm <= self.unravelled.stitch_mm <= high * width_mm:
            raise BadInput(
                found=f"{self.unravelled.text}, {self.unravelled.stitch_mm:.3g} mm of yarn in a stitch "
                f"{width_mm:.3g} mm wide",
                wanted=f"from {low * width_mm:.3g} to {high * width_mm:.3g} mm, about four times the width",
                hint="write the length of the yarn that came out, not the width of the knitting",
                place="unravelled",
            )
        return self

    @property
    def counts(self) -> tuple[Count, ...]:
        """Give the counts to plan with: washed if it was washed, else as it left the needles."""
        return self.after or self.before

    @property
    def is_washed(self) -> bool:
        """Say whether the counts to plan with were taken after washing."""
        return bool(self.after)

    def stitches_of(self, counts: tuple[Count, ...]) -> CountStatistics | None:
        """Give what the counts of one side say of its stitches; None where there are none."""
        return self._statistics([(count.stitches_per_10cm, count.stitch_weight) for count in counts])

    def rows_of(self, counts: tuple[Count, ...]) -> CountStatistics | None:
        """Give what the counts of one side say of its rows; None where there are none."""
        return self._statistics([(count.rows_per_10cm, count.row_weight) for count in counts])

    def _statistics(self, counted: list[tuple[float | None, float]]) -> CountStatistics | None:
        known = [
            (value, weight * (self.places if number == 0 else 1))
            for number, (value, weight) in enumerate(counted)
            if value is not None
        ]
        return count_statistics([value for value, _ in known], [weight for _, weight in known]) if known else None

    @cached_property
    def stitches(self) -> CountStatistics:
        """Give what is known of the stitches to 10 cm that are planned with."""
        statistics = self.stitches_of(self.counts)
        assert statistics is not None  # a side has stitches, by its field
        return statistics

    @cached_property
    def rows(self) -> CountStatistics | None:
        """Give what is known of the rows to 10 cm that are planned with."""
        return self.rows_of(self.counts)

    @property
    def gauge(self) -> Gauge:
        """Give the gauge to plan with, the mean of its counts."""
        return Gauge(stitches_per_10cm=self.stitches.mean, rows_per_10cm=None if self.rows is None else self.rows.mean)

    @property
    def places_counted(self) -> int:
        """Give in how many places the gauge to plan with was counted."""
        return self.places + len(self.counts) - 1

    @property
    def density_relative_sd(self) -> float:
        """Give the doubt of stitches × rows as a share.

        Rows that were not counted are taken from the stitches, so their error counts twice and the ratio's is added.
        """
        if self.rows is None:
            return math.hypot(2 * self.stitches.relative_se, ROWS_PER_STITCH_RELATIVE_SD)
        return math.hypot(self.stitches.relative_se, self.rows.relative_se)

    @property
    def mass_per_area_g_m2(self) -> float | None:
        """Give grams per square metre of the washed swatch, when it was weighed and measured."""
        if self.mass_g is None or self.width_cm is None or self.height_cm is None:
            return None
        return self.mass_g / (self.width_cm * self.height_cm) * 10_000

    @property
    def wash_factors(self) -> tuple[float, float | None] | None:
        """Give after ÷ before of width and of length: above one it grows. None unless both gauges are known.

        Width grows as stitches per 10 cm fall: ``factor = before/after``. Source: definition.
        """
        before, after = self.stitches_of(self.before), self.stitches_of(self.after)
        if before is None or after is None:
            return None
        width = before.mean / after.mean
        rows_before, rows_after = self.rows_of(self.before), self.rows_of(self.after)
        if rows_before is None or rows_after is None:
            return width, None
        return width, rows_before.mean / rows_after.mean
