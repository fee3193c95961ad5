"""The page of patterns: what the season holds, and a size block read, shown back and kept."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final, cast

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe
from django_htmx.middleware import HtmxDetails

from loopwright.body import Wearer
from loopwright.fabric import STRUCTURES
from loopwright.files import FileFault
from loopwright.pattern import Construction, PatternFacts, read_size_block, to_pattern_fields
from loopwright.pattern.size_block import fields_into
from loopwright.season import Season
from loopwright.store import changes
from loopwright.store.errors import ChangeRefused
from loopwright.units import BadInput
from loopwright.web.patterns.model import pasted_view, pattern_views
from loopwright.web.reading import reader_of, wording_of
from loopwright.web.season.views import found

__all__ = ["keep", "read", "show"]

MOST_CHARACTERS: Final = 20_000
"""Of a pasted block; the longest that is printed has under two thousand."""
TYPED: Final = {
    "name": "Name",
    "by": "Designer",
    "construction": "Built as",
    "wearer": "For",
    "fabric": "Fabric",
    "gauge": "Tension",
    "sizes": "Sizes",
    "ball_length": "Length of a ball",
    "ball_mass": "Mass of a ball",
}
"""The label of each field beside the pasted text, by its name in the season file."""


class HtmxRequest(HttpRequest):
    """A request that knows whether a part of a page is asked for."""

    htmx: HtmxDetails


@require_safe
def show(request: HttpRequest, key: str) -> HttpResponse:
    """Show the season's patterns, and a field to paste a size block into."""
    return render(request, "patterns/page.html", _shown(request, key, found(key)))


def _shown(request: HttpRequest, key: str, season: Season) -> dict[str, Any]:
    return {
        "key": key,
        "season": season,
        "patterns": pattern_views(season, wording_of(request, season)),
        "past": changes.history(key),
        "path": reverse("patterns", args=[key]),
        "reader": reader_of(request, season),
        "link": lambda garment: reverse("garment", args=[key, garment]),
        "pasted": None,
        "refused": (),
        "typed": {},
        "labels": TYPED,
        "constructions": list(Construction),
        "fabrics": list(STRUCTURES),
        "wearers": list(Wearer),
    }


@require_POST
def read(request: HttpRequest, key: str) -> HttpResponse:
    """Read a pasted block and show it back; nothing is written."""
    season = found(key)
    text = _text(request)
    if len(text) > MOST_CHARACTERS:
        return _page(request, key, season, text[:MOST_CHARACTERS], refused=[_too_long(text)])
    return _page(request, key, season, text)


def _text(request: HttpRequest) -> str:
    # A browser ends the lines of a form's text as the protocol wants them, not as they were.
    return request.POST.get("text", "").replace("\r\n", "\n")


def _too_long(text: str) -> str:
    return f"found {len(text)} characters; wanted a pattern's size block, at most {MOST_CHARACTERS}"


def _page(
    request: HttpRequest, key: str, season: Season, text: str, *, refused: list[str] | None = None
) -> HttpResponse:
    """Show a block back, with why it was not kept."""
    typed = _typed(request)
    block = read_size_block(text)
    pasted = pasted_view(block, text, typed) if text.strip() else None
    faults = list(refused or ())
    if pasted is None:
        faults.append("found no text; wanted the lines of a pattern that state its sizes")
    shown = {**_shown(request, key, season), "pasted": pasted, "refused": faults, "typed": typed}
    part = cast(HtmxRequest, request).htmx
    status = 422 if not part and (faults or block.faults) else 200  # htmx leaves a page as it is where it is not 200
    response = render(request, "patterns/_pasted.html" if part else "patterns/page.html", shown, status=status)
    response["Vary"] = "HX-Request, Cookie"
    return response


def _typed(request: HttpRequest) -> dict[str, str]:
    return {name: request.POST[name].strip() for name in TYPED if name in request.POST}


@require_POST
def keep(request: HttpRequest, key: str) -> HttpResponse:
    """Keep a block in a pattern, or as a new one; with a fault nothing is written and the text stays on the page."""
    season = found(key)
    text = _text(request)
    if len(text) > MOST_CHARACTERS:
        return _page(request, key, season, text[:MOST_CHARACTERS], refused=[_too_long(text)])
    block = read_size_block(text)
    if block.faults or not (block.rows or block.yarn):
        return _page(request, key, season, text)
    into = request.POST.get("into", "")
    if into and into not in season.pattern_by_key:
        raise Http404(f"the season has no pattern '{into}'")
    fields = to_pattern_fields(block)
    try:
        kept = _change(key, season.pattern_by_key[into], fields) if into else _add(key, {**fields, **_said(request)})
    except ChangeRefused as error:
        return _page(request, key, season, text, refused=[str(_labelled(fault)) for fault in error.faults])
    except BadInput as error:
        return _page(request, key, season, text, refused=[str(error)])
    return HttpResponseRedirect(f"{reverse('patterns', args=[key])}#{kept}")


def _said(request: HttpRequest) -> dict[str, str]:
    """Give the fields that were filled in."""
    return {name: value for name, value in _typed(request).items() if value}


def _change(key: str, pattern: PatternFacts, fields: Mapping[str, Any]) -> str:
    changes.change_entry(
        key, "patterns", pattern.key, f"read the sizes of {pattern.name}", fields_into(pattern, fields)
    )
    return pattern.key


def _add(key: str, fields: Mapping[str, Any]) -> str:
    name = fields.get("name", "")
    if not name:
        raise BadInput("nothing", "the pattern's name", place=TYPED["name"])
    return changes.add_entry(key, "patterns", name, f"added the pattern {name}", fields)


def _labelled(fault: FileFault) -> FileFault:
    """Put a fault under the label of its field, where it has one on the page."""
    for name, label in TYPED.items():
        if fault.path.endswith(f".{name}"):
            return FileFault.make(fault.found, fault.wanted, path=label, hint=fault.hint)
    return fault
