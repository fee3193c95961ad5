"""Reads the rows of tension (gauge) and needles."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Final

from loopwright.fabric import STRUCTURES, Gauge
from loopwright.fabric.gauge import PLAUSIBLE_PER_10CM
from loopwright.pattern.size_block.lines import Row
from loopwright.pattern.size_block.tokens import Token
from loopwright.units import BadInput, read_gauge, read_number

__all__ = ["GaugeFound", "fabric_in", "gauge_in", "needles_in"]

_LONGEST: Final = 32
"""Tokens of a gauge at most, so that its end is found in few steps."""
_SPELLINGS: Final = (
    *(("stockinette stitch", "stocking stitch"), ("stockinette", "stocking stitch"), ("seed stitch", "moss stitch")),
    *((" stocking st ", " stocking stitch "), (" stst ", " stocking stitch "), (" st st ", " stocking stitch ")),
    *((" garter ", " garter stitch "), (" moss ", " moss stitch "), ("stitch stitch", "stitch")),
)


@dataclass(frozen=True, slots=True)
class GaugeFound:
    """A gauge with the text behind it, which may name the fabric and the needle."""

    gauge: Gauge
    text: str
    rest: str
    rest_tokens: tuple[Token, ...]


def gauge_in(row: Row) -> GaugeFound:
    """Give the gauge that a row states.

    :raises BadInput: it states none that can be had.
    """
    start = next((at for at, token in enumerate(row.tokens) if token.kind == "number"), None)
    if start is None:
        raise BadInput(_flat(row.tokens), "stitches and rows, such as 22 sts and 30 rows = 10 cm")
    tokens = row.tokens[start:]
    for end in range(min(len(tokens), _LONGEST), 0, -1):
        try:
            count = read_gauge(_flat(tokens[:end]))
        except BadInput:
            continue
        gauge = Gauge(stitches_per_10cm=count.stitches_per_10cm, rows_per_10cm=count.rows_per_10cm)
        _check(gauge, _flat(tokens[:end]))
        return GaugeFound(gauge, _flat(tokens[:end]), _flat(tokens[end:]), tuple(tokens[end:]))
    text = _flat(tokens[:_LONGEST])
    read_gauge(text)
    raise BadInput(text, "a gauge such as 22 sts and 30 rows = 10 cm")


def _check(gauge: Gauge, text: str) -> None:
    low, high = PLAUSIBLE_PER_10CM
    for number in (gauge.stitches_per_10cm, gauge.rows_per_10cm):
        if number is not None and not low <= number <= high:
            raise BadInput(f"{text}, that is {number:.4g} to 10 cm", f"from {low:g} to {high:g} to 10 cm")


def _flat(tokens: Sequence[Token]) -> str:
    """Write tokens on one line, with a blank where one stood."""
    return "".join((" " if token.spaced or token.kind == "break" else "") + token.text for token in tokens).strip()


def fabric_in(text: str) -> str | None:
    """Give the fabric that a text names, in British or American words, or None."""
    words = re.sub(r"[^\w ]", " ", text.lower()).split()
    said = f" {' '.join(words)} "
    for spelled, british in _SPELLINGS:
        said = said.replace(spelled, british)
    named = sorted((name for name in STRUCTURES if f" {name} " in said), key=len)
    return named[-1] if named else None


def needles_in(tokens: Sequence[Token]) -> list[Fraction]:
    """Give every needle size in millimetres that stands in some tokens."""
    sizes = []
    for number, unit in pairwise(tokens):
        if number.kind == "number" and unit.name == "mm" and len(number.text) < 8:
            size = read_number(number.text)
            if Fraction(1, 2) <= size <= 40 and size not in sizes:
                sizes.append(size)
    return sizes
