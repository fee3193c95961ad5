"""Which part of a garment a section is, and how many rows of that part lie below it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from loopwright.garment.draft import Draft, Piece, Section
from loopwright.garment.wanted.colours import ColourPlace, ColourPlan

__all__ = ["place_of", "rows_before"]

_HEMS: Final = ("hem", "brim", "edge")
_FABRIC: Final = frozenset({"body", "sleeves", "yoke"})
_ROUND_OPENINGS: Final = frozenset({"neckband", "armband"})


def place_of(piece: Piece, section: Section) -> ColourPlace:
    """Give the part of the garment that a section is; what has no name of its own is body."""
    if piece.key in _ROUND_OPENINGS:
        return "neckband"
    if piece.key.endswith("band"):
        return "band"
    if section.key == "cuff":
        return "cuff"
    if any(name in section.key for name in _HEMS):
        return "hem"
    if piece.key == "yoke":
        return "yoke"
    return "sleeves" if "sleeve" in piece.key else "body"


def rows_before(draft: Draft, piece: Piece, section: Section, plan: ColourPlan) -> int:
    """Give the rows of the same part that the section stands on, in the order of knitting.

    Where body, sleeves and yoke follow one general word, rows are counted on from the yoke to what hangs from it, or
    from the body to the yoke that it carries.
    """
    place = place_of(piece, section)
    if section.after is not None:
        below = piece.section(section.after)
        if place_of(piece, below) != place:
            return 0
        return below.rows + rows_before(draft, piece, below, plan)
    if not _is_general(place, plan):
        return 0
    for other, last in _carries(draft, piece, section):
        if _is_general(place_of(other, last), plan):
            return last.rows + rows_before(draft, other, last, plan)
    return 0


def _is_general(place: ColourPlace, plan: ColourPlan) -> bool:
    return place in _FABRIC and getattr(plan, place) is None


def _carries(draft: Draft, piece: Piece, section: Section) -> Iterator[tuple[Piece, Section]]:
    """Give the sections of other pieces whose live stitches a section takes up, a body before sleeves."""
    found = []
    for join in draft.joins:
        if join.kind != "carried on":
            continue
        for here, there in ((join.one, join.other), (join.other, join.one)):
            if (here.piece, here.section, here.name) == (piece.key, section.key, "begin") and there.name == "end":
                found.append((draft.piece(there.piece), draft.section(there.piece, there.section)))
    yield from sorted(found, key=lambda one: place_of(*one) == "sleeves")
