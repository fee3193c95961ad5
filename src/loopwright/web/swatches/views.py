"""The page of swatches: what each tells, and keeping what she counts, washes and weighs."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from loopwright.fabric import STRUCTURES
from loopwright.fit.ways_out import Repeat, read_repeat
from loopwright.season import Season, entry_fields
from loopwright.store import changes
from loopwright.units import BadInput, read_length_cm
from loopwright.web.reading import as_kept, reader_of, wording_of
from loopwright.web.season.views import found
from loopwright.web.swatches.form import empty_form, fields_of, kept_fields, under_its_label, written
from loopwright.web.swatches.page import swatch_parts

__all__ = ["add", "keep", "show"]

T = TypeVar("T")
NEW = "a new swatch"
"""Stands for the swatch that is to be added, beside the keys of the others: no key has spaces."""


@require_safe
def show(request: HttpRequest, key: str) -> HttpResponse:
    """Show every swatch of the season."""
    return _page(request, key, found(key))


@require_POST
def keep(request: HttpRequest, key: str, swatch_key: str) -> HttpResponse:
    """Keep what she wrote about a swatch; with a fault nothing is written and the form holds it."""
    season = found(key)
    if swatch_key not in season.swatch_by_key:
        raise Http404(f"the season has no swatch '{swatch_key}'")
    kept = kept_fields(entry_fields(season, "swatches", swatch_key))
    typed = as_kept(written(request.POST), kept, reader_of(request, season))
    try:
        changes.change_entry(key, "swatches", swatch_key, f"changed the swatch {swatch_key}", fields_of(typed))
    except changes.ChangeRefused as error:
        faults = tuple(under_its_label(fault) for fault in error.faults)
        return _page(request, key, season, typed={swatch_key: typed}, faults={swatch_key: faults})
    return HttpResponseRedirect(f"{reverse('swatches', args=[key])}#{swatch_key}")


@require_POST
def add(request: HttpRequest, key: str) -> HttpResponse:
    """Add a swatch; with a fault nothing is written and the form holds what was typed."""
    season = found(key)
    typed = written(request.POST)
    chosen = {name: request.POST.get(name, "").strip() for name in ("name", "fabric", "yarn", "held_with")}
    fields = _new_fields(typed, chosen)
    try:
        if not chosen["name"]:
            raise BadInput(chosen["name"], "a name for the swatch, such as lace", place="Name")
        added = changes.add_entry(key, "swatches", chosen["name"], f"added the swatch {chosen['name']}", fields)
    except (changes.ChangeRefused, BadInput) as error:
        faults = (str(error),) if isinstance(error, BadInput) else tuple(under_its_label(one) for one in error.faults)
        return _page(request, key, season, typed={NEW: typed | chosen}, faults={NEW: faults})
    return HttpResponseRedirect(f"{reverse('swatches', args=[key])}#{added}")


def _new_fields(typed: Mapping[str, str], chosen: Mapping[str, str]) -> dict[str, Any]:
    yarns = [chosen[name] for name in ("yarn", "held_with") if chosen[name]]
    return {name: value for name, value in fields_of(typed).items() if value not in ("", None)} | {
        "yarns": yarns,
        **({"fabric": chosen["fabric"]} if chosen["fabric"] else {}),
    }


def _asked(request: HttpRequest, name: str, label: str, read: Callable[[str], T], faults: list[str]) -> T | None:
    """Read what was asked for; a fault is told, and nothing is then asked."""
    text = request.GET.get(name, "").strip()
    if not text:
        return None
    try:
        return read(text)
    except BadInput as error:
        faults.append(str(error.at(label)))
        return None


def _page(
    request: HttpRequest,
    key: str,
    season: Season,
    *,
    typed: Mapping[str, Mapping[str, str]] | None = None,
    faults: Mapping[str, tuple[str, ...]] | None = None,
) -> HttpResponse:
    typed, faults, unreadable = typed or {}, faults or {}, list[str]()
    wording = wording_of(request, season)
    repeat: Repeat | None = _asked(request, "repeat", "Stitch repeat", read_repeat, unreadable)
    length_cm = _asked(request, "length", "Length after washing", read_length_cm, unreadable)
    shown = {
        "key": key,
        "season": season,
        "swatches": swatch_parts(season, wording, repeat=repeat, length_cm=length_cm, typed=typed, faults=faults),
        "asked": {name: request.GET.get(name, "") for name in ("repeat", "length")},
        "unreadable": unreadable,
        "new": {"name": "", "yarn": "", "held_with": "", "fabric": "", **typed.get(NEW, {})},
        "new_fields": empty_form(wording.reader, typed.get(NEW)),
        "new_faults": faults.get(NEW, ()),
        "fabrics": [(fabric, wording.fabric(fabric)) for fabric in sorted(STRUCTURES)],
        "tension": wording.word("tension"),
        "past": changes.history(key),
        "path": reverse("swatches", args=[key]),
        "reader": reader_of(request, season),
    }
    return render(request, "swatches/page.html", shown, status=422 if faults else 200)
