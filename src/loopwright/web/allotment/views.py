"""The page of lots: the best allotment of a garment, and what she makes of it by hand."""

from __future__ import annotations

import json
from functools import lru_cache

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_safe

from loopwright.season import Season, plan
from loopwright.season.allot_choice import chosen_allotment
from loopwright.season.allotted import Allotted, allotted
from loopwright.web.allotment.page import lots_view
from loopwright.web.reading import reader_of, wording_of
from loopwright.web.season.views import found

__all__ = ["show"]


@lru_cache(maxsize=16)
def _solved(season_text: str, garment_key: str) -> Allotted:
    """Solve once for the same season, so that moving a section answers at once."""
    season = Season.model_validate(json.loads(season_text))
    return allotted(season, plan(season), garment_key, with_next_best=False)


@require_safe
def show(request: HttpRequest, key: str, garment_key: str) -> HttpResponse:
    """Show which lot knits which section; with sections given to other lots, what becomes of it."""
    season = found(key)
    if garment_key not in season.garment_by_key:
        raise Http404(f"the season has no garment '{garment_key}'")
    solved = _solved(season.model_dump_json(by_alias=True, exclude_none=True), garment_key)
    proposed = chosen_allotment(solved, garment_key, {})
    asked = {one.key: str(request.GET.get(one.key, "")) for one in proposed.sections}
    moved = {
        section: lot for section, lot in asked.items() if lot in proposed.lots and lot != proposed.lot_of.get(section)
    }
    chosen = chosen_allotment(solved, garment_key, moved)
    shown = {
        "key": key,
        "season": season,
        "garment": season.garment_by_key[garment_key],
        "view": lots_view(season, solved, chosen, garment_key, wording_of(request, season)),
        "moved": bool(moved),
        "path": reverse("allotment", args=[key, garment_key]),
        "reader": reader_of(request, season),
    }
    part = bool(getattr(request, "htmx", False))
    response = render(request, "allotment/_judged.html" if part else "allotment/page.html", shown)
    response["Vary"] = "HX-Request, Cookie"
    return response
