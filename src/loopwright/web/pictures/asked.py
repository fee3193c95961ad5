"""What picture a request asks for: whose colours, which size, with what she tries on the bench."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Final

from django.http import QueryDict
from pydantic import ValidationError

from loopwright.documents.look import LookOfGarment, look_of
from loopwright.pictures.colourway import read_colour
from loopwright.season import Season, plan, with_garment
from loopwright.units import BadInput
from loopwright.web.garment.trial import TENSION, TRIAL_FIELDS

__all__ = ["LEAST_PX", "MOST_PX", "Asked", "asked_of", "tried_look"]

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


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A garment of a season; equal where all that its look rests on is written alike."""

    digest: bytes
    garment_key: str
    typed: tuple[tuple[str, str], ...]
    season: Season = field(compare=False)


def tried_look(season: Season, garment_key: str, query: QueryDict) -> LookOfGarment:
    """Give the look of a garment with what she tries on its bench; what cannot be tried leaves it as it is kept.

    The last few are kept, so that the pictures of one page need one plan.

    :raises BadInput: it cannot be drafted.
    """
    typed = tuple((path, str(query[path])) for path in TRIAL_FIELDS if path in query and path != TENSION)
    digest = hashlib.sha256(season.model_dump_json().encode("utf-8")).digest()
    return _look(_Wanted(digest, garment_key, typed, season))


@lru_cache(maxsize=16)
def _look(wanted: _Wanted) -> LookOfGarment:
    tried = wanted.season
    if wanted.typed:
        try:
            tried = with_garment(wanted.season, wanted.garment_key, dict(wanted.typed))
        except (ValidationError, BadInput):
            tried = wanted.season
    return look_of(tried, plan(tried).garment(wanted.garment_key))
