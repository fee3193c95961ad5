"""Pictures of a garment, drawn when they are asked for, and the page on which other colours are tried."""

from __future__ import annotations

from typing import Any, cast

from django.http import Http404, HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.shortcuts import render
from django.views.decorators.http import require_safe
from django_htmx.middleware import HtmxDetails

from loopwright.documents.look import LookOfGarment
from loopwright.pictures.patch import Face
from loopwright.season import Season
from loopwright.units import BadInput
from loopwright.web.pictures.asked import Asked, asked_of, tried_look, typed_of
from loopwright.web.pictures.page import asked_again, look_view
from loopwright.web.png import png_response
from loopwright.web.reading import reader_of
from loopwright.web.season.views import found

__all__ = ["look", "show"]

VIEWS = ("front", "back", "fabric")


class HtmxRequest(HttpRequest):
    """A request that knows whether a part of a page is asked for."""

    htmx: HtmxDetails


def _garment(key: str, garment_key: str) -> Season:
    season = found(key)
    if garment_key not in season.garment_by_key:
        raise Http404(f"the season has no garment '{garment_key}'")
    return season


@require_safe
def show(request: HttpRequest, key: str, garment_key: str, view: str) -> HttpResponseBase:
    """Give one picture as a PNG. A browser keeps it and asks whether it is still the same."""
    season = _garment(key, garment_key)
    if view not in VIEWS:
        raise Http404(f"there is no picture '{view}'")
    try:
        look = tried_look(season, garment_key, typed_of(request.GET), reader_of(request, season))
        content = _drawn(look, view, asked_of(request.GET, look))
    except BadInput as error:
        raise Http404(str(error)) from error
    return png_response(request, content)


def _drawn(look: LookOfGarment, view: str, asked: Asked) -> bytes:
    colours = {**look.colours, **asked.colours}
    if view == "fabric":
        return look.fabric(colours, width_px=asked.size_px)
    return look.picture(cast(Face, view), edges=asked.edges, longest_px=asked.size_px).png(colours)


@require_safe
def look(request: HttpRequest, key: str, garment_key: str) -> HttpResponse:
    """Show the pictures in the colours that are asked for: the section alone, or a page of its own without script."""
    season = _garment(key, garment_key)
    garment = season.garment_by_key[garment_key]
    made = tried_look(season, garment_key, typed_of(request.GET), reader_of(request, season))
    part = cast(HtmxRequest, request).htmx
    shown: dict[str, Any] = {
        "key": key,
        "season": season,
        "garment": garment,
        "look": look_view(
            key,
            garment,
            made,
            asked_again(request.GET, made),
            typed_of(request.GET),
            is_large=not part or "large" in request.GET,
        ),
        "path": request.path,
        "reader": reader_of(request, season),
    }
    response = render(request, "pictures/_part.html" if part else "pictures/page.html", shown)
    response["Vary"] = "HX-Request, Cookie"
    return response
