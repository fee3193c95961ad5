"""The people of a season: looked at all together, written one by one."""

from __future__ import annotations

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_http_methods, require_safe

from loopwright.body import MEASURES, Wearer
from loopwright.pictures import tape_drawing, tape_words
from loopwright.season import Season, entry_fields
from loopwright.store import changes
from loopwright.store.errors import ChangeRefused
from loopwright.units import BadInput
from loopwright.web.bodies.form import day_of, kept_fields, new_person, person_form, told, typed_fields
from loopwright.web.bodies.page import people_view, person_view
from loopwright.web.reading import as_kept, reader_of, wording_of
from loopwright.web.season.views import found

__all__ = ["person", "show", "tape"]

_LOOK = ["GET", "HEAD", "POST"]


@require_http_methods(_LOOK)
def show(request: HttpRequest, key: str) -> HttpResponse:
    """Show everyone, or take in a new person."""
    season = found(key)
    faults: list[str] = []
    if request.method == "POST":
        try:
            typed = new_person(request.POST)
            added = changes.add_entry(key, "bodies", typed["name"], f"added {typed['name']}", typed)
            return HttpResponseRedirect(reverse("body", args=[key, added]))
        except ChangeRefused as error:
            faults = [told(fault) for fault in error.faults]
        except BadInput as error:
            faults = [str(error)]
    shown = _shown(request, key, season) | {
        "people": people_view(season, wording_of(request, season)),
        "faults": faults,
        "typed": typed_fields(request.POST),
        "wearers": tuple(Wearer),
    }
    return render(request, "bodies/page.html", shown, status=422 if faults else 200)


@require_http_methods(_LOOK)
def person(request: HttpRequest, key: str, body_key: str) -> HttpResponse:
    """Show one person's form, or keep what was written; with a fault nothing is written and it stays on the page."""
    season = found(key)
    if body_key not in season.body_by_key:
        raise Http404(f"the season has no body '{body_key}'")
    faults: list[str] = []
    if request.method == "POST":
        faults = _keep(request, key, season, body_key)
        if not faults:
            return HttpResponseRedirect(f"{reverse('bodies', args=[key])}#body-{body_key}")
    body = season.body_by_key[body_key]
    typed = typed_fields(request.POST)
    shown = _shown(request, key, season) | {
        "person": person_view(season, body, wording_of(request, season)),
        "fields": person_form(entry_fields(season, "bodies", body_key), typed, reader_of(request, season)),
        "measured_on": request.POST.get("measured_on", season.today.isoformat()),
        "all_again": "all_again" in request.POST,
        "faults": faults,
    }
    return render(request, "bodies/person.html", shown, status=422 if faults else 200)


def _shown(request: HttpRequest, key: str, season: Season) -> dict[str, Any]:
    return {
        "key": key,
        "season": season,
        "past": changes.history(key),
        "path": request.path,
        "reader": reader_of(request, season),
        "words": tape_words,
    }


def _keep(request: HttpRequest, key: str, season: Season, body_key: str) -> list[str]:
    """Keep what was written; give what is wrong with it."""
    name = season.body_by_key[body_key].name
    kept = kept_fields(entry_fields(season, "bodies", body_key))
    try:
        changes.change_body(
            key,
            body_key,
            f"changed the measures of {name}",
            as_kept(typed_fields(request.POST), kept, reader_of(request, season)),
            measured_on=day_of(request.POST, season.today),
            all_again="all_again" in request.POST,
        )
    except ChangeRefused as error:
        return [told(fault) for fault in error.faults]
    except BadInput as error:
        return [str(error)]
    return []


@require_safe
@cache_control(max_age=86400)
def tape(request: HttpRequest, measure: str) -> HttpResponse:
    """Give the drawing of where the tape lies."""
    if measure not in MEASURES:
        raise Http404(f"there is no measure '{measure}'")
    return HttpResponse(tape_drawing(measure), content_type="image/svg+xml")
