"""Cuts what people write into numbers, words and marks, for the readers of this room."""

import re
from dataclasses import dataclass
from typing import Literal

from loopwright.units.fraction import NUMBER_PATTERN

__all__ = ["Cursor", "Token", "lex"]

TokenKind = Literal["number", "word", "mark", "end"]

_TOKEN = re.compile(rf"(?P<number>{NUMBER_PATTERN})|(?P<word>[^\W\d_¼½¾↉⅐-⅟]+\.?)|(?P<mark>''|′′|\S)")


@dataclass(frozen=True, slots=True)
class Token:
    """One piece of a text.

    Args:
        kind: a number, a word (letters, perhaps a dot at the end), a mark (any other sign), or the end of
            the text.
        text: the piece as written.
        start: its place in the text, counted from 0.
    """

    kind: TokenKind
    text: str
    start: int

    @property
    def name(self) -> str:
        """The text in lower case without a dot at its end, for comparing."""
        return self.text.removesuffix(".").lower()


def lex(text: str) -> tuple[Token, ...]:
    """All pieces of a text in order, the last being its end; only blank space is dropped.

    >>> [token.text for token in lex('3 1/2 oz, 4"')]
    ['3 1/2', 'oz', ',', '4', '"', '']
    """
    pieces = [
        Token("number" if m["number"] else "word" if m["word"] else "mark", m.group(), m.start())
        for m in _TOKEN.finditer(text)
    ]
    return (*pieces, Token("end", "", len(text)))


class Cursor:
    """A place in a row of tokens, moving forward."""

    def __init__(self, tokens: tuple[Token, ...]) -> None:
        self._tokens = tokens
        self._index = 0

    def peek(self, ahead: int = 0) -> Token:
        """The token here, or `ahead` of here; beyond the end there is the end."""
        return self._tokens[min(self._index + ahead, len(self._tokens) - 1)]

    def take(self) -> Token:
        """The token here, stepping over it."""
        token = self.peek()
        self._index += 1
        return token

    def skip(self, *names: str) -> bool:
        """Step over the token here if it is one of these words or marks; says whether it did."""
        here = self.peek()
        if here.kind in ("word", "mark") and here.name in names:
            self._index += 1
            return True
        return False

    @property
    def at_end(self) -> bool:
        """Whether nothing is left."""
        return self.peek().kind == "end"
