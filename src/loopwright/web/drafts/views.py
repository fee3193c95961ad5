"""Drafting a garment of one's own, and any garment over a range of sizes."""

from __future__ import annotations

from collections.abc import Mapping

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from loopwright.body import SIZE_TABLES, SizeTable
from loopwright.documents.sizes_view import sizes_view
from loopwright.season import Season
from loopwright.season.grading import graded
from loopwright.store import changes
from loopwright.units import BadInput
from loopwright.web.drafts.form import LABELS, choices_of, fields_of, under_its_label, written
from loopwright.web.reading import reader_of, wording_of
from loopwright.web.season.views import found

__all__ = ["add", "new", "sizes"]


@require_safe
def new(request: HttpRequest, key: str) -> HttpResponse:
    """Ask what is to be drafted."""
    return _page(request, key, found(key), written(request.GET), ())


@require_POST
def add(request: HttpRequest, key: str) -> HttpResponse:
    """Draft it and open its bench; with a fault nothing is written and the form holds what was typed."""
    season = found(key)
    typed = written(request.POST)
    try:
        fields = fields_of(typed)
        added = changes.add_entry(key, "garments", typed["name"], f"drafted {typed['name']}", fields)
    except (changes.ChangeRefused, BadInput) as error:
        faults = (str(error),) if isinstance(error, BadInput) else tuple(under_its_label(one) for one in error.faults)
        return _page(request, key, season, typed, faults)
    return HttpResponseRedirect(reverse("garment", args=[key, added]))


def _page(
    request: HttpRequest, key: str, season: Season, typed: Mapping[str, str], faults: tuple[str, ...]
) -> HttpResponse:
    shown = {
        "key": key,
        "season": season,
        "labels": LABELS,
        "choices": choices_of(season),
        "typed": typed,
        "faults": faults,
        "path": reverse("draft-new", args=[key]),
        "reader": reader_of(request, season),
    }
    return render(request, "drafts/new.html", shown, status=422 if faults else 200)


@require_safe
def sizes(request: HttpRequest, key: str, garment_key: str) -> HttpResponse:
    """Show a garment drafted in every size of its pattern, or over a table of bodies."""
    season = found(key)
    if garment_key not in season.garment_by_key:
        raise Http404(f"the season has no garment '{garment_key}'")
    garment = season.garment_by_key[garment_key]
    asked = request.GET.get("bodies", "")
    bodies: SizeTable | None = next((name for name in SIZE_TABLES if name == asked), None)
    if bodies is None and garment.pattern is None:
        bodies = "women"
    shown = {
        "key": key,
        "season": season,
        "garment": garment,
        "view": sizes_view(graded(season, garment, bodies), wording_of(request, season)),
        "bodies": bodies,
        "tables": SIZE_TABLES,
        "tension": wording_of(request, season).word("tension"),
        "path": reverse("garment-sizes", args=[key, garment_key]),
        "reader": reader_of(request, season),
    }
    return render(request, "drafts/sizes.html", shown)
