"""A season as the plain tables of its file."""

from __future__ import annotations

from typing import Any

from loopwright.season import Season

__all__ = ["season_tables"]


def season_tables(season: Season) -> dict[str, Any]:
    """Give a season as tables of text, numbers, lists and truth values, under the file's own names.

    What is unknown or as usual is left out; whole numbers have no decimals; dates are ISO 8601 text.
    """
    tables = season.model_dump(mode="json", by_alias=True, exclude_defaults=True, exclude_none=True)
    return {name: _plain(value) for name, value in tables.items()}


def _plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {name: _plain(below) for name, below in value.items()}
    if isinstance(value, list):
        return [_plain(entry) for entry in value]
    if isinstance(value, float) and value.is_integer():
        return int(value)
    return value
