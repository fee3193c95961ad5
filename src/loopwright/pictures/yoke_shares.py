"""A yoke with named shares, drawn where it is worn: back and front above the body, a sleeve's share above the sleeve.

The shares of a row are known by their counts alone. Each is drawn about its own middle, and above the front of a neck
the front in two halves whose outer edges slant as the back's do. A sleeve's share lies folded along the top of the arm,
as its tube lies, so half of its stitches are seen.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Counts, Draft, Landmark, Piece, Section
from loopwright.garment.draft.section import Face

__all__ = ["is_folded", "pieces_with_shares"]

_FOLDED = "folded "


def is_folded(section: Section) -> bool:
    """Say whether a section is a share that is no tube, but is drawn folded in half as one."""
    return section.key.startswith(_FOLDED)


def pieces_with_shares(draft: Draft) -> tuple[Piece, ...]:
    """Give the pieces of a draft with a yoke that has shares set onto the pieces that it is joined to.

    A body that is open in front lies wider than its yoke; there back and front of the yoke stay a piece of their own.
    """
    yoke = next((one for one in draft.pieces if any(section.parts for section in one.sections)), None)
    if yoke is None or not all(section.parts for section in yoke.sections):
        return draft.pieces
    names = [part.name for part in yoke.sections[0].parts]
    if not {"back", "front"} <= set(names):
        return draft.pieces
    joined = {edge.piece for join in draft.joins for edge in (join.one, join.other) if join.kind == "carried on"}
    pieces: list[Piece] = []
    trunk = list(_trunk(yoke))
    worn = False
    for piece in draft.pieces:
        if piece is yoke:
            continue
        if piece.key in joined and piece.key in names:
            pieces.append(_set_on(piece, list(_folded(yoke, piece.key))))
        elif piece.key in joined and all(section.in_the_round for section in piece.sections):
            pieces.insert(0, _set_on(piece, trunk))
            worn = True
        else:
            pieces.append(piece)
    if not worn:
        marks = tuple(one for one in yoke.landmarks if one.name != "underarm")
        sections = tuple(_trunk(yoke, is_open=True))
        pieces.insert(1, replace(yoke, name="yoke, front and back", sections=sections, landmarks=marks))
    return tuple(pieces)


def _share(section: Section, name: str) -> Counts:
    return next(part.stitches for part in section.parts if part.name == name)


def _drawn(
    section: Section,
    key: str,
    stitches: Counts,
    left: NDArray[np.float64],
    *,
    after: str | None,
    face: Face = "whole",
    folded: bool = False,
) -> Section:
    return replace(
        section,
        key=key,
        first=int(stitches[0]),
        stitches=stitches,
        left_edge=left,
        in_the_round=folded,
        begins="cast on" if after is None else "carried on",
        after=after,
        shapings=(),
        parts=(),
        face=face,
        closed=0,
    )


def _trunk(yoke: Piece, *, is_open: bool = False) -> Iterator[Section]:
    """Give back and front of a yoke section by section in knitting order; where it is open, two front halves.

    :param is_open: the whole way down, not at the neck alone.
    """
    whole = [one for one in yoke.sections if one.in_the_round and not is_open]
    wider = sum(int(_share(one, "front").max()) - int(_share(one, "back").max()) for one in whole)
    below: str | None = None
    front_below: str | None = None
    for section in yoke.sections:
        back, front = _share(section, "back"), _share(section, "front")
        key = f"back of the {section.key}"
        yield _drawn(section, key, back, -back / 2, after=below, face="back")
        if front.any():
            after = front_below or below
            if section not in whole:
                outer = np.maximum(back + wider, front) / 2
                right = front // 2
                left = front - right
                front_below = f"left front of the {section.key}"
                yield _drawn(section, front_below, left, -outer, after=after, face="front")
                yield _drawn(
                    section, f"right front of the {section.key}", right, outer - right, after=after, face="front"
                )
            else:
                front_below = f"front of the {section.key}"
                yield _drawn(section, front_below, front, -front / 2, after=after, face="front")
        below = key


def _folded(yoke: Piece, name: str) -> Iterator[Section]:
    """Give one sleeve's share of a yoke, as far as every row has stitches of it."""
    below: str | None = None
    for section in yoke.sections:
        share = _share(section, name)
        if share.min() > 0:
            key = f"{_FOLDED}{name} of the {section.key}"
            yield _drawn(section, key, share, -share / 4, after=below, folded=True)
            below = key


def _set_on(piece: Piece, shares: Sequence[Section]) -> Piece:
    """Give a piece with shares of a yoke before or after it, in the order of knitting."""
    if not shares:
        return piece
    if piece.direction == "bottom up":
        end = piece.sections[-1].key
        grown = [replace(one, after=end) if one.after is None else one for one in shares]
        return replace(piece, sections=(*piece.sections, *grown))
    end = next(one.key for one in reversed(shares) if one.face != "back")
    first, *rest = piece.sections
    marks = tuple(Landmark(one.name, one.section, max(one.row, 1)) for one in piece.landmarks)
    return replace(piece, sections=(*shares, replace(first, after=end), *rest), landmarks=marks)
