"""The page of the yarns, the page of one, and the page that adds one."""

from __future__ import annotations

from typing import Final, cast

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from loopwright.season.cupboard_search import search_words
from loopwright.store import changes
from loopwright.store.errors import ChangeRefused
from loopwright.units import BadInput
from loopwright.web.cupboard.views import HtmxRequest, found_cupboard, frame, number_of, searched
from loopwright.web.reading import reader_of, wording_of
from loopwright.web.yarns.form import fields_of, kept_fields, told, typed_fields, yarn_form
from loopwright.web.yarns.page import yarn_row

__all__ = ["add", "one", "show", "take_out"]

ON_A_PAGE: Final = 36
_LOOK: Final = ["GET", "HEAD", "POST"]


@require_safe
def show(request: HttpRequest, key: str) -> HttpResponse:
    """Show the yarns that a search finds, all of them where nothing is searched for."""
    cupboard, search = found_cupboard(key), searched(request)
    words, texts = search_words(search), cupboard.yarn_texts
    yarns = [yarn for yarn in cupboard.season.yarns if all(word in texts[yarn.key] for word in words)]
    pages = max(-(-len(yarns) // ON_A_PAGE), 1)
    number = number_of(request, "page", 1, pages)
    wording = wording_of(request, cupboard.season)
    page = yarns[(number - 1) * ON_A_PAGE : number * ON_A_PAGE]
    part = cast(HtmxRequest, request).htmx
    shown = {"key": key} if part else frame(request, key, cupboard)
    shown |= {
        "rows": [yarn_row(cupboard.season, yarn, cupboard.lots_of_yarn, wording) for yarn in page],
        "search": search,
        "found": f"{len(yarns)} of {wording.counted(len(cupboard.season.yarns), 'yarn')}." if search else "",
        "number": number,
        "pages": pages,
    }
    response = render(request, "yarns/_yarns.html" if part else "yarns/page.html", shown)
    response["Vary"] = "HX-Request, Cookie"
    return response


@require_http_methods(_LOOK)
def one(request: HttpRequest, key: str, yarn_key: str) -> HttpResponse:
    """Show one yarn with its form, or keep what was written; with a fault nothing is written and it stays."""
    cupboard = found_cupboard(key)
    yarn = cupboard.season.yarn_by_key.get(yarn_key)
    if yarn is None:
        raise Http404(f"the season has no yarn '{yarn_key}'")
    faults: tuple[str, ...] = ()
    typed = typed_fields(request.POST)
    if request.method == "POST":
        try:
            changes.change_entry(key, "yarns", yarn_key, f"changed the yarn {yarn.name}", fields_of(typed))
            return HttpResponseRedirect(f"{reverse('yarns', args=[key])}#{yarn_key}")
        except (BadInput, ChangeRefused) as error:
            faults = _faults(error)
    return _page(request, key, yarn_key, typed, faults)


def _page(
    request: HttpRequest, key: str, yarn_key: str, typed: dict[str, str], faults: tuple[str, ...]
) -> HttpResponse:
    cupboard = found_cupboard(key)
    yarn = cupboard.season.yarn_by_key[yarn_key]
    wording = wording_of(request, cupboard.season)
    shown = frame(request, key, cupboard) | {
        "yarn": yarn_row(cupboard.season, yarn, cupboard.lots_of_yarn, wording),
        "fields": yarn_form(kept_fields(yarn), reader_of(request, cupboard.season), typed),
        "faults": faults,
        "path": reverse("yarn", args=[key, yarn_key]),
    }
    return render(request, "yarns/yarn.html", shown, status=422 if faults else 200)


@require_http_methods(_LOOK)
def add(request: HttpRequest, key: str) -> HttpResponse:
    """Show the form of a new yarn, or add it; with a fault nothing is written and the form holds what was typed."""
    cupboard = found_cupboard(key)
    typed = typed_fields(request.POST)
    faults: tuple[str, ...] = ()
    if request.method == "POST":
        try:
            return HttpResponseRedirect(f"{reverse('yarns', args=[key])}#{_add(key, typed)}")
        except (BadInput, ChangeRefused) as error:
            faults = _faults(error)
    shown = frame(request, key, cupboard) | {
        "fields": yarn_form({}, reader_of(request, cupboard.season), typed),
        "faults": faults,
    }
    return render(request, "yarns/add.html", shown, status=422 if faults else 200)


def _add(key: str, typed: dict[str, str]) -> str:
    name = typed.get("name", "")
    if not name:
        raise BadInput("", "the name on the band", place="Name on the band")
    fields = {field: value for field, value in fields_of(typed).items() if value not in ("", None)}
    return changes.add_entry(key, "yarns", name, f"added the yarn {name}", fields)


@require_POST
def take_out(request: HttpRequest, key: str, yarn_key: str) -> HttpResponse:
    """Take a yarn out, unless something still needs it."""
    yarn = found_cupboard(key).season.yarn_by_key.get(yarn_key)
    if yarn is None:
        raise Http404(f"the season has no yarn '{yarn_key}'")
    try:
        changes.remove_entry(key, "yarns", yarn_key, f"took out the yarn {yarn.name}")
    except (BadInput, ChangeRefused) as error:
        return _page(request, key, yarn_key, {}, _faults(error))
    return HttpResponseRedirect(reverse("yarns", args=[key]))


def _faults(error: BadInput | ChangeRefused) -> tuple[str, ...]:
    return (str(error),) if isinstance(error, BadInput) else tuple(told(fault) for fault in error.faults)
