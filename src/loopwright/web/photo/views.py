"""The page of a photo: send it, find its colours, keep one as the screen colour of a lot. The photo is not kept."""

from __future__ import annotations

from collections.abc import Mapping
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
from loopwright.store.photos import photo_bytes
from loopwright.units import BadInput
from loopwright.web.photo.form import PLACES, Sent, nothing_sent, read_sent
from loopwright.web.photo.lots import kept_words, lot_choices, seen_in
from loopwright.web.photo.page import FoundView, found_view
from loopwright.web.photo.purpose import ANSWER, Purpose, purpose_of
from loopwright.web.reading import reader_of
from loopwright.web.season.views import found

__all__ = ["keep", "measure", "show"]


@require_safe
def show(request: HttpRequest, key: str) -> HttpResponse:
    """Show the form for a photo; ``lot``, or ``garment`` and ``role``, say what the colour is for.

    With ``of=lot`` the photo is the one that is kept with the lot.
    """
    season = found(key)
    purpose = purpose_of(season, request.GET)
    kept = kept_words(season, purpose.lot, request.GET.get("kept", ""))
    if kept:
        seen = seen_in(season, purpose.lot)
        return _page(
            request, key, season, Purpose(), nothing_sent(), kept={"says": kept, "lot": purpose.lot, "seen": seen}
        )
    picture = _photo_of(key, purpose.lot) if request.GET.get("of") == "lot" else b""
    return _page(request, key, season, purpose, nothing_sent(picture))


def _photo_of(key: str, lot: str) -> bytes:
    """Give the photo that is kept with a lot; nothing where there is none."""
    digest = changes.photos_of(key).get(lot)
    return (photo_bytes(digest, small=False) if digest else None) or b""


@require_POST
def measure(request: HttpRequest, key: str) -> HttpResponse:
    """Find the colours in the photo that was sent; with a fault the form holds what was sent."""
    season, sent = found(key), read_sent(request)
    purpose = purpose_of(season, request.POST)
    if sent.faults or sent.pixels is None:
        return _page(request, key, season, purpose, sent)
    try:
        colours = measure_photo(sent.pixels, white=sent.points["white"], yarn=sent.points["yarn"], exactly=sent.exactly)
    except BadInput as error:
        sent.faults.append(str(error))
        return _page(request, key, season, purpose, sent)
    return _page(request, key, season, purpose, sent, found_view(colours, sent.pixels))


@require_POST
def keep(request: HttpRequest, key: str) -> HttpResponse:
    """Keep the colour that was picked as the screen colour of a lot, or only try it in a garment's pictures."""
    season = found(key)
    purpose = purpose_of(season, request.POST)
    wanted = request.POST.get("lot", "")
    lot = next((one for one in season.cupboard if one.key == wanted), None)
    if wanted and lot is None:
        raise Http404("the season has no such lot")
    only_tried = bool(purpose.garment) and "try" in request.POST
    try:
        shade = _picked(request)
        if lot is None and not only_tried:
            raise BadInput("", "the lot that it is kept for", place="For the lot")
    except BadInput as error:
        return _page(request, key, season, purpose, nothing_sent(faults=[str(error)]))
    if lot is None or only_tried:
        return HttpResponseRedirect(purpose.bench_trying(key, shade))
    changes.change_entry(key, "cupboard", lot.key, f"gave {lot.colour or lot.key} the colour {shade}", {"shade": shade})
    if purpose.garment:
        return HttpResponseRedirect(purpose.bench_kept(key, lot.key, shade))
    return HttpResponseRedirect(f"{reverse('colour-photo', args=[key])}?{urlencode({'lot': lot.key, 'kept': shade})}")


def _picked(request: HttpRequest) -> str:
    """Read the colour that is marked, as it was corrected."""
    try:
        return write_hex(read_hex(request.POST.get(f"colour-{request.POST.get('which', '')}", "")))
    except BadInput as error:
        raise error.at("Colour") from None


def _page(
    request: HttpRequest,
    key: str,
    season: Season,
    purpose: Purpose,
    sent: Sent,
    view: FoundView | None = None,
    kept: Mapping[str, Any] | None = None,
) -> HttpResponse:
    shown: dict[str, Any] = {
        "key": key,
        "season": season,
        "view": view,
        "purpose": purpose,
        "typed": sent.typed,
        "picture": sent.picture,
        "faults": sent.faults,
        "places": PLACES,
        "points": {name: point for name, point in sent.points.items() if point is not None},
        "numbers": [str(number) for number in range(1, MOST_COLOURS + 1)],
        "lots": lot_choices(season, purpose.lots),
        "kept": kept,
        "answer": ANSWER,
        "cautions": PHOTO_CAUTIONS,
        "past": changes.history(key),
        "path": purpose.page(key),
        "reader": reader_of(request, season),
    }
    return render(request, "photo/page.html", shown, status=422 if sent.faults else 200)
