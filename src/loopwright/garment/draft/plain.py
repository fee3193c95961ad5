"""A draft as plain lists and texts, for machines: every row of every section."""

from __future__ import annotations

from typing import Any

from loopwright.garment.draft.piece import Draft, Edge, Join, Piece
from loopwright.garment.draft.section import Section

__all__ = ["plain_draft"]


def plain_draft(draft: Draft) -> dict[str, Any]:
    """Give a draft as nested dictionaries that JSON can hold; lengths in cm, edges in stitches from the middle line."""
    return {
        "construction": draft.construction,
        "direction": draft.direction,
        "stitches_per_10cm": draft.gauge.stitches_per_10cm,
        "rows_per_10cm": draft.gauge.rows_or_usual_per_10cm,
        "stitches": draft.stitches,
        "area_cm2": round(draft.area_cm2, 1),
        "pieces": [_piece(piece) for piece in draft.pieces],
        "joins": [_join(join) for join in draft.joins],
        "measures": [
            {
                "name": check.name,
                "wanted_cm": round(check.wanted_cm, 3),
                "drafted_cm": round(check.drafted_cm, 3),
                "reason": str(check.reason),
            }
            for check in draft.checks
        ],
        "notes": [str(note) for note in draft.notes],
    }


def _piece(piece: Piece) -> dict[str, Any]:
    return {
        "key": piece.key,
        "name": piece.name,
        "direction": piece.direction,
        "made": piece.made,
        "mirrored": piece.mirrored,
        "landmarks": [{"name": one.name, "section": one.section, "row": one.row} for one in piece.landmarks],
        "sections": [_section(section) for section in piece.sections],
    }


def _section(section: Section) -> dict[str, Any]:
    return {
        "key": section.key,
        "name": section.name,
        "fabric": section.fabric,
        "in_the_round": section.in_the_round,
        "begins": section.begins,
        "after": section.after,
        "ends": section.ends,
        "face": section.face,
        "first": section.first,
        "closed": section.closed,
        "stitches": section.stitches.tolist(),
        "left_edge": section.left_edge.tolist(),
        "shaping": [
            {"row": one.row, "kind": str(one.kind), "side": one.side, "stitches": one.stitches, "places": one.places}
            for one in section.shapings
        ],
        "roles": [{"role": run.role, "rows": run.rows} for run in section.role_runs],
        **_cells(section),
        "parts": {part.name: part.stitches.tolist() for part in section.parts},
    }


def _cells(section: Section) -> dict[str, Any]:
    """Give whose yarn knits each stitch, as numbers row by row; nothing where whole rows are alike."""
    if section.cells is None:
        return {}
    rows = zip(section.cells.cells, section.stitches.tolist(), strict=True)
    return {
        "role_numbers": list(section.cells.roles),
        "role_cells": [row[:count].tolist() for row, count in rows],
    }


def _join(join: Join) -> dict[str, Any]:
    return {
        "kind": join.kind,
        "one": _edge(join.one),
        "other": _edge(join.other),
        "length_cm": None if join.length_cm is None else [round(length, 3) for length in join.length_cm],
    }


def _edge(edge: Edge) -> dict[str, Any]:
    return {"piece": edge.piece, "section": edge.section, "edge": edge.name, "amount": edge.amount}
