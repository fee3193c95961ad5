"""The garment by lot: its pictures, what they say to those who do not see them, and where each section lies."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final
from urllib.parse import urlencode

import numpy as np
from django.urls import reverse

from loopwright.allotment import SectionDemand
from loopwright.garment.draft import Draft
from loopwright.pictures.by_lot import Knitted, lots_png, regions_of, regions_png
from loopwright.pictures.index_layout import MOST_ROLES
from loopwright.pictures.patch import Face
from loopwright.season import Season
from loopwright.season.allot_answer import parts_words
from loopwright.season.allot_choice import ChosenAllotment
from loopwright.season.lot_names import lot_names
from loopwright.season.wording import Wording
from loopwright.web.allotment.likeness import NO_YARN, UNKNOWN, lot_shades

__all__ = ["FACES", "LotsPicture", "lots_picture", "lots_pictures", "places_picture"]

FACES: Final[tuple[Face, ...]] = ("front", "back")


@dataclass(frozen=True, slots=True)
class LotsPicture:
    """One picture: its address, what it shows in words, and where its sections lie.

    :ivar places_address: of a picture whose numbers say which section is seen.
    :ivar places: the keys of the sections of each number from 1, in JSON.
    """

    face: str
    address: str
    alt: str
    width: int
    height: int
    places_address: str
    places: str


def lots_pictures(
    season: Season,
    draft: Draft,
    chosen: ChosenAllotment,
    addressed: tuple[str, str],
    moved: Mapping[str, str],
    wording: Wording,
) -> tuple[LotsPicture, ...]:
    """Give the front and the back, or one picture where both look alike.

    There are none where there are more lots than a picture can tell apart.

    :param addressed: keys of the season and the garment, as in an address.
    :param moved: lots given by hand, by section.
    """
    knitting = {lots for roles in _knitted(chosen).values() for own in roles.values() for lots, _ in own}
    if len(knitting) >= MOST_ROLES:
        return ()
    name = season.garment_by_key[addressed[1]].name
    told = "; ".join(_told(chosen, lot_names(season), wording))
    keys = _keys(chosen)
    shown = []
    front, back = (regions_of(draft, face).numbers for face in FACES)
    alike = np.array_equal(front, back)
    for face in FACES[:1] if alike else FACES:
        regions = regions_of(draft, face)
        asked = f"?{urlencode(moved)}" if moved else ""
        shown.append(
            LotsPicture(
                face=face,
                address=reverse("allotment-picture", args=[*addressed, "lots", face]) + asked,
                alt=f"{name}, by the same lots, from the back."
                if face == "back"
                else f"{name}{'' if alike else ' from the front'}. {told}.",
                width=regions.numbers.shape[1],
                height=regions.numbers.shape[0],
                places_address=reverse("allotment-picture", args=[*addressed, "places", face]),
                places=json.dumps([list(keys.get(place, {}).values()) for place in regions.sections]),
            )
        )
    return tuple(shown)


def lots_picture(season: Season, draft: Draft, chosen: ChosenAllotment, face: Face) -> bytes:
    """Give the front or the back in the colours of the lots as a PNG.

    :raises BadInput: more lots than a picture can tell apart.
    """
    colours = {"": NO_YARN} | dict.fromkeys(chosen.lots, UNKNOWN) | lot_shades(season)
    return lots_png(draft, face, _knitted(chosen), colours)


def places_picture(draft: Draft, face: Face) -> bytes:
    """Give which section is seen where as a PNG."""
    return regions_png(regions_of(draft, face))


def _split_key(section: SectionDemand) -> tuple[str, str]:
    piece, own = section.key.rsplit("/", 2)[1:]
    return piece, own


def _keys(chosen: ChosenAllotment) -> dict[tuple[str, str], dict[str, str]]:
    """Give the keys of sections by piece and section, then by role."""
    keys: dict[tuple[str, str], dict[str, str]] = {}
    for one in chosen.sections:
        keys.setdefault(_split_key(one), {})[one.role] = one.key
    return keys


def _knitted(chosen: ChosenAllotment) -> Knitted:
    return {
        place: dict(_by_role({role: chosen.portions.get(key, (("", 1.0),)) for role, key in own.items()}))
        for place, own in _keys(chosen).items()
    }


def _by_role(
    portions: Mapping[str, Sequence[tuple[str, float]]],
) -> Iterator[tuple[str, list[tuple[tuple[str, ...], float]]]]:
    """Give what knits each role; further strands, named ``role, strand 2``, are each in the lot of their first rows."""
    for role, own in portions.items():
        if ", strand " in role:
            continue
        others = tuple(more[0][0] for name, more in portions.items() if name.startswith(f"{role}, strand "))
        yield role, [((lot, *others), share) for lot, share in own]


def _told(chosen: ChosenAllotment, names: Mapping[str, str], wording: Wording) -> Iterator[str]:
    """Say which lot knits what."""
    for lot in chosen.lots:
        whole: list[SectionDemand] = []
        part: list[SectionDemand] = []
        for one in chosen.sections:
            for key, share in chosen.portions.get(one.key, ()):
                if key == lot:
                    (whole if share > 1 - 1e-9 else part).append(one)
        words = [parts_words(whole, wording)] if whole else []
        words += [f"part of {parts_words(part, wording)}"] if part else []
        if words:
            yield f"{names.get(lot, lot)} knits {wording.listed(words)}"
    bare = [one for one in chosen.sections if one.key not in chosen.lot_of]
    if bare:
        yield f"no yarn knits {parts_words(bare, wording)}"
