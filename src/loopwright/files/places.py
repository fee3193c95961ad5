"""On which line of a file something stands, by its path: ``("yarns", "rust-dk", "length")`` → 12.

A season file is read by a parser that drops lines. The scanners of :mod:`loopwright.files.toml_places` and
:mod:`loopwright.files.json_places` go over the same text once more, only when a fault has to be placed.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass, field

__all__ = ["Path", "Places", "Repeat", "Ruler"]

Path = tuple[str | int, ...]
"""Keys from the outside in; an int counts the entries of a list from 0."""


@dataclass(frozen=True, slots=True)
class Repeat:
    """One path that is given twice.

    :ivar first_line: line on which it stands first.
    :ivar line: line on which it stands again.
    """

    path: Path
    first_line: int
    line: int


@dataclass(slots=True)
class Places:
    """Lines by path, as a scanner finds them.

    :ivar lines: the line, counted from 1, on which each key, table or list entry begins.
    :ivar repeats: what is given twice, in the order of the second lines.
    """

    lines: dict[Path, int] = field(default_factory=dict)
    repeats: list[Repeat] = field(default_factory=list)

    def open(self, path: Path, line: int) -> None:
        """Note a path, and what stands above it, at ``line`` unless it was met before."""
        for length in range(1, len(path) + 1):
            self.lines.setdefault(path[:length], line)

    def line_of(self, path: Iterable[str | int]) -> int:
        """Give the line of a path; of something missing, the line of the nearest table above it, or 1."""
        here = tuple(path)
        while here and here not in self.lines:
            here = here[:-1]
        return self.lines.get(here, 1)


class Ruler:
    """Turns offsets in a text into lines; only a line feed ends a line."""

    def __init__(self, text: str) -> None:
        self._ends = [match.start() for match in re.finditer("\n", text)]

    def line(self, offset: int) -> int:
        """Give the line of an offset, counted from 1."""
        return bisect_right(self._ends, offset - 1) + 1
