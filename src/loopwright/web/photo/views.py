"""The page of a photo: send it, find its colours, keep one as the screen colour of a lot. The photo is not kept."""

from __future__ import annotations

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.utils.http import urlencode
from django.views.decorators.http import require_POST, require_safe

from loopwright.colour import read_hex, write_hex
from loopwright.colour.photo import MOST_COLOURS, measure_photo
from loopwright.season import Season
from loopwright.season.photo_words import PHOTO_CAUTIONS
from loopwright.store import changes
from loopwright.units import BadInput
from loopwright.web.photo.form import PLACES, Sent, nothing_sent, read_sent
from loopwright.web.photo.page import FoundView, found_view, lot_choices
from loopwright.web.reading import reader_of
from loopwright.web.season.views import found

__all__ = ["keep", "measure", "show"]


@require_safe
def show(request: HttpRequest, key: str) -> HttpResponse:
    """Show the form for a photo; ``lot`` names the lot that the colour is for."""
    return _page(request, key, found(key), nothing_sent(request.GET.get("lot", "")))


@require_POST
def measure(request: HttpRequest, key: str) -> HttpResponse:
    """Find the colours in the photo that was sent; with a fault the form holds what was sent."""
    season, sent = found(key), read_sent(request)
    if sent.faults or sent.pixels is None:
        return _page(request, key, season, sent)
    try:
        colours = measure_photo(sent.pixels, white=sent.points["white"], yarn=sent.points["yarn"], exactly=sent.exactly)
    except BadInput as error:
        sent.faults.append(str(error))
        return _page(request, key, season, sent)
    return _page(request, key, season, sent, found_view(colours, sent.pixels))


@require_POST
def keep(request: HttpRequest, key: str) -> HttpResponse:
    """Keep the colour that was picked as the screen colour of a lot."""
    season = found(key)
    lots = {lot.key: lot for lot in season.cupboard}
    lot = lots.get(request.POST.get("lot", ""))
    if lot is None:
        raise Http404("the season has no such lot")
    picked = request.POST.get("which", "")
    try:
        shade = write_hex(read_hex(request.POST.get(f"colour-{picked}", "")))
    except BadInput as error:
        return _page(request, key, season, nothing_sent(lot.key, [str(error.at("Colour"))]))
    changes.change_entry(key, "cupboard", lot.key, f"gave {lot.colour or lot.key} the colour {shade}", {"shade": shade})
    return HttpResponseRedirect(f"{reverse('colour-photo', args=[key])}?{urlencode({'lot': lot.key, 'kept': shade})}")


def _page(request: HttpRequest, key: str, season: Season, sent: Sent, view: FoundView | None = None) -> HttpResponse:
    lots = lot_choices(season)
    shown: dict[str, Any] = {
        "key": key,
        "season": season,
        "view": view,
        "typed": sent.typed,
        "picture": sent.picture,
        "faults": sent.faults,
        "places": PLACES,
        "points": {name: point for name, point in sent.points.items() if point is not None},
        "numbers": [str(number) for number in range(1, MOST_COLOURS + 1)],
        "lots": lots,
        "kept": _kept(request, {lot.key: (lot.name, lot.shade) for lot in lots}),
        "cautions": PHOTO_CAUTIONS,
        "past": changes.history(key),
        "path": reverse("colour-photo", args=[key]),
        "reader": reader_of(request, season),
    }
    return render(request, "photo/page.html", shown, status=422 if sent.faults else 200)


def _kept(request: HttpRequest, lots: dict[str, tuple[str, str]]) -> str:
    """Say what was kept a moment ago, as long as it stands."""
    name, shade = lots.get(request.GET.get("lot", ""), ("", ""))
    return f"Kept: {name} is shown as {shade} from now on." if shade and shade == request.GET.get("kept") else ""
