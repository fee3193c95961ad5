"""The page of the cupboard: every lot, page by page, and a search that follows what is typed."""

from __future__ import annotations

from typing import Any, Final, cast

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe
from django_htmx.middleware import HtmxDetails

from loopwright.store import changes
from loopwright.store.cupboard import Cupboard, cupboard_of, lots_found
from loopwright.store.errors import NoSuchSeason
from loopwright.web.cupboard.page import cupboard_page
from loopwright.web.reading import reader_of, wording_of

__all__ = ["MOST_SEARCHED", "found_cupboard", "frame", "number_of", "searched", "show"]

ON_A_PAGE: Final = 36
MOST_SEARCHED: Final = 200
"""Letters of a search; beyond, they are not looked at."""


class HtmxRequest(HttpRequest):
    """A request that knows whether a part of a page is asked for."""

    htmx: HtmxDetails


def found_cupboard(key: str) -> Cupboard:
    """Give the cupboard of this season, or say that there is none."""
    try:
        return cupboard_of(key)
    except NoSuchSeason as error:
        raise Http404(f"no season is kept under '{key}'") from error


def searched(request: HttpRequest) -> str:
    """Give the words that are searched for."""
    return request.GET.get("search", "").strip()[:MOST_SEARCHED]


def number_of(request: HttpRequest, name: str, usual: int, most: int) -> int:
    """Give a whole number that is asked for, from 1; the usual one where none is."""
    text = request.GET.get(name, "")
    return min(max(int(text), 1), most) if text.isdecimal() and len(text) < 9 else usual


def frame(request: HttpRequest, key: str, cupboard: Cupboard) -> dict[str, Any]:
    """Give what every page of the cupboard holds."""
    return {
        "key": key,
        "season": cupboard.season,
        "path": request.path,
        "reader": reader_of(request, cupboard.season),
        "past": changes.history(key),
    }


@require_safe
def show(request: HttpRequest, key: str) -> HttpResponse:
    """Show the lots that a search finds, all of them where nothing is searched for."""
    cupboard, search = found_cupboard(key), searched(request)
    found = lots_found(cupboard, search, number_of(request, "page", 1, 1_000_000), ON_A_PAGE)
    part = cast(HtmxRequest, request).htmx
    shown = {"key": key} if part else frame(request, key, cupboard) | {"has_yarns": bool(cupboard.season.yarns)}
    shown |= {"search": search, "view": cupboard_page(cupboard, found, search, wording_of(request, cupboard.season))}
    response = render(request, "cupboard/_lots.html" if part else "cupboard/page.html", shown)
    response["Vary"] = "HX-Request, Cookie"
    return response
