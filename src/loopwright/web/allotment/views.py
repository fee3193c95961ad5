"""The page of lots: the best allotment of a garment, what she makes of it by hand, and its pictures."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from django.http import Http404, HttpRequest, HttpResponse, QueryDict
from django.http.response import HttpResponseBase
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_safe

from loopwright.garment.draft import Draft
from loopwright.season import Season, plan
from loopwright.season.allot_choice import ChosenAllotment, chosen_allotment
from loopwright.season.allotted import Allotted, allotted
from loopwright.season.remake import draft_of
from loopwright.units import BadInput
from loopwright.web.allotment.page import lots_view
from loopwright.web.allotment.pictures import FACES, lots_picture, lots_pictures, places_picture
from loopwright.web.png import png_response
from loopwright.web.reading import reader_of, wording_of
from loopwright.web.season.views import found

__all__ = ["picture", "show"]


@dataclass(frozen=True, slots=True, eq=False)
class _Solved:
    """The best allotment of a garment, and its draft where there is one."""

    allotted: Allotted
    draft: Draft | None


@lru_cache(maxsize=16)
def _solved(season_text: str, garment_key: str) -> _Solved:
    """Solve once for the same season, so that moving a section, and each picture, answers at once."""
    season = Season.model_validate(json.loads(season_text))
    planned = plan(season)
    garment = next(one for one in planned.garments if one.key == garment_key)
    return _Solved(allotted(season, planned, garment_key, with_next_best=False), draft_of(season, garment))


def _asked(key: str, garment_key: str) -> tuple[Season, _Solved]:
    season = found(key)
    if garment_key not in season.garment_by_key:
        raise Http404(f"the season has no garment '{garment_key}'")
    return season, _solved(season.model_dump_json(by_alias=True, exclude_none=True), garment_key)


def _chosen(solved: Allotted, garment_key: str, asked: QueryDict) -> tuple[ChosenAllotment, Mapping[str, str]]:
    """Give the allotment as she has it, and the sections that she gave to other lots."""
    proposed = chosen_allotment(solved, garment_key, {})
    moved = {
        section: lot
        for section, choices in proposed.choices.items()
        for lot in [str(asked.get(section, ""))]
        if lot in choices and lot != proposed.lot_of.get(section)
    }
    return (chosen_allotment(solved, garment_key, moved) if moved else proposed), moved


@require_safe
def show(request: HttpRequest, key: str, garment_key: str) -> HttpResponse:
    """Show which lot knits which section; with sections given to other lots, what becomes of it."""
    season, solved = _asked(key, garment_key)
    chosen, moved = _chosen(solved.allotted, garment_key, request.GET)
    wording = wording_of(request, season)
    pictures = (
        lots_pictures(season, solved.draft, chosen, (key, garment_key), moved, wording)
        if solved.draft is not None and chosen.sections
        else ()
    )
    shown = {
        "key": key,
        "season": season,
        "garment": season.garment_by_key[garment_key],
        "view": lots_view(season, solved.allotted, chosen, garment_key, wording),
        "pictures": pictures,
        "moved": bool(moved),
        "path": reverse("allotment", args=[key, garment_key]),
        "reader": reader_of(request, season),
    }
    part = bool(getattr(request, "htmx", False))
    response = render(request, "allotment/_judged.html" if part else "allotment/page.html", shown)
    response["Vary"] = "HX-Request, Cookie"
    return response


@require_safe
def picture(request: HttpRequest, key: str, garment_key: str, kind: str, face: str) -> HttpResponseBase:
    """Give the garment by lot as a PNG, or where its sections lie. A browser asks whether it is still the same."""
    season, solved = _asked(key, garment_key)
    if solved.draft is None or face not in FACES or kind not in ("lots", "places"):
        raise Http404(f"there is no picture '{kind}/{face}'")
    chosen, _ = _chosen(solved.allotted, garment_key, request.GET)
    try:
        drawn = (
            places_picture(solved.draft, face) if kind == "places" else lots_picture(season, solved.draft, chosen, face)
        )
    except BadInput as error:
        raise Http404(str(error)) from error
    return png_response(request, drawn)
