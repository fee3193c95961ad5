"""Published amounts of yarn against a garment of that kind, drafted and counted section by section.

`yardage.csv` has the rows: what the page states of size and gauge, metres as an interval (whole balls: more than one
ball less, at most all), basis, source, status, and whether the row counts (`use`; `why` not).

**The rule.** What a row states is taken. What it does not state of a grown-up's garment is put on straight lines over
the chest that stand in the repository since its first back-test, before this model was written (our study of published
pullovers, section 5, judgement): length 59 + 0.06 (b − 90), upper arm 0.28 b + 6, wrist 0.07 b + 14.5, sleeve 45 cm. A
child's comes from the table of children's bodies at its chest with the usual ease of a child's garment. An armhole,
where nothing else is known, follows from the upper arm. Edges are the usual ones of the draft, but for those that the
type names. Where no grist is stated, Munden's equation stands alone; the state of washing is not known. A put-up has
the stated length, else 100 m. Amounts that a knitter is told to have include a swatch of 15 cm; measured use and hats,
which are their own swatch, do not. Nothing is fitted to a row or to a type.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from loopwright.body import size_table
from loopwright.fabric import Gauge
from loopwright.fit import intended_ease_cm
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import (
    Brief,
    DraftOptions,
    GarmentMeasures,
    Trim,
    measures_for_body,
    with_sleeves,
)
from loopwright.need import StrandOfRole, loop_by_gauge, section_needs, swatch_need, together
from loopwright.pattern import Construction
from loopwright.uncertainty import Estimate

__all__ = ["ROWS", "Errors", "Row", "drafted", "errors", "lines_of", "needed", "rows_of", "table_of_kinds"]

with (Path(__file__).parent / "yardage.csv").open(encoding="utf-8", newline="") as file:
    ROWS = list(csv.DictReader(file))

Row = dict[str, str]
GARTER = {"hem": Trim(fabric="garter stitch", depth_cm=3.0), "neckband": Trim(fabric="garter stitch", depth_cm=2.0)}
OPTIONS: dict[str, dict[str, object]] = {
    "V vest": {"neckline": "V", **GARTER},
    "yoke tee": {"sleeves": "short", "hem": Trim(fabric="1x1 rib", depth_cm=4.0), "cuff": Trim(depth_cm=2.0)},
    "A-line tee": {"sleeves": "short"},
    "fine yoke pullover": {"direction": "top down"},
    "raglan pullover": {"direction": "top down"},
    "raglan cardigan": {"direction": "top down", "opens_in_front": True},
    "drop-shoulder pullover": {"worked": "flat", "hem": Trim(depth_cm=2.0), "cuff": Trim(depth_cm=2.0)},
    "hat": {"hem": Trim(depth_cm=4.0)},
    "stranded hat": {"hem": Trim(fabric="moss stitch", depth_cm=3.0)},
}
"""What a type's name says of its making; a short edging is taken as 2 cm, the brim of a hat as 4 cm."""


def number(text: str) -> float | None:
    return float(text) if text else None


def lines_of(chest_cm: float) -> dict[str, float]:
    """Measures of a grown-up's garment by its chest."""
    return {
        "bust_girth": chest_cm,
        "length": 59 + 0.06 * (chest_cm - 90),
        "upper_arm_girth": 0.28 * chest_cm + 6,
        "wrist_girth": 0.07 * chest_cm + 14.5,
        "sleeve_length": 45.0,
    }


def child_measures(chest_cm: float, construction: Construction) -> dict[str, float]:
    """Measures of a child's garment from the table of bodies, at the chest that is left when its ease is taken off."""
    ease = intended_ease_cm("bust_girth", "standard", child=True) or 0.0
    sizes = sorted(size_table("children").values(), key=lambda body: body["bust_girth"])
    chests = [body["bust_girth"] for body in sizes]
    body = {name: float(np.interp(chest_cm - ease, chests, [one[name] for one in sizes])) for name in sizes[0]}
    body["bust_girth"] = chest_cm - ease
    known = dict(measures_for_body(body, {"bust_girth": ease}, construction).known())
    known.pop("hip_girth", None)
    return known


def measures_of(row: Row) -> GarmentMeasures:
    construction = Construction(row["construction"])
    if construction is Construction.HAT:
        return GarmentMeasures(head_girth_cm=number(row["head_girth_cm"]), length_cm=number(row["length_cm"]))
    chest = float(row["chest_cm"])
    known = child_measures(chest, construction) if row["wearer"] == "child" else lines_of(chest)
    for name, column in (("length", "length_cm"), ("upper_arm_girth", "upper_arm_cm"), ("sleeve_length", "sleeve_cm")):
        stated = number(row[column])
        if stated is not None:
            known[name] = stated
    if construction is Construction.DROP and row["upper_arm_cm"]:
        known["armhole_depth"] = known["upper_arm_girth"] / 2
    if not construction.has_sleeves:
        known = {name: cm for name, cm in known.items() if name in ("bust_girth", "length", "armhole_depth")}
    return GarmentMeasures.model_validate(known)


def drafted(row: Row) -> Draft:
    options = DraftOptions.model_validate(OPTIONS.get(row["type"], {}))
    measures = with_sleeves(measures_of(row), options.sleeves, GarmentMeasures())
    return draft(Brief(Construction(row["construction"]), measures, gauge_of(row), options, fabric=row["fabric"]))


def gauge_of(row: Row) -> Gauge:
    return Gauge(stitches_per_10cm=float(row["stitches_per_10cm"]), rows_per_10cm=number(row["rows_per_10cm"]))


def needed(row: Row) -> Estimate:
    """Metres by our draft and loop."""
    grist, gauge = number(row["grist_tex"]), gauge_of(row)
    strand = StrandOfRole(loop_by_gauge(gauge, row["fabric"], grist), grist, number(row["ball_m"]))
    needs = [*section_needs(drafted(row), {"main": strand}, shape_relative_sd=0.05)]
    if row["basis"] != "finished_project" and row["construction"] != "hat":
        needs.append(swatch_need(strand, gauge))
    return together(needs)


@dataclass(frozen=True, slots=True)
class Errors:
    """How far we are from a set of rows: relative to the amount, or to the middle of whole balls.

    :ivar relative: one a row.
    :ivar outside: the same to the nearest end of whole balls, 0 within them.
    """

    relative: np.ndarray
    outside: np.ndarray

    @property
    def median(self) -> float:
        return float(np.median(self.relative))

    @property
    def inside(self) -> int:
        return int((self.outside == 0).sum())


def errors(rows: list[Row]) -> Errors:
    ours = np.array([needed(row).mean for row in rows])
    low = np.array([float(row["metres_low"]) for row in rows])
    high = np.array([float(row["metres_high"]) for row in rows])
    outside = np.where(ours > high, ours / high - 1, np.where(ours < low, ours / np.maximum(low, 1) - 1, 0.0))
    return Errors(ours / ((low + high) / 2) - 1, outside)


def rows_of(*types: str) -> list[Row]:
    return [row for row in ROWS if row["type"] in types]


def table_of_kinds() -> str:
    """The table of docs/yarn-need.md: write it again with this when a construction changes."""
    lines = [
        "| kind | rows | basis | counts | median | from | to | within balls |",
        "|---|---|---|---|---|---|---|---|",
    ]
    for name in dict.fromkeys(row["type"] for row in ROWS if row["use"] != "range"):
        rows = rows_of(name)
        found = errors(rows)
        balls = f"{found.inside} of {len(rows)}" if rows[0]["basis"] == "balls_rounded_up" else ""
        shares = " | ".join(
            f"{100 * share:+.0f} %".replace("-", "−")
            for share in (found.median, found.relative.min(), found.relative.max())
        )
        counts = "yes" if rows[0]["use"] == "aim" else f"no: {rows[0]['why']}"
        lines.append(f"| {name} | {len(rows)} | {rows[0]['basis'].replace('_', ' ')} | {counts} | {shares} | {balls} |")
    return "\n".join(lines)
