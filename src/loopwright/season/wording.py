"""How figures read to one reader: measures, trade words, dates and chances."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

from loopwright.garment.wanted import MEASURE_NAMES
from loopwright.season.result import Tone
from loopwright.uncertainty import Estimate, Step
from loopwright.units import (
    Reader,
    Told,
    term,
    write_doubt,
    write_gauge,
    write_length,
    write_mass,
    write_yarn_length,
    write_yarn_length_doubt,
)

__all__ = ["ONE_SIZE", "POINT_NAMES", "Wording", "odds"]

ONE_SIZE = "one size"
"""How patterns name their size where they have but one."""
POINT_NAMES = {**MEASURE_NAMES, "shoulder_width": "shoulders", "sleeve_length": "sleeve to underarm"}
"""The points of a garment as they are called in a sentence."""


@dataclass(frozen=True, slots=True)
class Wording:
    """Writes figures for one reader."""

    reader: Reader
    year: int | None = None
    """Dates of this year are written without it."""

    def cm(self, length_cm: float) -> str:
        """Write a length."""
        return write_length(length_cm, self.reader)

    def told(self, told: Told) -> str:
        """Write words with their lengths."""
        return told.written(self.cm)

    def yarn(self, length_m: float) -> str:
        """Write a length of yarn."""
        return write_yarn_length(length_m, self.reader)

    def mass(self, mass_g: float) -> str:
        """Write a mass."""
        return write_mass(mass_g, self.reader)

    def gauge(self, stitches: float, rows: float | None) -> str:
        """Write a gauge."""
        return write_gauge(stitches, rows, self.reader)

    def word(self, british: str) -> str:
        """Give a trade term as this reader knows it."""
        return term(british, self.reader)

    def fabric(self, name: str) -> str:
        """Give a fabric's name as this reader knows it."""
        if self.reader.words == "british":
            return name
        return name.replace("stocking stitch", "stockinette").replace("moss stitch", "seed stitch")

    def date(self, day: dt.date) -> str:
        """Write a date in words, so that no order of figures can be mistaken."""
        year = "" if day.year == self.year else str(day.year)
        if self.reader.words == "american":
            return f"{day:%B} {day.day}, {year}".rstrip(", ")
        return f"{day.day} {day:%B} {year}".rstrip()

    def estimate(self, estimate: Estimate) -> str:
        """Write an estimate with its doubt, in the reader's measures."""
        if estimate.unit == "m":
            return write_yarn_length_doubt(estimate.mean, estimate.sd, self.reader)
        if estimate.unit == "h" and estimate.mean < 10:
            return f"{estimate.mean:.1f} ± {estimate.sd:.1f} h"
        if estimate.unit == "h":
            return f"{estimate.mean:.0f} ± {estimate.sd:.0f} h"
        return write_doubt(estimate.mean, estimate.sd, estimate.unit)

    def signed(self, length_cm: float) -> str:
        """Write a difference in length with its sign."""
        sign = "+" if length_cm >= 0 else "−"
        return f"{sign}{self.cm(abs(length_cm))}" if abs(length_cm) >= 0.05 else "±0"

    def step(self, step: Step) -> str:
        """Write what one line of a derivation comes to, with its doubt."""
        if step.unit == "m":
            return write_yarn_length_doubt(step.value, step.sd, self.reader)
        if step.sd:
            return write_doubt(step.value, step.sd, step.unit)
        return f"{step.value:,.0f} {step.unit}" if abs(step.value) >= 1000 else f"{step.value:.4g} {step.unit}"

    @staticmethod
    def listed(parts: Sequence[str]) -> str:
        """Join parts as a sentence does: ``a, b and c``."""
        if len(parts) < 2:
            return "".join(parts)
        return f"{', '.join(parts[:-1])} and {parts[-1]}"

    @staticmethod
    def counted(number: int, noun: str, plural: str | None = None) -> str:
        """Write a count with its noun: ``one ball``, ``3 balls``."""
        small = {0: "no", 1: "one", 2: "two", 3: "three", 4: "four", 5: "five", 6: "six"}
        return f"{small.get(number, str(number))} {noun if number == 1 else plural or noun + 's'}"


def odds(p: float, sureness: float) -> tuple[str, Tone]:
    """Give the word that opens an answer of this probability, and its tone."""
    if p >= sureness:
        return "Yes", "yes"
    if p >= 0.8:
        return "Probably", "unsure"
    if p >= 0.5:
        return "Perhaps", "unsure"
    if p >= 0.2:
        return "Probably not", "no"
    return "No", "no"
