"""What picture a request asks for: whose colours, which size, with what she tries on the bench."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Final

from django.http import QueryDict

from loopwright.documents.look import LookOfGarment, look_of
from loopwright.pictures.colourway import read_colour
from loopwright.season import GarmentPlan, Season, plan
from loopwright.units import Reader
from loopwright.web.trial.fields import TRIAL_FIELDS
from loopwright.web.trial.tried import tried_season

__all__ = ["COLOUR", "LEAST_PX", "MOST_PX", "NOTHING_ASKED", "Asked", "asked_of", "tried_look", "typed_of"]

LEAST_PX, MOST_PX = 120, 1600
USUAL_PX: Final = 1000
COLOUR: Final = "colour."
"""Of a role: what a field is called, before the role."""


@dataclass(frozen=True, slots=True)
class Asked:
    """One request, read.

    :ivar colours: by role, those that she chose instead of the yarn's own.
    :ivar edges: the role of ribs and bands, where she chose it.
    """

    colours: Mapping[str, tuple[str, ...]]
    edges: str | None
    size_px: int


NOTHING_ASKED: Final = Asked({}, None, USUAL_PX)


def asked_of(query: QueryDict, look: LookOfGarment) -> Asked:
    """Read a request's colours, edges and size; a size beyond what is drawn is the nearest one.

    :raises BadInput: a colour cannot be read.
    """
    colours = {}
    for name, text in query.items():
        role = name.removeprefix(COLOUR)
        if role != name and role in look.roles and str(text).strip():
            colours[role] = read_colour(f"{role}={text}")[1]
    edges = query.get("edges")
    size = query.get("px", "")
    return Asked(
        colours=colours,
        edges=str(edges) if edges in look.roles else None,
        size_px=min(max(int(size), LEAST_PX), MOST_PX) if size.isascii() and size.isdigit() else USUAL_PX,
    )


def typed_of(query: QueryDict) -> dict[str, str]:
    """Give what she tries on the bench, by field path, as a request passes it on."""
    return {path: str(query[path]) for path in TRIAL_FIELDS if path in query}


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A garment of a season; equal where all that its look rests on is written alike.

    :ivar planned: the season as she tries it and the plan of the garment, where they are at hand already.
    """

    digest: bytes
    garment_key: str
    typed: tuple[tuple[str, str], ...]
    reader: Reader
    season: Season = field(compare=False)
    planned: tuple[Season, GarmentPlan] | None = field(compare=False)


def tried_look(
    season: Season,
    garment_key: str,
    typed: Mapping[str, str],
    reader: Reader,
    planned: tuple[Season, GarmentPlan] | None = None,
) -> LookOfGarment:
    """Give the look of a garment with what she tries on its bench; what cannot be tried leaves it as it is kept.

    The last few are kept, so that a bench and its pictures need one plan.

    :param season: as it is kept.
    :param planned: the season as she tries it and the plan of the garment, where they are at hand already.
    :raises BadInput: it cannot be drafted.
    """
    digest = hashlib.sha256(season.model_dump_json().encode("utf-8")).digest()
    return _look(_Wanted(digest, garment_key, tuple(sorted(typed.items())), reader, season, planned))


@lru_cache(maxsize=16)
def _look(wanted: _Wanted) -> LookOfGarment:
    if wanted.planned is not None:
        return look_of(*wanted.planned)
    tried, _ = tried_season(wanted.season, wanted.garment_key, dict(wanted.typed), wanted.reader)
    return look_of(tried, plan(tried, wanted.reader).garment(wanted.garment_key))
