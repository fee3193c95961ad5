"""Puts what a size block says into a pattern that is there already."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from loopwright.pattern.facts import PatternFacts
from loopwright.pattern.size_row import read_size_names, read_size_row

__all__ = ["fields_into"]


def fields_into(pattern: PatternFacts, fields: Mapping[str, Any]) -> dict[str, Any]:
    """Give the changes, by field path, that put the fields of a block into a pattern.

    Where the block has the pattern's own sizes, or as many without names, rows that it does not state stay as they are.
    Where it has others, the rows of the old sizes go, since their figures no longer stand for any. A note is added to
    the one that is there.

    :param fields: as :func:`~loopwright.pattern.size_block.fields.to_pattern_fields` gives them.
    """
    changes = {name: value for name, value in fields.items() if name not in {"finished", "yarn", "note"}}
    if _same_sizes(pattern, fields):
        changes.update({f"finished.{name}": row for name, row in fields.get("finished", {}).items()})
        changes.update({f"yarn.{role}": amount for role, amount in fields.get("yarn", {}).items()})
    else:
        changes["finished"] = fields.get("finished")
        changes["yarn"] = fields.get("yarn")
    note = fields.get("note", "")
    if note and note not in pattern.note:
        changes["note"] = f"{pattern.note} {note}".strip()
    return changes


def _same_sizes(pattern: PatternFacts, fields: Mapping[str, Any]) -> bool:
    if fields.get("sizes"):
        return read_size_names(fields["sizes"]) == pattern.sizes
    rows = [read_size_row(row, "length") for row in fields.get("finished", {}).values()]
    rows += [read_size_row(row, _KIND[kind]) for one in fields.get("yarn", {}).values() for kind, row in one.items()]
    return all(len(row) == len(pattern.sizes) for row in rows)


_KIND = {"length": "yarn", "mass": "mass", "balls": "count"}
