"""What else could I use: a role of a garment against the season's yarns, and a list of yarns that she brings."""

from __future__ import annotations

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from loopwright.files.catalogue import CatalogueFaults, read_catalogue_text
from loopwright.need.substitution import FIBRE_NAMES, YarnCatalogue
from loopwright.season.swap import swap
from loopwright.units import BadInput
from loopwright.web.reading import reader_of, wording_of
from loopwright.web.season.views import found
from loopwright.web.swap.page import swap_view

__all__ = ["MOST_BYTES", "show"]

MOST_BYTES = 2_000_000
"""Largest list of yarns that the page takes; a larger one is for the command line."""


@require_http_methods(["GET", "HEAD", "POST"])
def show(request: HttpRequest, key: str, garment_key: str) -> HttpResponse:
    """Show what else a role could be knitted in; a list that is sent along is read, ranked and not kept."""
    season = found(key)
    if garment_key not in season.garment_by_key:
        raise Http404(f"the season has no garment '{garment_key}'")
    garment = season.garment_by_key[garment_key]
    asked = request.POST if request.method == "POST" else request.GET
    roles = [role.key for role in garment.yarns]
    role = asked.get("role", "") if asked.get("role", "") in roles else roles[0]
    without = asked.get("without", "") if asked.get("without", "") in FIBRE_NAMES[:-1] else ""
    held = bool(asked.get("held"))
    catalogue, faults = _catalogue(request)
    ranked = swap(
        season, garment_key, role, catalogue=catalogue, held=held, without=[without] if without else [], top=12
    )
    shown = {
        "key": key,
        "season": season,
        "garment": garment,
        "view": swap_view(ranked, wording_of(request, season)),
        "roles": roles,
        "role": role,
        "fibres": FIBRE_NAMES[:-1],
        "without": without,
        "held": held,
        "faults": faults,
        "path": reverse("swap", args=[key, garment_key]),
        "reader": reader_of(request, season),
    }
    return render(request, "swap/page.html", shown, status=422 if faults else 200)


def _catalogue(request: HttpRequest) -> tuple[YarnCatalogue | None, tuple[str, ...]]:
    """Read the list that was sent along, or say what is wrong with it."""
    sent = request.FILES.get("list")
    if sent is None:
        return None, ()
    name = sent.name or "the list"
    if sent.size is None or sent.size > MOST_BYTES:
        return None, (f"{name}: found a file of over {MOST_BYTES:,} bytes; wanted a smaller one, or loopwright swap",)
    try:
        return read_catalogue_text(sent.read().decode("utf-8-sig"), name), ()
    except UnicodeDecodeError:
        return None, (f"{name}: found a file that is no text in UTF-8; wanted a CSV file",)
    except (CatalogueFaults, BadInput) as error:
        return None, tuple(str(error).splitlines()[:20])
