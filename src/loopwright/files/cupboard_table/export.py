"""The whole cupboard as the rows of a table."""

from __future__ import annotations

from collections.abc import Iterable

from loopwright.files.cupboard_table.blend_text import blend_text
from loopwright.files.cupboard_table.columns import COMPUTED, FIELDS
from loopwright.files.cupboard_table.grid import Cell
from loopwright.season.cupboard_report import LotReport

__all__ = ["cupboard_rows"]


def cupboard_rows(reports: Iterable[LotReport]) -> list[list[Cell]]:
    """Give the headings and a row for each lot: what is kept, then what is worked out from it.

    What is kept is written exactly, in grams, metres and millimetres as the headings say; what is worked out is
    rounded, for reading only.
    """
    return [[*(field.heading for field in FIELDS), *COMPUTED], *(_row(report) for report in reports)]


def _row(report: LotReport) -> list[Cell]:
    lot, yarn = report.lot, report.yarn
    kept: dict[str, Cell] = {
        "yarn": yarn.name,
        "colour": lot.colour,
        "shade": lot.shade,
        "dye_lot": lot.dye_lot,
        "put_ups": lot.put_ups or None,
        "weighed": lot.mass_g,
        "kept_in": lot.kept_in,
        "note": lot.note,
        "lot_key": lot.key,
        "fibres": blend_text(yarn.fibres),
        "length": yarn.length_m,
        "mass": yarn.mass_g,
        "needle": yarn.needle_mm,
        "plies": yarn.plies,
        "yarn_note": yarn.note,
        "yarn_key": yarn.key,
    }
    computed: list[Cell] = [
        round(report.mass_g.mean, 1),
        round(report.length_m.mean, 1),
        round(report.length_m.sd, 1),
        round(report.reserved_m, 1),
        round(report.free_m, 1),
        ", ".join(dict.fromkeys(one.name for one in report.reserved)),
    ]
    return [*(kept[field.key] for field in FIELDS), *computed]
