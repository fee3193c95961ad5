"""What holds for every draft: counts follow from the shaping, edges that meet agree, nothing is impossible."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

import numpy as np

from loopwright.garment.draft.piece import Draft, Edge, Join, Piece
from loopwright.garment.draft.section import Kind, Section

__all__ = ["CAP_EASE_MOST", "BrokenDraft", "broken_laws", "lawful"]

CAP_EASE_MOST = 0.02
"""Most by which two edges sewn together by length may differ, as a share; what a seam takes up unseen."""


class BrokenDraft(AssertionError):
    """A draft breaks a law that every draft keeps: a fault of ours, not of the knitter."""


def _section_faults(section: Section) -> Iterator[str]:
    if section.rows == 0:
        yield "has no rows"
        return
    if int(section.stitches.min()) < 0 or (int(section.stitches[:-1].min(initial=1)) < 1):
        yield "runs out of stitches before its last row"
    changes = np.zeros(section.rows, dtype=np.int64)
    for one in section.shapings:
        if one.stitches < 1:
            yield f"{one.kind} of {one.stitches} stitches in row {one.row}"
        changes[one.row] += one.change
    if not np.array_equal(section.first + np.cumsum(changes), section.stitches):
        yield "its counts do not follow from its shaping"
    if section.resting < 0:
        yield "takes up more stitches than rest"
    if sum(run.rows for run in section.role_runs) != section.rows:
        yield "its colours do not add up to its rows"
    cells = section.cells
    if cells is not None and (
        cells.cells.shape != (section.rows, int(section.stitches.max())) or int(cells.cells.max()) >= len(cells.roles)
    ):
        yield "its coloured stitches are not those of its rows"
    if section.parts and not np.array_equal(sum(part.stitches for part in section.parts), section.stitches):
        yield "its parts do not add up to its rows"


def _growth_faults(piece: Piece) -> Iterator[str]:
    """Check that what one section leaves on the needle is what its successors and its edge take."""
    taken = Counter[str]()
    keys = [one.key for one in piece.sections]
    if len(set(keys)) < len(keys):
        yield "two sections have one key"
    for one in piece.sections:
        if (one.begins == "carried on") != (one.after is not None) and one.after is not None:
            yield f"{one.key} stands on {one.after} but is {one.begins}"
        if one.after is not None:
            taken[one.after] += one.first
    for key, stitches in taken.items():
        if stitches > piece.section(key).live:
            yield f"{stitches} stitches carry on from {key}, which leaves {piece.section(key).live}"


def _edge_room(draft: Draft, edge: Edge) -> int:
    section = draft.section(edge.piece, edge.section)
    if edge.along_rows:
        return section.rows
    if edge.name == "begin":
        return section.first + sum(
            one.stitches for one in section.shapings if one.row == 0 and one.kind is Kind.CAST_ON
        )
    return section.closed if edge.name == "closed" else section.live


def _join_faults(draft: Draft, join: Join) -> Iterator[str]:
    for edge in (join.one, join.other):
        room = _edge_room(draft, edge)
        if not 0 < edge.amount <= room:
            yield f"{edge.piece} {edge.section}: {edge.amount} of {room} at its {edge.name} are joined"
    by_count = join.kind in ("carried on", "sewn", "grafted", "three-needle cast-off")
    if by_count and join.one.amount != join.other.amount:
        yield (
            f"{join.one.amount} at {join.one.piece} {join.one.section} meet {join.other.amount} at {join.other.piece} "
            f"{join.other.section}, {join.kind}"
        )
    if not by_count and join.mismatch is None:
        yield f"{join.one.piece} {join.one.section} is {join.kind} without lengths"
    if join.kind == "set in" and join.mismatch is not None and abs(join.mismatch) > CAP_EASE_MOST:
        yield f"{join.other.piece} is {join.mismatch:+.1%} against the edge that it is set into"


def _ending_faults(draft: Draft) -> Iterator[str]:
    """Check that live stitches that carry on or are grafted are all used, by a section or by a join."""
    for piece, section in draft.sections():
        used = sum(one.first for one in piece.sections if one.after == section.key)
        for join in draft.joins:
            for edge in (join.one, join.other):
                if (edge.piece, edge.section, edge.name) == (piece.key, section.key, "end"):
                    used += edge.amount
        if section.ends == "carried on" and used + section.closed != section.live:
            yield (
                f"{piece.key} {section.key} leaves {section.live} stitches; {used} are carried on, "
                f"{section.closed} cast off"
            )


def broken_laws(draft: Draft) -> tuple[str, ...]:
    """Give every law that a draft breaks, as a sentence each; none for a sound draft."""
    faults = [f"{piece.key} {one.key} {fault}" for piece, one in draft.sections() for fault in _section_faults(one)]
    faults += [f"{piece.key}: {fault}" for piece in draft.pieces for fault in _growth_faults(piece)]
    for join in draft.joins:
        faults += _join_faults(draft, join)
    faults += _ending_faults(draft)
    faults += [
        f"{one.name} is {one.off_cm:+.2f} cm off without a reason"
        for one in draft.checks
        if not one.is_exact and not one.reason
    ]
    return tuple(faults)


def lawful(draft: Draft) -> Draft:
    """Give the draft back when it keeps every law.

    :raises BrokenDraft: it does not.
    """
    faults = broken_laws(draft)
    if faults:
        raise BrokenDraft("; ".join(faults))
    return draft
