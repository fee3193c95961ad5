"""A knitted, measured, washed, measured and weighed sample."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from loopwright.fabric.gauge import Gauge, GaugeField
from loopwright.fabric.structure import StructureName
from loopwright.records import Keyed, LengthCm, MassG, NeedleMm, Share
from loopwright.units import BadInput

__all__ = ["Swatch"]


class Swatch(Keyed):
    """A sample in the garment's own fabric: both gauges and, weighed, the mass per area.

    :ivar yarns: keys of the yarns worked together as one strand; name one twice for two strands of it.
    :ivar before: gauge off the needles, unwashed.
    :ivar after: gauge after washing and drying as the garment will be: the one that finished measures obey.
    :ivar places: in how many places it was counted.
    :ivar mass_g, width_cm, height_cm: of the washed swatch, for its mass per area.
    :ivar stretch: share by which it pulls wider in comfort, for negative ease.
    """

    yarns: Annotated[tuple[str, ...], Field(min_length=1)]
    fabric: StructureName = "stocking stitch"
    needle_mm: NeedleMm | None = Field(default=None, alias="needle")
    before: GaugeField | None = None
    after: GaugeField | None = None
    places: Annotated[int, Field(ge=1, le=50)] = 1
    mass_g: MassG | None = Field(default=None, alias="mass")
    width_cm: LengthCm | None = Field(default=None, alias="width")
    height_cm: LengthCm | None = Field(default=None, alias="height")
    stretch: Share | None = None
    note: str = ""

    @model_validator(mode="after")
    def _has_a_gauge(self) -> Swatch:
        if self.before is None and self.after is None:
            raise BadInput(
                found="a swatch without a gauge",
                wanted='after = "22 sts x 30 rows = 10 cm" (and before, if it was counted unwashed too)',
            )
        return self

    @property
    def gauge(self) -> Gauge:
        """Give the gauge to plan with: washed if it was washed, else as it left the needles."""
        gauge = self.after or self.before
        assert gauge is not None  # one of them stands, by _has_a_gauge
        return gauge

    @property
    def is_washed(self) -> bool:
        """Say whether the gauge to plan with was taken after washing."""
        return self.after is not None

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
        if self.before is None or self.after is None:
            return None
        width = self.before.stitches_per_10cm / self.after.stitches_per_10cm
        if self.before.rows_per_10cm is None or self.after.rows_per_10cm is None:
            return width, None
        return width, self.before.rows_per_10cm / self.after.rows_per_10cm
