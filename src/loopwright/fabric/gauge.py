"""Gauge (tension): stitches and rows over 10 cm."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BeforeValidator, Field, PlainSerializer, WithJsonSchema

from loopwright.records import Record
from loopwright.units import BadInput, read_gauge

__all__ = ["PLAUSIBLE_PER_10CM", "ROWS_PER_STITCH_RELATIVE_SD", "Gauge", "GaugeField"]

PLAUSIBLE_PER_10CM = (3.0, 150.0)
"""Counts that a hand-knitter can have; outside of it a figure or a window is slipped. Our judgement."""
ROWS_PER_STITCH = 1.38
"""Rows over stitches when only stitches are known: mean of five published hand-knit gauges."""
ROWS_PER_STITCH_RELATIVE_SD = 0.05
"""How far that ratio strays, as a share: nine plain gauges of our study run from 1.29 to 1.44; our judgement."""


class Gauge(Record):
    """Stitches and rows to 10 cm of relaxed fabric."""

    stitches_per_10cm: Annotated[float, Field(gt=0)]
    rows_per_10cm: Annotated[float | None, Field(gt=0)] = None

    @property
    def rows_or_usual_per_10cm(self) -> float:
        """Give the rows to 10 cm; where they were not counted, the usual 1.38 to a stitch."""
        return self.rows_per_10cm or self.stitches_per_10cm * ROWS_PER_STITCH

    def stitches_in(self, width_cm: float) -> float:
        """Give the stitches across ``width_cm``, not rounded."""
        return width_cm * self.stitches_per_10cm / 10

    def width_cm(self, stitches: float) -> float:
        """Give the width in cm of a number of stitches."""
        return stitches / self.stitches_per_10cm * 10

    def stitches_for(self, stitches: float, of: Gauge) -> float:
        """Give the stitches that are as wide here as ``stitches`` of another gauge: ``count × mine / theirs``.

        Source: definition of gauge; handbooks state it as the rule for working a pattern at one's own gauge.
        """
        return stitches * self.stitches_per_10cm / of.stitches_per_10cm


def _read(value: Any) -> Any:
    if not isinstance(value, str):
        return value
    count = read_gauge(value)
    low, high = PLAUSIBLE_PER_10CM
    for number in (count.stitches_per_10cm, count.rows_per_10cm):
        if number is not None and not low <= number <= high:
            raise BadInput(
                found=f'"{value}", that is {number:.4g} to 10 cm', wanted=f"from {low:g} to {high:g} to 10 cm"
            )
    return {"stitches_per_10cm": count.stitches_per_10cm, "rows_per_10cm": count.rows_per_10cm}


def _write(gauge: Gauge) -> str:
    stitches = repr(gauge.stitches_per_10cm).removesuffix(".0")
    if gauge.rows_per_10cm is None:
        return f"{stitches} sts = 10 cm"
    rows = repr(gauge.rows_per_10cm).removesuffix(".0")
    return f"{stitches} sts x {rows} rows = 10 cm"


GaugeField = Annotated[
    Gauge,
    BeforeValidator(_read),
    PlainSerializer(_write, when_used="json"),
    WithJsonSchema(
        {
            "type": "string",
            "description": "stitches and rows over a stated length",
            "examples": ["22 sts x 30 rows = 10 cm", "28 sts / 4 in"],
        }
    ),
]
"""A gauge that reads ``22 sts x 30 rows = 10 cm`` or ``28 sts / 4 in``."""
