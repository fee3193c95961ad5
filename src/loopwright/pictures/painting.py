"""Whose yarn knits which stitch: row by row, or stitch by stitch where a row has several roles."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Draft, Section

__all__ = ["Painting", "painting_of"]

Cells = NDArray[np.integer]
EDGE_FABRICS: Final = ("1x1 rib", "2x2 rib", "garter stitch", "moss stitch")


@dataclass(frozen=True, slots=True, eq=False)
class Painting:
    """The roles of a garment, and where each is used.

    :ivar roles: in the order in which an index picture numbers them.
    :ivar rows: by piece and section, the role of each row as a place in ``roles``; shape (rows,).
    :ivar cells: by piece and section, the role of each stitch, as in
        :class:`~loopwright.garment.draft.RoleCells`. They stand for ``rows`` there.
    """

    roles: tuple[str, ...]
    rows: Mapping[tuple[str, str], NDArray[np.intp]] = field(default_factory=dict)
    cells: Mapping[tuple[str, str], Cells] = field(default_factory=dict)

    def of(self, piece: str, section: Section) -> Cells:
        """Give the roles of a section's stitches; one column where whole rows are alike."""
        key = (piece, section.key)
        if key in self.cells:
            return self.cells[key]
        return self.rows[key][:, None]


def painting_of(draft: Draft, *, edges: str | None = None) -> Painting:
    """Give the painting of a draft: as its sections say, else in the first role.

    :param edges: a role that knits ribs, hems and bands where the draft does not say whose yarn knits them.
    """
    roles: dict[str, int] = {}
    rows: dict[tuple[str, str], NDArray[np.intp]] = {}
    cells: dict[tuple[str, str], Cells] = {}
    roles[next((run.role for _, one in draft.sections() for run in one.role_runs), "main")] = 0
    fabric = max((one for _, one in draft.sections()), key=lambda one: one.worked).fabric
    for piece, section in draft.sections():
        key = (piece.key, section.key)
        if section.cells is not None:
            numbers = [roles.setdefault(name, len(roles)) for name in section.cells.roles]
            cells[key] = np.array(numbers, dtype=np.intp)[section.cells.cells]
            continue
        names = [run.role for run in section.role_runs for _ in range(run.rows)]
        if edges is not None and not section.roles and _is_edge(section, fabric):
            names = [edges] * section.rows
        rows[key] = np.array([roles.setdefault(name, len(roles)) for name in names], dtype=np.intp)
    return Painting(tuple(roles), rows, cells)


def _is_edge(section: Section, main_fabric: str) -> bool:
    """Say whether a section is a band, or a rib or border that a piece of another fabric begins or ends with."""
    if section.key == "band":
        return True
    ends_piece = section.begins == "cast on" or section.ends == "cast off"
    return section.fabric in EDGE_FABRICS and section.fabric != main_fabric and ends_piece
