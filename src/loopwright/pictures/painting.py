"""Whose yarn knits which stitch: by rows as the draft says, or stitch by stitch where a chart is laid on a section."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Draft, Section
from loopwright.units import BadInput

__all__ = ["Painting", "painting_of"]

Cells = NDArray[np.integer]
EDGE_FABRICS: Final = ("1x1 rib", "2x2 rib", "garter stitch", "moss stitch")


@dataclass(frozen=True, slots=True, eq=False)
class Painting:
    """The roles of a garment, and where each is used.

    :ivar roles: in the order in which an index picture numbers them.
    :ivar rows: by piece and section, the role of each row as a place in ``roles``; shape (rows,).
    :ivar cells: by piece and section, the role of each stitch; shape (rows, stitches of the widest row). The first
        column is the left end of a row as seen from the right side; of a round, the left end of the front, which comes
        before the back. They stand for ``rows`` there.
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


def painting_of(
    draft: Draft,
    *,
    edges: str | None = None,
    charts: Mapping[tuple[str, str], tuple[tuple[str, ...], Cells]] | None = None,
) -> Painting:
    """Give the painting of a draft.

    :param edges: a role that knits ribs, hems and bands where the draft does not say whose yarn knits them.
    :param charts: by piece and section: the roles of a chart, and for each stitch its place among them; shape
        (rows, stitches of the widest row), as in :class:`Painting`.
    :raises BadInput: a chart has other rows or fewer stitches than its section.
    """
    roles: dict[str, int] = {}
    rows: dict[tuple[str, str], NDArray[np.intp]] = {}
    cells: dict[tuple[str, str], Cells] = {}
    main = next((run.role for _, one in draft.sections() for run in one.role_runs), "main")
    roles[main] = 0
    fabric = max((one for _, one in draft.sections()), key=lambda one: one.worked).fabric
    for piece, section in draft.sections():
        names = [run.role for run in section.role_runs for _ in range(run.rows)]
        if edges is not None and not section.roles and _is_edge(section, fabric):
            names = [edges] * section.rows
        rows[piece.key, section.key] = np.array([roles.setdefault(name, len(roles)) for name in names], dtype=np.intp)
    for key, (names_of_chart, chart) in (charts or {}).items():
        section = draft.section(*key)
        most = int(section.stitches.max())
        if chart.shape[0] != section.rows or chart.shape[1] < most:
            raise BadInput(
                found=f"a chart of {chart.shape[1]} stitches and {chart.shape[0]} rows on the {section.name}",
                wanted=f"{most} stitches and {section.rows} rows",
                place=key[1],
            )
        known = np.array([roles.setdefault(name, len(roles)) for name in names_of_chart], dtype=np.intp)
        cells[key] = known[chart]
    return Painting(tuple(roles), rows, cells)


def _is_edge(section: Section, main_fabric: str) -> bool:
    """Say whether a section is a band, or a rib or border that a piece of another fabric begins or ends with."""
    if section.key == "band":
        return True
    ends_piece = section.begins == "cast on" or section.ends == "cast off"
    return section.fabric in EDGE_FABRICS and section.fabric != main_fabric and ends_piece
