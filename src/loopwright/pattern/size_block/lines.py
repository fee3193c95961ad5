"""Puts the lines of a pasted block together into rows, and parts a row into labels and what stands behind them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

from loopwright.pattern.size_block.figures import JOINERS
from loopwright.pattern.size_block.tokens import DASHES, Place, Token, lex_line, lines_of
from loopwright.pattern.size_block.words import BALLS, Label, label_of, unit_symbol

__all__ = ["Part", "Row", "parts_of", "rows_of"]

_ORNAMENT: Final = re.compile(rf"[\s|:+=_*~•·{DASHES}]*")
_BULLET: Final = re.compile(rf"\s*(?:[•·▪◦‣\u2043●○*|>]|[{DASHES}](?=\s*[^\W\d_])|\(?\d{{1,2}}[.)](?=\s+[^\W\d_]))*\s*")
_STITCHES: Final = {"st", "sts", "stitch", "stitches"}
_LABEL_UNITS: Final = {"cm", "mm", "in", "m", "yd", "g", "oz"}
"""Units that a label may hold; a foot in one is what a sock is for."""
_LONGEST_LABEL: Final = 12
_MOST_LINES: Final = 40
"""Lines of one row: more are no row, and looking back over them would take long."""


@dataclass(slots=True)
class Row:
    """One row of the block, which may go over several lines.

    :ivar chunks: the text of its lines, each with the place at which it begins.
    """

    tokens: list[Token]
    chunks: list[tuple[Place, str]]


@dataclass(slots=True)
class Part:
    """A label and what stands behind it, up to the next label.

    :ivar label: None where the words are not known; there may be none.
    :ivar units: units that stand in the label.
    """

    words: list[Token] = field(default_factory=list)
    label: Label | None = None
    units: list[str] = field(default_factory=list)
    body: list[Token] = field(default_factory=list)

    @property
    def tokens(self) -> list[Token]:
        """All its tokens."""
        return self.words + self.body


def rows_of(text: str) -> list[Row]:
    """Put lines together into rows: a line that begins with figures goes on with the row above it."""
    rows: list[Row] = []
    fresh = True
    for number, line in enumerate(lines_of(text), 1):
        if _ORNAMENT.fullmatch(line):
            fresh = fresh or not line.strip()
            continue
        bullet = _BULLET.match(line)
        start = bullet.end() if bullet else 0
        tokens = lex_line(line, number, start)
        if not tokens:
            continue
        chunk = (Place(number, start + 1), line[start:])
        if rows and not fresh and _goes_on(rows[-1], tokens):
            rows[-1].tokens += [Token("break", "", tokens[0].place), *tokens]
            rows[-1].chunks.append(chunk)
        else:
            rows.append(Row([*tokens], [chunk]))
        fresh = False
    return rows


def _goes_on(row: Row, tokens: Sequence[Token]) -> bool:
    if len(row.chunks) >= _MOST_LINES:
        return False
    first = tokens[0]
    names = {token.name for token in tokens}
    if first.kind == "word" and _is_unit(first) and len(tokens) > 1 and tokens[1].kind == "number":
        return True
    if first.kind == "word":
        names_go_on = _begins_with_sizes(row) and _is_open(row)
        return names_go_on and label_of(_names(_leading_words(tokens))) is None
    if first.text in {"½", "1/2"} and len(tokens) > 1 and tokens[1].kind == "word":
        return False
    if names & _STITCHES or names & {"needle", "needles"}:
        return False
    if names & BALLS:
        return any(token.kind == "word" and _is_yarn(token) for token in row.tokens)
    return True


def _is_unit(token: Token) -> bool:
    return token.kind == "word" and unit_symbol(token.name) is not None


def _is_yarn(token: Token) -> bool:
    label = label_of([token.name])
    return token.name in BALLS or (label is not None and label.kind in {"yarn", "ball"})


def _begins_with_sizes(row: Row) -> bool:
    words = _names(_leading_words(row.tokens))
    labels = [label_of(words[:length]) for length in range(1, len(words) + 1)]
    return any(label is not None and label.kind == "sizes" for label in labels)


def _is_open(row: Row) -> bool:
    """Say whether a row breaks off: behind a comma or its kind, or inside a bracket."""
    opened = sum((token.text in "([{") - (token.text in ")]}") for token in row.tokens if token.text)
    return opened > 0 or row.tokens[-1].text in {",", ";", "/", "|"}


def _leading_words(tokens: Sequence[Token]) -> list[Token]:
    words: list[Token] = []
    for token in tokens[:_LONGEST_LABEL]:
        if token.kind != "word":
            break
        words.append(token)
    return words


def _names(words: Sequence[Token]) -> list[str]:
    return [word.name for word in words]


# --------------------------------------------------------------------------------------------- labels and bodies
def parts_of(tokens: Sequence[Token], *, yarn: bool = False) -> Iterator[Part]:
    """Part a row at its labels: ``bust 80 (88) cm / length 56 (57) cm`` has two.

    :param yarn: the row above was one of yarn, so that a bare letter may name a colour.
    """
    at = 0
    last_ball = max((index for index, token in enumerate(tokens) if token.name in BALLS), default=-1)
    while at < len(tokens):
        part, at = _label_at(tokens, at, yarn=yarn)
        counts_balls = part.label is None and last_ball >= at
        in_yarn = yarn or counts_balls or (part.label is not None and part.label.kind in {"yarn", "ball"})
        at = _body_at(tokens, at, part, yarn=in_yarn)
        yarn = in_yarn
        yield part


def _label_at(tokens: Sequence[Token], at: int, *, yarn: bool) -> tuple[Part, int]:
    """Read a label; the place then stands at the first token of its body."""
    part = Part()
    while at < len(tokens):
        token = tokens[at]
        if token.text in {":", "="} or token.kind in {"tab", "break"} or token.text == "|":
            at += token.text in {":", "="}
            break
        if _begins_body(tokens, at, part):
            if len(part.words) > 1 and _is_unit(part.words[-1]) and tokens[at].text not in {"(", "[", "{"}:
                part.words.pop()  # a unit in front of the figures is theirs: bust cm 81 86 in 32 34
                at -= 1
            break
        part.words.append(token)
        at += 1
    part.units = [unit for word in part.words if (unit := unit_symbol(word.name)) in _LABEL_UNITS and word.text != "in"]
    if not part.units and _ends_in_inches(part.words):
        part.units = ["in"]
    names = [_named(word) for word in part.words if word.kind in {"word", "number"} and not _only_a_unit(word, part)]
    part.label = label_of(names)
    if part.label is not None and part.label.kind == "yarn" and len(names) == 1 and len(names[0]) == 1:
        part.label = part.label if yarn and part.words[0].text.isupper() else None
    return part, at


def _named(word: Token) -> str:
    return word.name or {"½": "half", "1/2": "half"}.get(word.text, word.text)


def _only_a_unit(word: Token, part: Part) -> bool:
    symbol = unit_symbol(word.name)
    return symbol in _LABEL_UNITS and len(part.words) > 1


def _ends_in_inches(words: Sequence[Token]) -> bool:
    """Say whether ``in`` stands as a unit: in brackets, or as ``in in``."""
    names = [word.name for word in words]
    return any(names[at : at + 3] in (["(", "in", ")"], ["[", "in", "]"]) for at in range(len(names)))


def _begins_body(tokens: Sequence[Token], at: int, part: Part) -> bool:
    token = tokens[at]
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if token.kind == "number":
        return not _belongs_to_label(token, after, part)
    if token.kind == "dash":
        within = part.words and after is not None and after.kind == "word" and unit_symbol(after.name) is None
        return not within
    if token.text in {"(", "[", "{"} and token.text:
        return after is None or after.kind in {"number", "dash"}
    return False


def _belongs_to_label(token: Token, after: Token | None, part: Part) -> bool:
    """Say whether a number is part of the label: ½ bust, contrast 1."""
    if token.text in {"½", "1/2"} and not part.words:
        return after is not None and after.kind == "word" and unit_symbol(after.name) is None
    if not part.words or not token.text.isdecimal() or not 1 <= int(token.text[:3]) <= 12:
        return False
    words = [_named(word) for word in part.words if word.kind == "word"]
    label = label_of([*words, token.text])
    if label is None or label.kind != "yarn" or len(token.text) > 2:
        return False
    return after is not None and (after.text in {":", "="} or (after.kind == "number" and after.spaced))


def _body_at(tokens: Sequence[Token], at: int, part: Part, *, yarn: bool) -> int:
    """Collect a label's body; the place then stands at the next label, which may follow a heading at once."""
    figures = part.label is not None and part.label.kind == "heading"
    while at < len(tokens):
        token = tokens[at]
        figures = figures or token.kind == "number"
        is_free = token.kind == "word" and token.name not in JOINERS and unit_symbol(token.name) is None
        if is_free and (figures or yarn) and _next_label(tokens, at, yarn=yarn):
            return at
        part.body.append(token)
        at += 1
    return at


def _next_label(tokens: Sequence[Token], at: int, *, yarn: bool) -> bool:
    """Say whether a new part opens here: with a known label, or with words that figures follow."""
    words = _leading_words(tokens[at : at + _LONGEST_LABEL])
    behind = tokens[at + len(words)] if at + len(words) < len(tokens) else None
    if behind is None or behind.kind not in {"number", "dash", "mark", "tab", "break"}:
        return False
    for length in range(len(words), 0, -1):
        names = _names(words[:length])
        label = label_of(names)
        if label is None or label.kind == "heading":
            continue
        letter = len(names[0]) == 1 and length == 1
        if not letter or (yarn and words[0].text.isupper()):
            return length == len(words) or label.kind == "yarn"
    names = _names(words)
    if yarn or behind.kind == "dash" or behind.text in {")", "]", "}", ",", ";", "/", "%"}:
        return False
    return not {"all", "sizes"} & set(names)
