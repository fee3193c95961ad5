"""Sections and their meetings from a draft and the needs of its sections."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import product
from typing import Final, Protocol

from loopwright.allotment.model import At, Meeting, Place, SectionDemand
from loopwright.garment.draft import Draft, Edge, Join, Piece, Section

__all__ = ["VISIBILITY", "NeededSection", "part_of", "sections_of"]

VISIBILITY: Final = {
    "hem": 0.35,
    "edge": 0.35,
    "cuff": 0.4,
    "front band": 0.45,
    "armband": 0.5,
    "neckband": 0.55,
    "brim": 0.6,
    "sleeve": 0.7,
    "back": 0.85,
    "crown": 0.9,
}
"""How much a part shows; what is not named shows fully. That hems, cuffs, bands and then the sleeves hide another
colour better than the body is common practice, no source; the figures are our judgement and only rank."""

_ENDS: Final = ("hem", "cuff", "brim", "edge")
_BANDS: Final = frozenset({"front band", "armband", "neckband"})


class NeededSection(Protocol):
    """What is wanted of a section's need: keys of piece and section, and metres for all such pieces together."""

    @property
    def piece(self) -> str:
        """Give the key of the piece."""

    @property
    def section(self) -> str:
        """Give the key of the section."""

    @property
    def name(self) -> str:
        """Give piece and section in words."""

    @property
    def length_m(self) -> float:
        """Give the mean."""

    @property
    def own_sd_m(self) -> float:
        """Give its own doubt."""

    @property
    def shared_sd_m(self) -> float:
        """Give the doubt that it shares with the others."""


def part_of(piece: str, section: str) -> str:
    """Give the part of the garment that a section is, by the keys of its piece and its own."""
    if "band" in piece:
        return piece if piece in _BANDS else "front band"
    for end in _ENDS:
        if end in section:
            return end
    if "sleeve" in piece:
        return "sleeve"
    for part in ("yoke", "crown", "front", "back"):
        if part in piece or part in section:
            return part
    return "body"


def sections_of(
    garment: str, role: str, needs: Iterable[NeededSection], draft: Draft | None, *, strands: int = 1
) -> tuple[tuple[SectionDemand, ...], tuple[Meeting, ...]]:
    """Give the sections that one role's yarn knits, each piece that is made twice as two, and where they meet.

    Own doubts of two equal pieces are taken as independent, so that they add up to that of both. A seam that the draft
    names once for a piece made twice is there on both. A need without a section in the draft stands alone.

    :param needs: of this role; metres of one strand.
    :param draft: None where there is none.
    :param strands: how many strands of this yarn are held together.
    """
    pieces = {} if draft is None else {(piece.key, one.key): (piece, one) for piece, one in draft.sections()}
    demands: list[SectionDemand] = []
    copies: dict[tuple[str, str], list[str]] = {}
    for need in needs:
        if need.length_m <= 0:
            continue
        known = pieces.get((need.piece, need.section))
        made = known[0].made if known else 1
        numbers = [""] if made == 1 else [f" {number}" for number in range(1, made + 1)]
        keys = [f"{garment}/{role}/{need.piece}{number}/{need.section}" for number in numbers]
        copies[need.piece, need.section] = keys
        part = part_of(need.piece, need.section) if known else ""
        demands += [
            SectionDemand(
                key=key,
                garment=garment,
                role=role,
                length_m=strands * need.length_m / made,
                own_sd_m=strands * need.own_sd_m / math.sqrt(made),
                shared_sd_m=strands * need.shared_sd_m / made,
                visibility=VISIBILITY.get(part, 1.0),
                within=_within(part, known[1]) if known else "plain field",
                part=part,
                name=f"{need.name}{number}",
            )
            for number, key in zip(numbers, keys, strict=True)
        ]
    meetings = () if draft is None else tuple(dict.fromkeys(_meetings(draft, copies)))
    return tuple(demands), meetings


def _within(part: str, section: Section) -> Place:
    """Give what a change of lot in the middle of a section lies in."""
    if part in _BANDS:
        return "band"
    if len(section.stitches_by_role()) > 1 or section.fabric == "stranded colourwork":
        return "stripe"
    if part in {"hem", "cuff"}:
        return "hem" if part == "hem" else "cuff"
    return "rib" if "rib" in section.fabric else "plain field"


def _meetings(draft: Draft, copies: dict[tuple[str, str], list[str]]) -> Iterator[Meeting]:
    for piece, section in draft.sections():
        own = copies.get((piece.key, section.key), [])
        if section.after is not None:
            place = _carried_on(draft, piece.section(section.after), piece, section, piece)
            for below, above in zip(copies.get((piece.key, section.after), []), own, strict=False):
                yield Meeting(below, above, place, "end", "begin")
        yield from _pairs(piece, section, copies)
    for join in draft.joins:
        one, other = (copies.get((edge.piece, edge.section), []) for edge in (join.one, join.other))
        if one is other:
            continue
        place = _joined(draft, join)
        for near, far in _met(join, one, other):
            yield Meeting(near, far, place, _at(join.one), _at(join.other))


def _pairs(piece: Piece, section: Section, copies: dict[tuple[str, str], list[str]]) -> Iterator[Meeting]:
    """Give the meeting of a piece with its like: the second of two, or the right one of a left one."""
    own = copies.get((piece.key, section.key), [])
    if piece.key.startswith("left "):
        own = [*own, *copies.get((piece.key.replace("left ", "right ", 1), section.key), [])]
    if len(own) == 2:
        yield Meeting(own[0], own[1], "pair")


def _at(edge: Edge) -> At:
    if edge.along_rows:
        return "side"
    return "begin" if edge.name == "begin" else "end"


def _met(join: Join, one: Sequence[str], other: Sequence[str]) -> list[tuple[str, str]]:
    """Give which of equal pieces meet: first with first, a left edge with the first, a right one with the second."""
    if len(one) == len(other) == 2:
        return list(zip(one, other, strict=True))
    if len(one) == 2:
        return [(near, far) for near in _of_side(one, join.other) for far in other]
    if len(other) == 2:
        return [(near, far) for near in one for far in _of_side(other, join.one)]
    return list(product(one, other))


def _of_side(copies: Sequence[str], edge: Edge) -> Sequence[str]:
    names = f"{edge.piece} {edge.section}".split()
    if "left" in names:
        return copies[:1]
    return copies[1:] if "right" in names else copies


def _joined(draft: Draft, join: Join) -> Place:
    parts = {part_of(edge.piece, edge.section) for edge in (join.one, join.other)}
    if parts & _BANDS:
        return "band"
    if join.kind != "carried on":
        return "seam"
    pieces = draft.piece(join.one.piece), draft.piece(join.other.piece)
    sections = pieces[0].section(join.one.section), pieces[1].section(join.other.section)
    return _carried_on(draft, sections[0], pieces[0], sections[1], pieces[1])


def _carried_on(draft: Draft, below: Section, lower: Piece, above: Section, upper: Piece) -> Place:
    """Give the place where one section carries on another: where an edge begins, else a plain field."""
    parts = part_of(lower.key, below.key), part_of(upper.key, above.key)
    if "hem" in parts:
        return "hem"
    if "cuff" in parts:
        return "cuff"
    if len(below.roles) > 1 or len(above.roles) > 1:
        return "stripe"
    if ("rib" in below.fabric) != ("rib" in above.fabric):
        return "rib"
    if draft.construction == "round yoke" and ("yoke" in parts) and parts[0] != parts[1]:
        return "yoke edge"
    return "plain field"
