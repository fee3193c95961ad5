"""One draft over a range of sizes, and its counts in a table with a column per size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from loopwright.garment.draft import Draft

__all__ = ["CountRow", "count_table"]


@dataclass(frozen=True, slots=True)
class CountRow:
    """One count of one section in every size.

    :ivar what: ``begins with``, ``rows``, ``rounds`` or ``ends with``.
    :ivar by_size: in the order of the sizes; None where a size has no such section.
    """

    piece: str
    section: str
    what: str
    by_size: tuple[int | None, ...]


def count_table(drafts: Mapping[str, Draft]) -> tuple[CountRow, ...]:
    """Give what every section begins with, its rows, and what it ends with, for each size.

    :param drafts: by size, in order.
    """
    places: dict[tuple[str, str], bool] = {}
    for draft in drafts.values():
        for piece, section in draft.sections():
            places.setdefault((piece.key, section.key), section.in_the_round)
    counts: dict[tuple[str, str, str], list[int | None]] = {}
    for draft in drafts.values():
        here = {(piece.key, section.key): section for piece, section in draft.sections()}
        for (piece_key, section_key), in_the_round in places.items():
            section_here = here.get((piece_key, section_key))
            for what, count in (
                ("begins with", None if section_here is None else section_here.first),
                ("rounds" if in_the_round else "rows", None if section_here is None else section_here.rows),
                ("ends with", None if section_here is None else section_here.live),
            ):
                counts.setdefault((piece_key, section_key, what), []).append(count)
    return tuple(CountRow(piece, section, what, tuple(row)) for (piece, section, what), row in counts.items())
