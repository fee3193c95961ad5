"""Reads the row of size names: ``XS (S, M, L) [XL, 2X]``, ``0-6 months (6-12 months)``, ``XS/S/M``."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from loopwright.pattern.size_block.lines import Row
from loopwright.pattern.size_block.tokens import Place, Token
from loopwright.pattern.size_block.words import label_of

__all__ = ["SizeName", "is_name", "names_in", "sizes_label"]

_LETTER_SIZE: Final = (
    r"(?:\d{0,2}X{0,5}[SML]|\d{0,2}X{1,5}|small|medium|large|x-?small|x-?large|extra\s(?:small|large))"
)
_NAME_LIKE: Final = re.compile(rf"{_LETTER_SIZE}|\d{{1,3}}(?:[-–/]\d{{1,3}})?", re.IGNORECASE)
_LETTERS_ONLY: Final = re.compile(_LETTER_SIZE, re.IGNORECASE)
_BRACKETS: Final = "()[]{}<>"
_UNIT_WORDS: Final = {
    *("years", "year", "yrs", "yr", "months", "month", "mths", "mos", "cm", "in", "inches", "uk", "us", "eu"),
}
_WHO: Final = re.compile(
    r"(?:wom[ae]n|ladies|lady|m[ae]n|child|children|kid|adult|unisex|bab(?:y|ies))(?:['’]?s['’]?)?\s+", re.IGNORECASE
)
_MOST_WORDS: Final = 3
_LONGEST_NAME: Final = 24


@dataclass(frozen=True, slots=True)
class SizeName:
    """One name and where it stands."""

    text: str
    place: Place


def sizes_label(row: Row) -> int:
    """Give how many words of a row say that size names follow; 0 where it is no such row."""
    words: list[str] = []
    found = 0
    for token in row.tokens[:5]:
        if token.kind != "word":
            break
        words.append(token.name)
        label = label_of(words)
        found = len(words) if label is not None and label.kind == "sizes" else found
    if found:
        return found
    return -1 if _is_bare_heading(row) else 0


def is_name(text: str) -> bool:
    """Say whether a text can name a size: letters and figures, with few other signs."""
    return re.fullmatch(r"\w[\w .+&/'’½–-]*", text) is not None


def _is_bare_heading(row: Row) -> bool:
    """Say whether a row holds nothing but size names, as over a table."""
    pieces = re.split(r"[\s|,;()\[\]]+", row.chunks[0][1].strip(" \t|"))
    named = [piece for piece in pieces if piece]
    letters = any(_LETTERS_ONLY.fullmatch(piece) for piece in named)
    return len(row.chunks) == 1 and len(named) > 1 and letters and all(map(_NAME_LIKE.fullmatch, named))


def names_in(row: Row, label_words: int, end: Token | None) -> tuple[list[SizeName], list[SizeName]]:
    """Give the size names of a row, and pieces that are no names.

    :param label_words: as :func:`sizes_label` gives it.
    :param end: where another label begins, if one does.
    """
    first = row.tokens[label_words] if 0 < label_words < len(row.tokens) else None
    texts = [_cut(place, text, first if label_words > 0 else None, end, row) for place, text in row.chunks]
    whole = "\n".join(text for _, text in texts)
    parting = _parting(whole)
    pieces = [piece for place, text in texts for piece in _pieces(place, text, parting)]
    return _sorted_out(pieces)


def _cut(place: Place, text: str, first: Token | None, end: Token | None, row: Row) -> tuple[Place, str]:
    """Give what of one line holds names."""
    start, stop = 0, len(text)
    if first is not None and place == row.chunks[0][0]:
        same_line = first.place.line == place.line
        start = first.place.column - place.column if same_line else len(text)
        while start < len(text) and text[start] in ":=-–—| \t":
            start += 1
    if end is not None and end.place.line <= place.line:
        stop = end.place.column - place.column if end.place.line == place.line else 0
    return Place(place.line, place.column + start), text[start : max(start, stop)]


def _parting(whole: str) -> str:
    """Give the signs that part the names, as a set for a regular expression."""
    for signs in (r",;|\t" + re.escape(_BRACKETS), "/"):
        if re.search(f"[{signs}]", whole):
            if signs == "/" and not all(_NAME_LIKE.fullmatch(piece.strip()) for piece in whole.split("/")):
                break
            return f"{signs}\n"
    words = whole.split()
    named = [word for word in words if word.lower() not in _UNIT_WORDS]
    return r"\s" if len(named) > 1 and all(map(_NAME_LIKE.fullmatch, named)) else "\n"


def _pieces(place: Place, text: str, parting: str) -> list[SizeName]:
    pieces = []
    for found in re.finditer(f"[^{parting}]+", text):
        inside = found.group()
        name = inside.strip().removesuffix(".").strip()
        if not name or set(name) <= set("-–—/:"):
            continue
        start = found.start() + len(inside) - len(inside.lstrip())
        several = name.split()
        if len(several) > 1 and all(map(_LETTERS_ONLY.fullmatch, several)):
            pieces += [
                SizeName(one.group(), Place(place.line, place.column + start + one.start()))
                for one in re.finditer(r"\S+", name)
            ]
        else:
            pieces.append(SizeName(name, Place(place.line, place.column + start)))
    return pieces


def _sorted_out(pieces: Sequence[SizeName]) -> tuple[list[SizeName], list[SizeName]]:
    """Part names from words that are none: a unit at the end, who wears it, a sentence."""
    names: list[SizeName] = []
    left: list[SizeName] = []
    for at, piece in enumerate(pieces):
        text, place = piece.text, piece.place
        who = _WHO.match(text)
        if at == 0 and who and text[who.end() :]:
            left.append(SizeName(who.group().strip(), place))
            text, place = text[who.end() :], Place(place.line, place.column + who.end())
        is_unit = text.lower().rstrip(".") in _UNIT_WORDS and names
        if is_unit or len(text.split()) > _MOST_WORDS or len(text) > _LONGEST_NAME:
            left.append(piece)
        else:
            names.append(SizeName(" ".join(text.split()), place))
    return names, left
