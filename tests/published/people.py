"""Real bodies for checks: 44 rows of ANSUR II and 44 of body507, adults only, no names.

Sources and terms of ``people.csv``: ANSUR II, Gordon et al. 2014, NATICK/TR-15/007, a US Government work whose
public release may be distributed without limit; Heinz, Peterson, Johnson, Kerk 2003, Exploring Relationships in Body
Dimensions, Journal of Statistics Education 11(2), from the journal's public archive. One person was picked by a fixed
random seed from each slice of the bust or chest, and eight more of whom bust and shoulders disagree.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

from loopwright.body import Body

__all__ = ["PEOPLE", "Person"]

Survey = Literal["ansur2", "body507"]

_COLUMNS: Final = {
    "height_cm": "height_cm",
    "weight_kg": "mass_kg",
    "high_bust_cm": "high_bust_girth_cm",
    "waist_natural_cm": "waist_natural_girth_cm",
    "waist_navel_cm": "waist_navel_girth_cm",
    "hip_cm": "hip_girth_cm",
    "neck_cm": "neck_girth_cm",
    "neck_base_cm": "neck_base_girth_cm",
    "shoulder_length_cm": "shoulder_length_cm",
    "interscye_back_cm": "back_width_cm",
    "upper_arm_flexed_cm": "upper_arm_girth_cm",
    "forearm_cm": "forearm_girth_cm",
    "wrist_cm": "wrist_girth_cm",
    "hand_girth_cm": "hand_girth_cm",
    "head_cm": "head_girth_cm",
    "sleeve_outseam_cm": "arm_length_shoulder_to_wrist_cm",
    "armpit_to_wrist_vertical_cm": "underarm_to_wrist_cm",
}


@dataclass(frozen=True, slots=True)
class Person:
    """A body of a survey; an arm was taped flexed, and a length to the wrist is a difference of two heights."""

    survey: Survey
    body: Body


def _person(row: dict[str, str]) -> Person:
    woman = row["sex"] == "F"
    columns = {**_COLUMNS, "bust_or_chest_cm": "bust_girth_cm" if woman else "chest_girth_cm"}
    measures = {field: float(row[column]) for column, field in columns.items() if row[column]}
    facts = {"key": row["id"].lower(), "name": row["id"], "wearer": "woman" if woman else "man", **measures}
    return Person("ansur2" if row["source"] == "ansur2" else "body507", Body.model_validate(facts))


with (Path(__file__).parent / "people.csv").open(encoding="utf-8", newline="") as file:
    PEOPLE: Final = tuple(_person(row) for row in csv.DictReader(file))
