"""What a garment is drawn in: the colours of its yarns, and where a contrast lies that the draft does not place."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from loopwright.documents.fit_view import drawn_body
from loopwright.garment.draft import Draft, Section
from loopwright.pictures.fabric_view import fabric_png
from loopwright.pictures.front_back import USUAL_PX, GarmentPicture, garment_picture
from loopwright.pictures.patch import Face
from loopwright.season import GarmentPlan, Season
from loopwright.season.remake import draft_of
from loopwright.units import BadInput

__all__ = ["LookOfGarment", "look_of"]

ROWS_OF_A_ROLE = 8
"""In a close view of several roles."""
CLOSE_ROWS, CLOSE_STITCHES = 24, 26
"""Of a close view, which shows about so many."""


@dataclass(frozen=True, slots=True, eq=False)
class LookOfGarment:
    """A drafted garment with the colours of its yarns.

    :ivar roles: in the garment's order.
    :ivar colours: likenesses of each role's strands as ``#rrggbb``; a role without one is left out and drawn grey.
    :ivar edges: the role that ribs and bands are drawn in, since the draft does not say whose yarn knits them; None
        where it says, or where there is one role alone.
    :ivar body_cm: the wearer's measures in cm by point, empty where there is none.
    """

    name: str
    draft: Draft
    roles: tuple[str, ...]
    colours: Mapping[str, tuple[str, ...]]
    edges: str | None
    body_cm: Mapping[str, float]

    def picture(self, face: Face = "front", *, edges: str | None = None, longest_px: int = USUAL_PX) -> GarmentPicture:
        """Give its front or its back.

        :param edges: another role for ribs and bands.
        """
        return garment_picture(
            self.draft, face, edges=edges or self.edges, body_cm=self.body_cm or None, longest_px=longest_px
        )

    def fabric(self, colours: Mapping[str, Sequence[str]], *, width_px: int = 640) -> bytes:
        """Give its fabric from near as a PNG, where most colours meet.

        Where it is not said where they go, the roles stand above one another.
        """
        section = max((one for _, one in self.draft.sections()), key=lambda one: (_colours_met(one), one.worked))
        if section.is_coloured:
            cells = _close_rows(section)
        else:
            cells = [[role] for role in self.roles or ("main",) for _ in range(ROWS_OF_A_ROLE)]
        return fabric_png(section.gauge, cells, colours, fabric=section.fabric, width_px=width_px)

    def says(self, face: Face) -> str:
        """Say what the picture shows, for those who do not see it."""
        names = ", ".join(f"{role} {'and '.join(self.colours.get(role, ('grey',)))}" for role in self.roles)
        return f"{self.name} from the {face}: {names}"


def _colours_met(section: Section) -> int:
    """Give how many roles meet in a section: of its rows, or in a row."""
    return len([rows for rows in section.stitches_by_role().values() if rows.any()])


def _close_rows(section: Section) -> list[list[str]]:
    """Give the roles of a window of stitches, row by row from below, where the colours meet first."""
    if section.cells is None:
        names = [run.role for run in section.role_runs for _ in range(run.rows)]
        return [[role] for role in names[:CLOSE_ROWS]]
    used = np.array([rows > 0 for rows in section.stitches_by_role().values()]).sum(axis=0)
    first = max(min(int((used > 1).argmax()) - 1, section.rows - CLOSE_ROWS), 0)
    count = int(section.stitches[first : first + CLOSE_ROWS].min())
    left = max(count // 4 - CLOSE_STITCHES // 2, 0) if section.in_the_round else max((count - CLOSE_STITCHES) // 2, 0)
    window = section.cells.cells[first : first + CLOSE_ROWS, left : min(left + CLOSE_STITCHES, count)]
    return [[section.cells.roles[number] for number in row] for row in window.tolist()]


def look_of(season: Season, planned: GarmentPlan) -> LookOfGarment:
    """Give a planned garment's look.

    :raises BadInput: it cannot be drafted.
    """
    draft = draft_of(season, planned)
    if draft is None:
        raise BadInput(found=planned.answer("draft").sentence, wanted="a garment that can be drafted")
    garment = season.garment_by_key[planned.key]
    colours: dict[str, tuple[str, ...]] = {}
    for role in planned.roles:
        if role.shade is not None:
            colours[role.role] = (*colours.get(role.role, ()), role.shade)
    roles = tuple(role.key for role in garment.yarns)
    told = any(section.is_coloured for _, section in draft.sections())
    body = drawn_body(season.body_by_key[garment.wearer]) if garment.wearer else {}
    return LookOfGarment(
        name=garment.name,
        draft=draft,
        roles=roles,
        colours=colours,
        edges=roles[1] if len(roles) > 1 and not told else None,
        body_cm=body,
    )
