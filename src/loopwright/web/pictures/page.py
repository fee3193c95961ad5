"""What the section that asks how it will look shows: pictures, and the colours that can be tried in them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final
from urllib.parse import urlencode

from django.http import QueryDict
from django.urls import reverse

from loopwright.documents.look import LookOfGarment, look_of
from loopwright.pictures.svg import NEUTRAL
from loopwright.season import GarmentPlan, Season
from loopwright.season.cautions import caution
from loopwright.units import BadInput
from loopwright.web.pictures.asked import COLOUR, Asked, asked_of

__all__ = ["LookView", "RoleLook", "ShownPicture", "asked_again", "look_view", "planned_look_view"]

SHOWN_PX: Final = {"front": 1000, "back": 1000, "fabric": 640}
NAMES: Final = {"front": "front", "back": "back", "fabric": "fabric from near"}


@dataclass(frozen=True, slots=True)
class RoleLook:
    """A role and the colour that it is drawn in.

    :ivar field: name of its field; :ivar shade: ``#rrggbb`` that the field shows.
    :ivar note: said where that is not the whole truth; else empty.
    """

    role: str
    field: str
    shade: str
    note: str


@dataclass(frozen=True, slots=True)
class ShownPicture:
    """One picture: its address, size in pixels where it is known, and what it shows in words."""

    name: str
    address: str
    width: int
    height: int
    says: str


@dataclass(frozen=True, slots=True)
class LookView:
    """The section.

    :ivar address: where a form asks for other colours.
    :ivar edges: the role that ribs and bands are drawn in, empty where that is not open.
    :ivar kept: what else the form passes on: what she tries on the bench.
    """

    pictures: tuple[ShownPicture, ...]
    roles: tuple[RoleLook, ...]
    edges: str
    address: str
    kept: tuple[tuple[str, str], ...]
    caution: str


def planned_look_view(
    key: str, season: Season, planned: GarmentPlan, typed: Mapping[str, str] | None = None
) -> LookView | None:
    """Give the section for a bench, or None where the garment cannot be drafted.

    :param season, planned: with what she tries.
    :param typed: what she tries, by field path, so that the pictures show it too.
    """
    try:
        look = look_of(season, planned)
    except BadInput:
        return None
    return look_view(key, planned.key, look, Asked({}, None, 0), typed or {})


def look_view(key: str, garment_key: str, look: LookOfGarment, asked: Asked, typed: Mapping[str, str]) -> LookView:
    """Give the section with the colours that were asked for."""
    colours = {**look.colours, **asked.colours}
    edges = asked.edges or look.edges or ""
    query = dict(typed) | {f"{COLOUR}{role}": "+".join(strands) for role, strands in asked.colours.items()}
    if asked.edges:
        query["edges"] = asked.edges
    height, width = look.picture("front", edges=asked.edges, longest_px=SHOWN_PX["front"]).index.shape
    fabric = SHOWN_PX["fabric"]
    sizes = {"front": (width, height), "back": (0, 0), "fabric": (fabric, fabric * 3 // 4)}
    words = {
        "front": look.says("front"),
        "back": look.says("back"),
        "fabric": f"{look.name}, the fabric from near",
    }
    return LookView(
        pictures=tuple(
            ShownPicture(NAMES[view], _address(key, garment_key, view, query), *sizes[view], words[view])
            for view in SHOWN_PX
        ),
        roles=tuple(_role(role, colours) for role in look.roles),
        edges=edges,
        address=reverse("garment-look", args=[key, garment_key]),
        kept=tuple(typed.items()),
        caution=caution("colour").text,
    )


def _address(key: str, garment_key: str, view: str, query: Mapping[str, Any]) -> str:
    place = reverse("garment-picture", args=[key, garment_key, view])
    return f"{place}?{urlencode({**query, 'px': SHOWN_PX[view]})}"


def _role(role: str, colours: Mapping[str, tuple[str, ...]]) -> RoleLook:
    strands = colours.get(role, ())
    note = "no likeness given" if not strands else f"{len(strands)} strands together" if len(strands) > 1 else ""
    return RoleLook(role, f"{COLOUR}{role}", strands[0] if strands else NEUTRAL, note)


def asked_again(query: QueryDict, look: LookOfGarment) -> Asked:
    """Read a form of the section: a colour that was left as it was shown is none that was chosen.

    :raises BadInput: a colour cannot be read.
    """
    asked = asked_of(query, look)
    shown = {role: _role(role, look.colours).shade for role in look.roles}
    chosen = {role: strands for role, strands in asked.colours.items() if strands != (shown[role],)}
    edges = None if asked.edges == look.edges else asked.edges
    return Asked(chosen, edges, asked.size_px)
