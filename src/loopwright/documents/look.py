"""What a garment is drawn in: the colours of its yarns, and where a contrast lies that the draft does not place."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from loopwright.documents.fit_view import drawn_body
from loopwright.garment.draft import Draft
from loopwright.pictures.fabric_view import fabric_png
from loopwright.pictures.front_back import USUAL_PX, GarmentPicture, garment_picture
from loopwright.pictures.patch import Face
from loopwright.season import GarmentPlan, Season
from loopwright.season.remake import draft_of
from loopwright.units import BadInput

__all__ = ["LookOfGarment", "look_of"]

ROWS_OF_A_ROLE = 8
"""In a close view of several roles."""


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
        """Give its fabric from near as a PNG, the roles above one another where there are several."""
        section = max((one for _, one in self.draft.sections()), key=lambda one: one.worked)
        roles = self.roles or ("main",)
        cells = [[role] for role in roles for _ in range(ROWS_OF_A_ROLE)]
        return fabric_png(section.gauge, cells, colours, fabric=section.fabric, width_px=width_px)

    def says(self, face: Face) -> str:
        """Say what the picture shows, for those who do not see it."""
        names = ", ".join(f"{role} {'and '.join(self.colours.get(role, ('grey',)))}" for role in self.roles)
        return f"{self.name} from the {face}: {names}"


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
    told = any(section.roles for _, section in draft.sections())
    body = drawn_body(season.body_by_key[garment.wearer]) if garment.wearer else {}
    return LookOfGarment(
        name=garment.name,
        draft=draft,
        roles=roles,
        colours=colours,
        edges=roles[1] if len(roles) > 1 and not told else None,
        body_cm=body,
    )
