"""Fibres in one cell: ``70 % merino, 30 % silk``."""

from __future__ import annotations

import re
from collections.abc import Iterator
from difflib import get_close_matches
from typing import Final

from loopwright.files.cupboard_table.csv_grid import number_text
from loopwright.units import BadInput, read_number
from loopwright.yarn import FIBRES, FibreShare

__all__ = ["blend_text", "read_blend"]

_NUMBER: Final = r"\d+(?:[.,]\d+)?"
_PART: Final = re.compile(
    rf"\s*(?:(?P<before>{_NUMBER})\s*%?\s*(?P<after_name>[^\d%,;/+&]+)"
    rf"|(?P<before_name>[^\d%,;/+&]+?)\s*(?P<after>{_NUMBER})\s*%?)\s*"
)
_BETWEEN: Final = re.compile(r"\s*(?:[,;/+&]|\band\b)?\s*")
_SAME: Final = {
    "polyamide": "nylon",
    "flax": "linen",
    "rayon": "viscose",
    "bamboo": "bamboo viscose",
    "bamboo rayon": "bamboo viscose",
    "superwash merino": "superwash wool",
    "wool superwash": "superwash wool",
    "merino superwash": "superwash wool",
    "merino wool": "merino",
    "pure wool": "wool",
    "mercerized cotton": "mercerised cotton",
    "baby alpaca": "alpaca",
    "kid mohair": "mohair",
    "mulberry silk": "silk",
    "other fibres": "other",
    "other fibers": "other",
}
"""Words of the trade for a fibre that has its facts under another name."""
_WANTED: Final = "each fibre with its share, such as 70 % merino, 30 % silk"


def blend_text(blend: tuple[FibreShare, ...]) -> str:
    """Write a blend in one cell; :func:`read_blend` reads it back."""
    return ", ".join(f"{number_text(share.percent)} % {share.fibre}" for share in blend)


def read_blend(text: str) -> dict[str, float]:
    """Read fibres with their shares, in either order; a fibre alone is all of it.

    :returns: percent by fibre; nothing for an empty text.
    :raises BadInput: a share or a fibre cannot be read, a fibre stands twice, or the shares do not sum to 100 %.
    """
    if not text.strip():
        return {}
    if not any(letter.isdigit() for letter in text):
        return {_fibre(text, text): 100.0}
    blend: dict[str, float] = {}
    for name, number in _parts(text):
        fibre = _fibre(name, text)
        if fibre in blend:
            raise BadInput(text, f"each fibre once; {fibre} stands twice")
        blend[fibre] = float(read_number(number))
    total = sum(blend.values())
    if abs(total - 100) > 0.5:
        raise BadInput(text, f"shares that sum to 100 %; these sum to {total:g} %")
    if any(share <= 0 for share in blend.values()):
        raise BadInput(text, "shares above 0 %")
    return blend


def _parts(text: str) -> Iterator[tuple[str, str]]:
    at = 0
    while at < len(text):
        found = _PART.match(text, at)
        if found is None:
            raise BadInput(text, _WANTED)
        yield found["after_name"] or found["before_name"], found["before"] or found["after"]
        separator = _BETWEEN.match(text, found.end())
        at = separator.end() if separator else found.end()


def _fibre(name: str, text: str) -> str:
    plain = " ".join(re.sub(r"\band\b|[()]", " ", name.casefold()).split())
    fibre = _SAME.get(plain, plain)
    if fibre in FIBRES or fibre == "other":
        return fibre
    near = get_close_matches(fibre, [*FIBRES, *_SAME], n=1)
    raise BadInput(
        text,
        f"fibres out of {', '.join(FIBRES)}, or other",
        hint=f"“{plain}” is none; " + (f"did you mean {near[0]}?" if near else "write “other” for it"),
    )
