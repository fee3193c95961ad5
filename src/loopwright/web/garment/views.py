"""A garment's bench: its own questions, answered anew while she tries something."""

from __future__ import annotations

from collections.abc import Mapping
from typing import cast
from urllib.parse import urlencode

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect, QueryDict
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe
from django_htmx.middleware import HtmxDetails
from pydantic import ValidationError

from loopwright.documents import differences, garment_view
from loopwright.season import Season, entry_fields, plan, with_garment
from loopwright.store import changes
from loopwright.units import BadInput
from loopwright.web.garment.trial import TRIAL_FIELDS, Field, trial_faults, trial_form
from loopwright.web.reading import reader_of, wording_of
from loopwright.web.season.views import found

__all__ = ["keep", "show"]


class HtmxRequest(HttpRequest):
    """A request that knows whether a part of a page is asked for."""

    htmx: HtmxDetails


def _typed(asked: QueryDict) -> dict[str, str]:
    """Give what she wrote, by field path."""
    return {path: str(asked[path]).strip() for path in TRIAL_FIELDS if path in asked}


def _tried(season: Season, garment_key: str, typed: Mapping[str, str]) -> tuple[Season, list[str]]:
    """Give the season with what she tries, and the faults in it; with a fault the season stays as it was."""
    if not typed:
        return season, []
    try:
        return with_garment(season, garment_key, typed), []
    except (ValidationError, BadInput) as error:
        return season, trial_faults(error)


def _form(season: Season, garment_key: str, typed: Mapping[str, str]) -> tuple[Field, ...]:
    pattern = season.pattern_by_key[season.garment_by_key[garment_key].pattern]
    return trial_form(pattern, entry_fields(season, "garments", garment_key), typed)


@require_safe
def show(request: HttpRequest, key: str, garment_key: str) -> HttpResponse:
    """Show the bench, or only its answers while she tries something."""
    season = found(key)
    if garment_key not in season.garment_by_key:
        raise Http404(f"the season has no garment '{garment_key}'")
    typed = _typed(request.GET)
    tried, faults = _tried(season, garment_key, typed)
    wording, reader = wording_of(request, season), reader_of(request, season)
    planned = plan(tried, reader).garment(garment_key)
    view = garment_view(tried, planned, wording)
    changed = tried != season
    against = differences(plan(season, reader).garment(garment_key), planned, wording) if changed else ()
    shown = {
        "key": key,
        "season": season,
        "view": view,
        "fields": _form(season, garment_key, typed),
        "typed": typed,
        "faults": faults,
        "changed": changed,
        "differences": against,
        "past": changes.history(key),
        "path": request.path,
        "reader": reader,
    }
    part = cast(HtmxRequest, request).htmx
    response = render(request, "garment/_answers.html" if part else "garment/page.html", shown)
    response["Vary"] = "HX-Request, Cookie"
    return response


@require_POST
def keep(request: HttpRequest, key: str, garment_key: str) -> HttpResponse:
    """Keep what she tried; with a fault nothing is written."""
    season = found(key)
    if garment_key not in season.garment_by_key:
        raise Http404(f"the season has no garment '{garment_key}'")
    typed = _typed(request.POST)
    place = reverse("garment", args=[key, garment_key])
    name = season.garment_by_key[garment_key].name
    try:
        changes.change_entry(key, "garments", garment_key, f"changed {name}", typed)
    except (changes.ChangeRefused, BadInput):
        return HttpResponseRedirect(f"{place}?{urlencode(typed)}")  # the bench says what is wrong
    return HttpResponseRedirect(place)
