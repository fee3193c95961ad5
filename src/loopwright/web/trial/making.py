"""What can be tried about the making of a garment: neckline, sleeves, edges and finished measures of her own."""

from __future__ import annotations

from collections.abc import Iterator
from typing import get_args

from loopwright.garment.wanted import Neckline, SleeveLength
from loopwright.pattern import Construction, PatternFacts

__all__ = ["making_fields"]

Options = tuple[tuple[str, str], ...]

_TWO_WAYS = frozenset({Construction.RAGLAN, Construction.YOKE})
_IN_PIECES = frozenset({Construction.DROP, Construction.SET_IN, Construction.SLEEVELESS})


def _choices(empty: str, values: tuple[str, ...]) -> Options:
    return (("", empty), *((value, value) for value in values))


def making_fields(pattern: PatternFacts, *, inch: bool) -> Iterator[tuple[str, str, Options]]:
    """Give path, hint and choices of each field that bears on a pattern's construction.

    :param inch: whether hints are written in inches.
    """
    construction = pattern.construction
    some = "such as 2 in" if inch else "such as 5 cm"
    if construction.is_top:
        yield "draft.neckline", "", _choices("the usual", get_args(Neckline))
        if construction.has_sleeves:
            yield "draft.sleeves", "", _choices("as they are", get_args(SleeveLength))
        if construction in _TWO_WAYS:
            yield "draft.direction", "", _choices("the usual", ("bottom up", "top down"))
        if construction in _IN_PIECES:
            yield "draft.worked", "", _choices("the usual", ("flat", "in the round"))
    yield "draft.hem.depth", some, ()
    if construction.has_sleeves:
        yield "draft.cuff.depth", some, ()
    if construction.is_top:
        yield "draft.neckband.depth", "such as 1 in" if inch else "such as 2.5 cm", ()
    yield "draft.repeat", "such as 8n", ()
    if construction.is_top:
        yield from _measures(construction, inch=inch)


def _measures(construction: Construction, *, inch: bool) -> Iterator[tuple[str, str, Options]]:
    if construction in _IN_PIECES:
        yield "draft.bust_short_rows", "such as 1 1/2 in" if inch else "such as 4 cm", ()
    hints = {
        "waist_girth": (90, 36),
        "hip_girth": (104, 41),
        "upper_arm_girth": (34, 13),
        "armhole_depth": (21, 8),
        "neck_width": (18, 7),
        "front_neck_depth": (8, 3),
    }
    for name, (cm, inches) in hints.items():
        if name == "upper_arm_girth" and not construction.has_sleeves:
            continue
        yield f"draft.measures.{name}", f"such as {inches} in" if inch else f"such as {cm} cm", ()
