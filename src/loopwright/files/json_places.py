"""Finds on which line each key of a JSON text stands.

The scanner trusts that a parser has accepted the text; it only keeps what the parser drops. Source: RFC 8259.
"""

from __future__ import annotations

import json
import re

from loopwright.files.places import Path, Places, Repeat, Ruler

__all__ = ["json_places"]

_BLANK = re.compile(r"[ \t\r\n]*")


def json_places(text: str) -> Places:
    """Give the line of every key and list entry of a valid JSON text, and the keys that are given twice.

    :raises json.JSONDecodeError: the text is no JSON.
    """
    scanner = _Scanner(text)
    scanner.value(())
    return scanner.places


class _Scanner:
    """Goes once through a JSON text; texts, numbers and words are stepped over by the standard decoder."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.ruler = Ruler(text)
        self.places = Places()
        self.decoder = json.JSONDecoder()

    def value(self, path: Path) -> None:
        self.blank()
        if self.take("{"):
            self.members(path)
        elif self.take("["):
            self.entries(path)
        else:
            self.scalar()

    def members(self, path: Path) -> None:
        given: set[str] = set()
        self.blank()
        while not self.take("}"):
            line = self.ruler.line(self.at)
            key = str(self.scalar())
            here = (*path, key)
            if key in given:
                self.places.repeats.append(Repeat(here, self.places.lines[here], line))
            given.add(key)
            self.places.open(here, line)
            self.blank()
            self.take(":")
            self.value(here)
            self.blank()
            self.take(",")
            self.blank()

    def entries(self, path: Path) -> None:
        number = 0
        self.blank()
        while not self.take("]"):
            self.places.open((*path, number), self.ruler.line(self.at))
            self.value((*path, number))
            self.blank()
            self.take(",")
            self.blank()
            number += 1

    def scalar(self) -> object:
        value: object
        value, self.at = self.decoder.raw_decode(self.text, self.at)
        return value

    def blank(self) -> None:
        match = _BLANK.match(self.text, self.at)
        self.at = match.end() if match else self.at

    def take(self, mark: str) -> bool:
        """Step over a mark if it stands here; says whether it did."""
        stands = self.text.startswith(mark, self.at)
        self.at += len(mark) if stands else 0
        return stands
