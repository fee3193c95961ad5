"""What can be measured on a body, how, and how exactly. Source: ``data/body/measures.csv``."""

from __future__ import annotations

from typing import Final

from loopwright.data import table
from loopwright.records import Record

__all__ = ["MEASURES", "MeasureFacts"]


class MeasureFacts(Record):
    """One measure: the ISO 8559-1 term where there is one, how to take it, and its repeat error."""

    key: str
    name: str
    iso_8559_term: str
    how_to: str
    plan_sd_cm: float
    """Standard deviation of one home reading in cm: our proposal, built on ISO 20685 and Barrios et al. 2016."""


MEASURES: Final = {
    row["key"]: MeasureFacts(
        key=row["key"],
        name=row["name"],
        iso_8559_term=row["iso_8559_term"],
        how_to=row["how_to"],
        plan_sd_cm=float(row["plan_sd_cm"]),
    )
    for row in table("body/measures.csv")
}
"""Every measure by its key, which is also its key in a season file."""
