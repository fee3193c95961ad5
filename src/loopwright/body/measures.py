"""What can be measured on a body, how, and how exactly. Source: ``data/body/measures.csv``."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from loopwright.body.body import Wearer
from loopwright.data import table
from loopwright.records import Record

__all__ = ["MEASURES", "MeasureFacts", "UsualRange"]


class UsualRange(Record):
    """Where nine in ten adults of a survey lie, in cm.

    :ivar source: the survey.
    :ivar status: ``read``, or ``cross-read`` in a second-hand place.
    """

    p5_cm: float
    p50_cm: float
    p95_cm: float
    source: str
    status: str


class MeasureFacts(Record):
    """One measure: its term, how to take it, what is usual, and its repeat error.

    :ivar group: the part of the body under which it is listed.
    :ivar iso_8559_term: its term in ISO 8559-1, empty where there is none.
    :ivar iso_8559_1_clause: the clause there, from memory; empty where it is not remembered.
    :ivar usual: by wearer; none for children, and none where no open figure was found.
    :ivar note: what to mind when the usual range is read.
    :ivar plan_sd_cm: standard deviation of one home reading: our proposal, built on ISO 20685 and Barrios et al. 2016.
    :ivar remeasure_if_cm: take a third reading when two differ by more: our proposal, twice ``plan_sd_cm``.
    """

    key: str
    name: str
    group: str
    iso_8559_term: str
    iso_8559_1_clause: str
    how_to: str
    needed_for: str
    usual: Mapping[Wearer, UsualRange]
    note: str
    plan_sd_cm: float
    remeasure_if_cm: float
    plan_sd_source: str


def _usual(row: Mapping[str, str]) -> dict[Wearer, UsualRange]:
    return {
        wearer: UsualRange(
            p5_cm=float(row[f"{wearer}_p5"]),
            p50_cm=float(row[f"{wearer}_p50"]),
            p95_cm=float(row[f"{wearer}_p95"]),
            source=row["range_source"],
            status=row["range_status"],
        )
        for wearer in (Wearer.WOMAN, Wearer.MAN)
        if row[f"{wearer}_p50"]
    }


def _facts(row: Mapping[str, str]) -> MeasureFacts:
    copied = (
        "key",
        "name",
        "group",
        "iso_8559_term",
        "iso_8559_1_clause",
        "how_to",
        "needed_for",
        "note",
        "plan_sd_source",
    )
    return MeasureFacts(
        usual=_usual(row),
        plan_sd_cm=float(row["plan_sd_cm"]),
        remeasure_if_cm=float(row["remeasure_if_cm"]),
        **{name: row[name] for name in copied},
    )


MEASURES: Final = {row["key"]: _facts(row) for row in table("body/measures.csv")}
"""Every length and girth by its key, which is also its key in a season file."""
