"""A garment's bench: its own questions, answered anew while she tries something."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any, cast
from urllib.parse import urlencode

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect, QueryDict
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe
from django_htmx.middleware import HtmxDetails

from loopwright.documents import differences, garment_view
from loopwright.season import GarmentPlan, Season, entry_fields, plan
from loopwright.season.own_draft import facts_of
from loopwright.store import changes
from loopwright.units import BadInput, Reader
from loopwright.web.photo.lots import kept_words
from loopwright.web.pictures.page import planned_look_view
from loopwright.web.reading import reader_of, wording_of
from loopwright.web.season.views import found
from loopwright.web.trial.fields import (
    TENSION,
    TRIAL_FIELDS,
    Field,
    ease_slide,
    moved_sliders,
    tension_slide,
    trial_form,
    unmoved,
)
from loopwright.web.trial.tried import tried_season

__all__ = ["keep", "show"]


class HtmxRequest(HttpRequest):
    """A request that knows whether a part of a page is asked for."""

    htmx: HtmxDetails


def _typed(asked: QueryDict, sliders: Sequence[Field], kept: Mapping[str, Any], reader: Reader) -> dict[str, str]:
    """Give what she wrote or moved, by field path, without what she left as it was shown."""
    typed = {path: str(asked[path]).strip() for path in TRIAL_FIELDS if path in asked}
    slid = {field.path for field in sliders}
    changed = {path: text for path, text in typed.items() if path in slid or not unmoved(kept, path, text, reader)}
    return moved_sliders(sliders, changed)


def _sliders(season: Season, planned: GarmentPlan, reader: Reader) -> list[Field]:
    """Give the sliders that bear on a garment: ease where it has to fit, stitches where there is a swatch."""
    garment = season.garment_by_key[planned.key]
    fits = planned.fits[0].points if planned.fits else ()
    sliders = [
        ease_slide(point.point, point.intended_cm, reader)
        for point in fits
        if point.point in ("bust_girth", "head_girth")
    ]
    if garment.swatch is not None:
        sliders.append(tension_slide(season.swatch_by_key[garment.swatch].gauge, reader))
    return sliders


def _held(sliders: Sequence[Field], typed: Mapping[str, str]) -> list[Field]:
    """Give the sliders standing where she moved them."""
    return [replace(field, value=typed[field.path].split()[0]) if field.path in typed else field for field in sliders]


@require_safe
def show(request: HttpRequest, key: str, garment_key: str) -> HttpResponse:
    """Show the bench, or only its answers while she tries something."""
    season = found(key)
    if garment_key not in season.garment_by_key:
        raise Http404(f"the season has no garment '{garment_key}'")
    wording, reader = wording_of(request, season), reader_of(request, season)
    kept = plan(season, reader).garment(garment_key)
    sliders = _sliders(season, kept, reader)
    fields = entry_fields(season, "garments", garment_key)
    typed = _typed(request.GET, sliders, fields, reader)
    tried, faults = tried_season(season, garment_key, typed, reader)
    changed = tried != season
    planned = plan(tried, reader).garment(garment_key) if changed else kept
    view = garment_view(tried, planned, wording)
    pattern = facts_of(season, season.garment_by_key[garment_key])
    charts = [chart.key for chart in season.charts if chart.garment in (None, garment_key)]
    form = trial_form(pattern, fields, typed, reader, charts)
    part = cast(HtmxRequest, request).htmx
    shown = {
        "key": key,
        "season": season,
        "view": view,
        "fields": (*form, *_held(sliders, typed)),
        "typed": typed,
        "faults": faults,
        "kept_colour": kept_words(season, request.GET.get("lot", ""), request.GET.get("kept", ""), garment_key),
        "look": planned_look_view(key, season, (tried, planned), typed, request.GET, reader),
        "changed": changed,
        "differences": differences(kept, planned, wording) if changed else (),
        "past": changes.history(key),
        "path": request.path,
        "reader": reader,
        "part": bool(part),
    }
    response = render(request, "garment/_answers.html" if part else "garment/page.html", shown)
    response["Vary"] = "HX-Request, Cookie"
    return response


@require_POST
def keep(request: HttpRequest, key: str, garment_key: str) -> HttpResponse:
    """Keep what she tried; with a fault nothing is written."""
    season = found(key)
    if garment_key not in season.garment_by_key:
        raise Http404(f"the season has no garment '{garment_key}'")
    reader = reader_of(request, season)
    sliders = _sliders(season, plan(season, reader).garment(garment_key), reader)
    typed = _typed(request.POST, sliders, entry_fields(season, "garments", garment_key), reader)
    typed.pop(TENSION, None)  # a tension is measured, not wished
    place = reverse("garment", args=[key, garment_key])
    name = season.garment_by_key[garment_key].name
    try:
        changes.change_entry(key, "garments", garment_key, f"changed {name}", typed)
    except (changes.ChangeRefused, BadInput):
        return HttpResponseRedirect(f"{place}?{urlencode(typed)}")  # the bench says what is wrong
    return HttpResponseRedirect(place)
