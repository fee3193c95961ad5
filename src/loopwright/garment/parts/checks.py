"""Measures of a draft held against what was wanted."""

from __future__ import annotations

from loopwright.fabric import Gauge
from loopwright.garment.draft import MeasureCheck
from loopwright.garment.wanted import GarmentMeasures
from loopwright.units import Told

__all__ = ["Measured"]


class Measured:
    """Collects what every measure came to, in stitches or rows, beside what was wanted."""

    def __init__(self, measures: GarmentMeasures, gauge: Gauge) -> None:
        """Begin with nothing measured."""
        self._wanted = dict(measures.known())
        self._gauge = gauge
        self.checks: list[MeasureCheck] = []

    def width(self, name: str, stitches: float, reason: str | Told = "", *, grain: int = 1) -> None:
        """Note a measure made of stitches; nothing is noted of a measure that nobody wanted.

        :param grain: stitches by which it can change at the least, where all its stitches are free.
        :param reason: why it may be off by more than half a stitch; dropped where it is not.
        """
        self._note(name, self._gauge.width_cm(stitches), self._gauge.width_cm(1) * grain, reason)

    def rows(self, name: str, rows: float, reason: str | Told = "") -> None:
        """Note a measure made of rows of the main fabric."""
        self.length(name, rows * 10 / self._gauge.rows_or_usual_per_10cm, reason)

    def length(self, name: str, drafted_cm: float, reason: str | Told = "") -> None:
        """Note a measure in cm that rows of several fabrics make up; its grain is one row of the main fabric."""
        self._note(name, drafted_cm, 10 / self._gauge.rows_or_usual_per_10cm, reason)

    def _note(self, name: str, drafted_cm: float, grain_cm: float, reason: str | Told) -> None:
        if name not in self._wanted:
            return
        check = MeasureCheck(name, self._wanted[name], drafted_cm, grain_cm)
        if not check.is_exact:
            check = MeasureCheck(name, self._wanted[name], drafted_cm, grain_cm, Told.of(reason))
        self.checks.append(check)
