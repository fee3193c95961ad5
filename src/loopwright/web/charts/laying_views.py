"""Laying a chart on the garment that it is for: shown anew as she chooses, kept, taken off."""

from __future__ import annotations

from typing import cast
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe
from django_htmx.middleware import HtmxDetails

from loopwright.chart import NamedChart
from loopwright.season import Season
from loopwright.season.chart_garment import ChartOnGarment, NotLaid, chart_on_garment
from loopwright.season.colour_places import FIELD_NAMES
from loopwright.store import changes
from loopwright.store.errors import ChangeRefused
from loopwright.units import BadInput
from loopwright.web.charts.form import Refused
from loopwright.web.charts.laying import laying_view
from loopwright.web.charts.laying_form import choice_typed
from loopwright.web.charts.views import bench, found_chart, frame, told
from loopwright.web.reading import wording_of

__all__ = ["lay", "show", "take_off"]


class HtmxRequest(HttpRequest):
    """A request that knows whether a part of a page is asked for."""

    htmx: HtmxDetails


def _section(key: str, chart_key: str, place: str = "") -> HttpResponseRedirect:
    query = f"?{urlencode({'place': place})}" if place else ""
    return HttpResponseRedirect(f"{reverse('chart', args=[key, chart_key])}{query}#on-garment")


@require_safe
def show(request: HttpRequest, key: str, chart_key: str) -> HttpResponse:
    """Show the section alone with what she chooses; a browser that asks for a whole page gets the chart's."""
    season, named = found_chart(key, chart_key)
    if not cast(HtmxRequest, request).htmx:
        return HttpResponseRedirect(f"{reverse('chart', args=[key, chart_key])}?{request.GET.urlencode()}#on-garment")
    view = laying_view(key, season, named, request.GET.dict(), wording_of(request, season))
    shown = frame(request, key, season) | {"chart": named, "laying": view}
    response = render(request, "charts/_on_garment.html", shown)
    response["Vary"] = "HX-Request, Cookie"
    return response


@require_POST
def lay(request: HttpRequest, key: str, chart_key: str) -> HttpResponse:
    """Keep where the chart lies; with a fault nothing is written and the form holds what she typed."""
    season, named = found_chart(key, chart_key)
    typed = {name: str(text) for name, text in request.POST.items() if name != "shown"}
    try:
        on = _garment_of(season, named)
        choice = choice_typed(on, typed)
        says = f"laid {named.name} on the {FIELD_NAMES[choice.place]}"
        wanted = {f"colours.{choice.place}": on.text(choice)}
        changes.change_entry(key, "garments", on.garment.key, says, wanted)
    except (ChangeRefused, BadInput) as error:
        return bench(request, key, season, named, Refused("laying", told(error), typed))
    return _section(key, chart_key, choice.place)


@require_POST
def take_off(request: HttpRequest, key: str, chart_key: str) -> HttpResponse:
    """Take the chart off a part of its garment; undo lays it there again."""
    season, named = found_chart(key, chart_key)
    place = request.POST.get("place", "")
    try:
        on = _garment_of(season, named)
        if place not in [one.place for one in on.kept]:
            raise BadInput(found=place, wanted="a part that the chart lies on", place="Take it off")
        says = f"took {named.name} off the {FIELD_NAMES[place]}"
        changes.change_entry(key, "garments", on.garment.key, says, {f"colours.{place}": None})
    except (ChangeRefused, BadInput) as error:
        return bench(request, key, season, named, Refused("laying", told(error)))
    return _section(key, chart_key)


def _garment_of(season: Season, named: NamedChart) -> ChartOnGarment:
    on = chart_on_garment(season, named.key)
    if isinstance(on, NotLaid):
        raise BadInput(found=named.name, wanted="a chart that can be laid on its garment")
    return on
