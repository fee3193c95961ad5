"""Cuts a pasted size block into lines and these into tokens, each with its line and column."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

__all__ = ["DASHES", "Place", "Token", "lex_line", "lines_of", "span_of"]

TokenKind = Literal["number", "word", "mark", "dash", "comma", "tab", "break"]

DASHES: Final = "-–—−\u2010\u2011"
_VULGAR: Final = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_SLASH: Final = "[/⁄∕]"
_BLANK: Final = "[ \u00a0\u2009\u202f]"
_OVER: Final = (
    rf"(?:1{_SLASH}2|[12]{_SLASH}3|[1-3]{_SLASH}4|[1-4]{_SLASH}5|[1-5]{_SLASH}6|[1-7]{_SLASH}8"
    rf"|[1-9]{_SLASH}10|(?:1[0-5]|[1-9]){_SLASH}16)(?!\.?\d|{_BLANK}*{_SLASH}{_BLANK}*\d)"
)
"""A fraction as tapes have them; in `34/37/40` and in `86/94` the stroke stands between sizes."""
_LETTER: Final = rf"[^\W\d_{_VULGAR}]"
_TOKEN: Final = re.compile(
    rf"(?P<number>(?<![\d/⁄∕.])\d{{1,6}}(?:{_BLANK}{{1,2}}|[-\u2010\u2011]){_OVER}|\d{{1,6}}{_BLANK}?[{_VULGAR}]|[{_VULGAR}]"
    rf"|(?<![\d/⁄∕.]){_OVER}|\d+\.\d+|\.\d+|\d+)"
    rf"|(?P<word>(?:MC|CC|C)\d{{1,2}}(?!\d)|{_LETTER}+(?:['’]{_LETTER}+)*\.?)"
    rf"|(?P<dash>[{DASHES}]+)|(?P<comma>,)|(?P<tab>\t)|(?P<mark>''|′′|\S)"
)


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """Where something stands: line and column, both counted from 1."""

    line: int
    column: int

    def __str__(self) -> str:
        return f"line {self.line}, column {self.column}"


@dataclass(frozen=True, slots=True)
class Token:
    """One piece of a line.

    :ivar kind: a number (fractions included), a word, a dash, a comma, a tab, any other mark, or a line's end.
    :ivar spaced: whether a blank stands before it.
    """

    kind: TokenKind
    text: str
    place: Place
    spaced: bool = False

    @property
    def name(self) -> str:
        """The text in lower case without a dot at its end, for comparing."""
        return self.text.removesuffix(".").lower() if self.kind in ("word", "mark") else ""

    @property
    def end(self) -> int:
        """The column behind it."""
        return self.place.column + len(self.text)


def lines_of(text: str) -> list[str]:
    """Give the lines of a text as an editor counts them."""
    return re.split(r"\r\n|\r|\n", text)


def lex_line(line: str, number: int, start: int = 0) -> tuple[Token, ...]:
    """Give the tokens of one line in order; blanks are dropped, tabs are kept.

    :param number: the line's own, from 1.
    :param start: characters to pass over at the beginning.
    """
    tokens = []
    end = start
    for found in _TOKEN.finditer(line, start):
        kind: TokenKind = found.lastgroup  # type: ignore[assignment]
        tokens.append(Token(kind, found.group(), Place(number, found.start() + 1), found.start() > end))
        end = found.end()
    return tuple(tokens)


def span_of(tokens: Sequence[Token]) -> int:
    """Give how many columns the tokens take on the line of the first of them."""
    first = tokens[0]
    return max(token.end for token in tokens if token.place.line == first.place.line) - first.place.column
