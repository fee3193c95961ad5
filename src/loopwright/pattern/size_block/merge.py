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
    changes = {name: value for name, value in fields.items() if name not in {*_BY_SIZE, "note"}}
    same = _same_sizes(pattern, fields)
    for name in _BY_SIZE:
        if same:
            changes.update({f"{name}.{row}": figures for row, figures in fields.get(name, {}).items()})
        else:
            changes[name] = fields.get(name)
    note = fields.get("note", "")
    if note and note not in pattern.note:
        changes["note"] = f"{pattern.note} {note}".strip()
    return changes


def _same_sizes(pattern: PatternFacts, fields: Mapping[str, Any]) -> bool:
    if fields.get("sizes"):
        return read_size_names(fields["sizes"]) == pattern.sizes
    measures = {**fields.get("finished", {}), **{f"body {k}": row for k, row in fields.get("to_fit", {}).items()}}
    rows = [read_size_row(row, "length") for row in measures.values()]
    rows += [read_size_row(row, _KIND[kind]) for one in fields.get("yarn", {}).values() for kind, row in one.items()]
    return all(len(row) == len(pattern.sizes) for row in rows)


_BY_SIZE = ("to_fit", "finished", "yarn")
"""The tables of a pattern whose rows have a figure for each size."""
_KIND = {"length": "yarn", "mass": "mass", "balls": "count"}
