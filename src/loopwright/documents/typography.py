"""Small matters of setting type: what belongs together stays on one line."""

from __future__ import annotations

import re

__all__ = ["tied"]

_NO_BREAK = "\N{NO-BREAK SPACE}"
_UNIT = re.compile(r"(?<=\d) (?=(?:cm|mm|m|g|kg|h|min|%|in|yd|oz|lb|sts|rows|tex|balls?|×)(?:\W|$))")
_DAY = re.compile(
    r"(?<=\d) (?=(?:January|February|March|April|May|June|July|August|September|October|November|December)\b)"
)


def tied(text: str) -> str:
    """Give the text with no line break between a number and its unit, a day and its month, a mean and its doubt."""
    joined = _DAY.sub(_NO_BREAK, _UNIT.sub(_NO_BREAK, text))
    return joined.replace(" ± ", f"{_NO_BREAK}±{_NO_BREAK}")
