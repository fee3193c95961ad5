"""Small matters of setting type: what belongs together stays on one line."""

from __future__ import annotations

import re

__all__ = ["tied"]

_NO_BREAK = "\N{NO-BREAK SPACE}"
_FIGURE = r"[\d¼-¾⅐-⅞]"
_UNIT = re.compile(
    rf"(?<={_FIGURE}) (?=(?:cm|mm|m|g|kg|h|min|%|in|yd|oz|lb|sts|rows|tex|balls?|×|°C|L\*|ΔE00|MB)(?:\W|$))"
)
_MIXED = re.compile(r"(?<=\d) (?=\d+/\d)")
_MONEY = re.compile(r"(?<=\b[A-Z]{3}) (?=[−\d])")
_MONTH = r"(?:January|February|March|April|May|June|July|August|September|October|November|December)"
_DAY = re.compile(rf"(?<=\d) (?={_MONTH}\b)")
_DAY_LAST = re.compile(rf"\b({_MONTH}) (?=\d)")


def tied(text: str) -> str:
    """Give the text with no line break between a number and its unit, a day and its month, a mean and its doubt."""
    joined = text
    for pair in (_UNIT, _MIXED, _MONEY, _DAY):
        joined = pair.sub(_NO_BREAK, joined)
    joined = _DAY_LAST.sub(rf"\1{_NO_BREAK}", joined)
    return joined.replace(" ± ", f"{_NO_BREAK}±{_NO_BREAK}")
