"""Faults of a season file: all at once, each with its line, field, what was found and what is wanted."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, Self

from loopwright.files.places import Path, Places
from loopwright.units import BadInput, LoopwrightError

__all__ = ["FileFault", "SeasonFileFaults", "path_text", "repeat_faults", "shown", "too_deep"]

_LONGEST_SHOWN = 80


class FileFault(BadInput):
    """One fault at one place of a file.

    :ivar file: name of the file as it was given; empty for a season that comes from no file.
    :ivar line: counted from 1; 0 where there is no file.
    :ivar column: counted from 1, where the text itself cannot be read.
    :ivar path: the field in the file's words, such as ``garments.cardigan.yarns.main.yarn``; may be empty.
    :ivar found: in words that follow "found"; what was quoted from the file is in quotes already.
    """

    file: str
    line: int
    column: int | None
    path: str

    @classmethod
    def make(
        cls,
        found: str,
        wanted: str,
        *,
        file: str = "",
        line: int = 0,
        column: int | None = None,
        path: str = "",
        hint: str | None = None,
    ) -> Self:
        """Make a fault; its ``place`` is put together as ``winter.toml:12: yarns.rust.length``."""
        spot = ":".join(str(part) for part in (file, line, column) if part)
        fault = cls(found, wanted, place=": ".join(part for part in (spot, path) if part) or None, hint=hint)
        fault.file, fault.line, fault.column, fault.path = file, line, column, path
        return fault

    def __str__(self) -> str:
        """One line: place, found, wanted, hint."""
        before = f"{self.place}: " if self.place else ""
        after = f" ({self.hint})" if self.hint else ""
        return f"{before}found {self.found}; wanted {self.wanted}{after}"


class SeasonFileFaults(LoopwrightError):
    """A season file that cannot be read, with every fault that was found, in the order of the lines.

    :ivar faults: one or more.
    """

    def __init__(self, faults: Iterable[FileFault]) -> None:
        self.faults = sorted(faults, key=lambda fault: (fault.line, fault.column or 0))
        super().__init__(self.faults)

    def __str__(self) -> str:
        """One line for each fault."""
        return "\n".join(str(fault) for fault in self.faults)


def path_text(path: Path) -> str:
    """Write a path in the file's words; entries of a list are counted as people count: ``days_off (2nd).from``."""
    text = ""
    for part in path:
        if isinstance(part, int):
            text += f" ({_ordinal(part + 1)})"
        else:
            text += f".{part}" if text else part
    return text


def _ordinal(number: int) -> str:
    teens = 11 <= number % 100 <= 13
    return f"{number}{'th' if teens else {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th')}"


def shown(value: Any) -> str:
    """Write a value as the file has it, for use after "found": text in quotes, on one line, not too long."""
    if isinstance(value, str):
        line = " ".join(value.split())
        if len(line) > _LONGEST_SHOWN:
            line = f"{line[:_LONGEST_SHOWN]}…"
        return f'"{line}"'
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list):
        return "an empty list" if not value else "a list"
    return "nothing" if value is None else str(value)


def repeat_faults(places: Places, file: str) -> list[FileFault]:
    """Give a fault for each key or table that a file gives twice."""
    return [
        FileFault.make(
            f"'{repeat.path[-1]}' a second time",
            f"it once; the first is on line {repeat.first_line}",
            file=file,
            line=repeat.line,
            path=path_text(repeat.path),
        )
        for repeat in places.repeats
    ]


def too_deep(file: str) -> FileFault:
    """Give the fault of a text whose lists or tables lie in one another beyond what can be followed."""
    return FileFault.make("lists within lists, too deep to follow", "a season file", file=file, line=1)
