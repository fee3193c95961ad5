"""Tables of yarn in a few lines, beside the small season. Everything in it is invented."""

from __future__ import annotations

from collections.abc import Container

from loopwright.files.cupboard_table import TakenIn, read_csv, take_in, understand
from loopwright.season import Season
from loopwright.store.keys import free_key, key_from_name
from tests.season.small import season

__all__ = ["make_key", "taken"]


def make_key(name: str, there: Container[str]) -> str:
    """A key as the pages make it."""
    return free_key(key_from_name(name), there)


def taken(text: str, into: Season | None = None) -> TakenIn:
    """What taking in a table of comma-separated values would do."""
    grid = read_csv(text.encode(), "mine.csv")
    columns = understand(grid)
    assert columns.is_clear, columns
    return take_in(grid, columns, into or season(), make_key)
