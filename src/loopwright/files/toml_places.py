"""Finds on which line each key of a TOML text stands.

Understood are tables, lists of tables, dotted and quoted keys, tables in braces, lists and text over several
lines. The scanner trusts that a parser has accepted the text, or has found nothing worse in it than a repeated
key; on anything else it goes on at the next line and never fails. Source: TOML v1.0.0, toml.io/en/v1.0.0.
"""

from __future__ import annotations

import re
import tomllib

from loopwright.files.places import Path, Places, Repeat, Ruler

__all__ = ["toml_places"]

_BLANK = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_GAP = re.compile(r"[ \t]*")
_REST_OF_LINE = re.compile(r"[^\n]*")
_KEY = re.compile(r'[A-Za-z0-9_-]+|"(?:\\.|[^"\\\n])*"|\'[^\'\n]*\'')
_TEXT = re.compile(
    r'"""(?:\\.|[^\\])*?"""(?:"{0,2})'
    r"|'''.*?'''(?:'{0,2})"
    r'|"(?:\\.|[^"\\\n])*"'
    r"|'[^'\n]*'",
    re.DOTALL,
)
_BARE = re.compile(r"[^,\[\]{}#\n]*")


def toml_places(text: str) -> Places:
    """Give the line of every key, table and list entry of a TOML text, and what is given twice."""
    scanner = _Scanner(text)
    scanner.scan()
    return scanner.places


class _Scanner:
    """Goes once through a TOML text."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.ruler = Ruler(text)
        self.places = Places()
        self.table: Path = ()
        self.list_lengths: dict[Path, int] = {}
        self.given: dict[Path, int] = {}
        self.in_repeated_table = False

    def scan(self) -> None:
        self.skip(_BLANK)
        while self.at < len(self.text):
            before = self.at
            if self.text.startswith("[", self.at):
                self.header()
            else:
                self.pair(self.table)
            if self.at == before:
                self.skip(_REST_OF_LINE)
            self.skip(_BLANK)

    def skip(self, pattern: re.Pattern[str]) -> str:
        """Step over a match here, if there is one, and give its text."""
        match = pattern.match(self.text, self.at)
        if match is None:
            return ""
        self.at = match.end()
        return match.group()

    def take(self, mark: str) -> bool:
        """Step over a mark if it stands here; says whether it did."""
        stands = self.text.startswith(mark, self.at)
        self.at += len(mark) if stands else 0
        return stands

    def give(self, path: Path, line: int) -> None:
        """Note a table or a value that may be given only once."""
        if path in self.given and not self.in_repeated_table:
            self.places.repeats.append(Repeat(path, self.given[path], line))
        self.given.setdefault(path, line)
        self.places.open(path, line)

    def header(self) -> None:
        line = self.ruler.line(self.at)
        self.take("[")
        in_list = self.take("[")
        *above, last = self.key() or ("",)
        path: Path = ()
        for part in above:
            path = self.in_last_entry((*path, part))
        path = (*path, last)
        if in_list:
            self.places.open(path, line)
            self.list_lengths[path] = self.list_lengths.get(path, 0) + 1
            path = self.in_last_entry(path)
        self.in_repeated_table = False
        self.give(path, line)
        self.in_repeated_table = self.given[path] != line
        self.table = path
        self.skip(_REST_OF_LINE)

    def in_last_entry(self, path: Path) -> Path:
        """Give the path itself, or the last entry of the list of tables that it names."""
        length = self.list_lengths.get(path)
        return path if length is None else (*path, length - 1)

    def pair(self, table: Path) -> None:
        line = self.ruler.line(self.at)
        path = (*table, *self.key())
        self.skip(_GAP)
        if path == table or not self.take("="):
            self.skip(_REST_OF_LINE)
            return
        self.give(path, line)
        self.skip(_GAP)
        self.value(path)

    def key(self) -> tuple[str, ...]:
        """Read a key of one or more parts with dots between them."""
        parts = []
        while True:
            self.skip(_GAP)
            part = self.skip(_KEY)
            if part:
                parts.append(_unquoted(part))
            self.skip(_GAP)
            if not self.take("."):
                return tuple(parts)

    def value(self, path: Path) -> None:
        if self.take("["):
            self.list(path)
        elif self.take("{"):
            self.braces(path)
        elif not self.skip(_TEXT):
            self.skip(_BARE)

    def list(self, path: Path) -> None:
        number = 0
        while True:
            self.skip(_BLANK)
            if self.take("]") or self.at >= len(self.text):
                return
            before = self.at
            self.places.open((*path, number), self.ruler.line(self.at))
            self.value((*path, number))
            self.skip(_BLANK)
            if not self.take(",") and self.at == before:
                return
            number += 1

    def braces(self, path: Path) -> None:
        while True:
            self.skip(_BLANK)
            if self.take("}") or self.at >= len(self.text):
                return
            before = self.at
            self.pair(path)
            self.skip(_BLANK)
            if not self.take(",") and self.at == before:
                return


def _unquoted(part: str) -> str:
    """Give a key as it is meant; a quoted one is read by the parser itself."""
    if part[0] not in "\"'":
        return part
    try:
        key: str = tomllib.loads(f"key = {part}")["key"]
    except tomllib.TOMLDecodeError:
        return part
    return key
