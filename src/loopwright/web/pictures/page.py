"""What the section that asks how it will look shows: pictures, and the colours that can be tried in them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Final, Literal
from urllib.parse import urlencode

from django.http import QueryDict
from django.urls import reverse

from loopwright.documents.look import LookOfGarment
from loopwright.garment import Garment, RolePlan
from loopwright.pictures.svg import NEUTRAL
from loopwright.season import GarmentPlan, Season
from loopwright.season.cautions import caution
from loopwright.units import BadInput, Reader
from loopwright.web.pictures.asked import COLOUR, MOST_PX, NOTHING_ASKED, Asked, asked_of, tried_look
from loopwright.web.pictures.extent import picture_extent

__all__ = ["LookView", "RoleLook", "ShownPicture", "asked_again", "look_view", "planned_look_view"]

SHOWN_PX: Final = {"front": 1000, "back": 1000, "fabric": 640}
LARGE_PX: Final = {"front": MOST_PX, "back": MOST_PX, "fabric": 1000}
VIEWS: Final[tuple[Literal["front", "back", "fabric"], ...]] = ("front", "back", "fabric")
NAMES: Final = {"front": "front", "back": "back", "fabric": "fabric from near"}


@dataclass(frozen=True, slots=True)
class RoleLook:
    """A role and the colour that it is drawn in.

    :ivar name: of the yarn's colour; :ivar field: name of its field; :ivar shade: ``#rrggbb`` that the field shows.
    :ivar note: said where that is not the whole truth; else empty.
    :ivar photo: where its colour can be taken from a photo.
    """

    role: str
    name: str
    field: str
    shade: str
    note: str
    photo: str


@dataclass(frozen=True, slots=True)
class ShownPicture:
    """One picture: its address, size in pixels where it is known, and what it shows in words.

    :ivar large: address of the same in as many pixels as are drawn; :ivar file: what it is called when it is saved.
    """

    view: str
    name: str
    address: str
    large: str
    file: str
    width: int
    height: int
    says: str


@dataclass(frozen=True, slots=True)
class LookView:
    """The section.

    :ivar address: where a form asks for other colours.
    :ivar edges: the role that ribs and bands are drawn in, empty where that is not open.
    :ivar kept: what else the form passes on: what she tries on the bench.
    :ivar page: address of the same on a page of its own.
    :ivar is_large: whether it is that page.
    :ivar has_body: whether the wearer's outline stands behind the garment.
    :ivar is_tried: whether a colour is another than the yarn's own.
    """

    pictures: tuple[ShownPicture, ...]
    roles: tuple[RoleLook, ...]
    edges: str
    address: str
    kept: tuple[tuple[str, str], ...]
    page: str
    is_large: bool
    is_tried: bool
    has_body: bool
    caution: str


def planned_look_view(
    key: str,
    kept: Season,
    planned: tuple[Season, GarmentPlan],
    typed: Mapping[str, str],
    query: QueryDict,
    reader: Reader,
) -> LookView | None:
    """Give the section for a bench, or None where the garment cannot be drafted.

    :param planned: the season with what she tries, and the plan of the garment in it.
    :param typed: what she tries, by field path, so that the pictures show it too.
    :param query: colours that she tries; where one cannot be read, none are tried.
    """
    season, garment = planned
    try:
        look = tried_look(kept, garment.key, typed, reader, planned)
    except BadInput:
        return None
    try:
        asked = asked_again(query, look)
    except BadInput:
        asked = NOTHING_ASKED
    return look_view(key, season.garment_by_key[garment.key], look, asked, typed)


def look_view(
    key: str, garment: Garment, look: LookOfGarment, asked: Asked, typed: Mapping[str, str], *, is_large: bool = False
) -> LookView:
    """Give the section with the colours that were asked for.

    :param is_large: whether it has a page of its own.
    """
    colours = {**look.colours, **asked.colours}
    query = dict(typed) | {f"{COLOUR}{role}": "+".join(strands) for role, strands in asked.colours.items()}
    if asked.edges:
        query["edges"] = asked.edges
    shown = LARGE_PX if is_large else SHOWN_PX
    front = picture_extent(look, "front", shown["front"])
    sizes = {"front": (front.width, front.height), "fabric": (shown["fabric"], shown["fabric"] * 3 // 4)}
    if is_large:
        back = picture_extent(look, "back", shown["back"])
        sizes["back"] = (back.width, back.height)
    place = reverse("garment-look", args=[key, garment.key])
    return LookView(
        pictures=tuple(_pictures(key, garment.key, replace(look, colours=colours), query, sizes, shown)),
        roles=tuple(_role(role, colours, _photo(key, garment.key, role.key, query)) for role in garment.yarns),
        edges=asked.edges or look.edges or "",
        address=place,
        kept=tuple(typed.items()),
        page=f"{place}?{urlencode(query)}" if query else place,
        is_large=is_large,
        is_tried=bool(asked.colours),
        has_body=front.has_body,
        caution=caution("colour").text,
    )


def _pictures(
    key: str,
    garment_key: str,
    look: LookOfGarment,
    query: Mapping[str, str],
    sizes: Mapping[str, tuple[int, int]],
    shown: Mapping[str, int],
) -> Iterator[ShownPicture]:
    """Give each picture; one that is shown in a frame of its own has no size."""
    for view in VIEWS:
        place = reverse("garment-picture", args=[key, garment_key, view])
        says = f"{look.name}, the fabric from near" if view == "fabric" else look.says(view)
        width, height = sizes.get(view, (0, 0))
        yield ShownPicture(
            view=view,
            name=NAMES[view],
            address=f"{place}?{urlencode({**query, 'px': shown[view]})}",
            large=f"{place}?{urlencode({**query, 'px': MOST_PX})}",
            file=f"{garment_key}-{view}.png",
            width=width,
            height=height,
            says=says,
        )


def _photo(key: str, garment_key: str, role: str, query: Mapping[str, str]) -> str:
    asked = urlencode({"garment": garment_key, "role": role, **query})
    return f"{reverse('colour-photo', args=[key])}?{asked}"


def _role(role: RolePlan, colours: Mapping[str, tuple[str, ...]], photo: str) -> RoleLook:
    strands = colours.get(role.key, ())
    note = "no likeness given" if not strands else f"{len(strands)} strands together" if len(strands) > 1 else ""
    name = " + ".join([role.colour, *(held.colour for held in role.held_with)])
    return RoleLook(role.key, name, f"{COLOUR}{role.key}", _shade(strands), note, photo)


def _shade(strands: tuple[str, ...]) -> str:
    return strands[0] if strands else NEUTRAL


def asked_again(query: QueryDict, look: LookOfGarment) -> Asked:
    """Read a form of the section: a colour that was left as it was shown is none that was chosen.

    :raises BadInput: a colour cannot be read.
    """
    asked = asked_of(query, look)
    chosen = {
        role: strands for role, strands in asked.colours.items() if strands != (_shade(look.colours.get(role, ())),)
    }
    edges = None if asked.edges == look.edges else asked.edges
    return Asked(chosen, edges, asked.size_px)
