"""The page of a season: its questions answered, its report, its file."""

from __future__ import annotations

from contextlib import suppress
from functools import partial

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.urls import reverse
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_POST, require_safe

from loopwright.documents import season_report, season_view
from loopwright.files import Format
from loopwright.season import Season, plan
from loopwright.store import changes
from loopwright.store.errors import NoSuchSeason, NothingToRedo, NothingToUndo
from loopwright.web.reading import reader_of, wording_of

__all__ = ["found", "put_away", "redo", "report", "save", "show", "undo"]

REPORT_POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:"
"""A report carries its own style and nothing else."""
FILES: dict[str, tuple[Format, str]] = {"toml": ("toml", "application/toml"), "json": ("json", "application/json")}
"""The format and content type of a season file, by its ending."""


def found(key: str) -> Season:
    """Give the season of this key, or say that there is none."""
    try:
        return changes.season_of(key)
    except NoSuchSeason as error:
        raise Http404(f"no season is kept under '{key}'") from error


@require_safe
def show(request: HttpRequest, key: str) -> HttpResponse:
    """Answer the season's questions."""
    season = found(key)
    view = season_view(season, plan(season, reader_of(request, season)), wording_of(request, season))
    shown = {
        "key": key,
        "season": season,
        "view": view,
        "past": changes.history(key),
        "link": partial(_garment_link, key),
        "path": request.path,
        "reader": reader_of(request, season),
    }
    return render(request, "season/page.html", shown)


def _garment_link(key: str, garment: str) -> str:
    return reverse("garment", args=[key, garment])


@require_safe
def report(request: HttpRequest, key: str) -> HttpResponse:
    """Give the report as one file that stands alone."""
    season = found(key)
    reader = reader_of(request, season)
    response = HttpResponse(season_report(season, plan(season, reader), reader))
    response["Content-Security-Policy"] = REPORT_POLICY
    response["Vary"] = "Cookie"
    return response


@require_safe
def save(request: HttpRequest, key: str, ending: str) -> HttpResponse:
    """Give the season file: as she loaded it while nothing has changed, else freshly written."""
    if ending not in FILES:
        raise Http404(f"a season is saved as toml or json, not as {ending}")
    found(key)
    format, content_type = FILES[ending]
    response = HttpResponse(changes.text_of(key, format), content_type=f"{content_type}; charset=utf-8")
    response["Content-Disposition"] = f'attachment; filename="{key}.{ending}"'
    return response


@require_POST
def undo(request: HttpRequest, key: str) -> HttpResponse:
    """Take back the last change."""
    try:
        with suppress(NothingToUndo):  # a second press of the button
            changes.undo(key)
    except NoSuchSeason as error:
        raise Http404(str(error)) from error
    return _back(request, key)


@require_POST
def redo(request: HttpRequest, key: str) -> HttpResponse:
    """Make the change that was taken back again."""
    try:
        with suppress(NothingToRedo):
            changes.redo(key)
    except NoSuchSeason as error:
        raise Http404(str(error)) from error
    return _back(request, key)


def _back(request: HttpRequest, key: str) -> HttpResponse:
    """Go back to where she was, if it is still there."""
    back = request.POST.get("back", "")
    if key not in changes.season_keys():
        return HttpResponseRedirect(reverse("home"))
    if not url_has_allowed_host_and_scheme(back, allowed_hosts={request.get_host()}):
        back = reverse("season", args=[key])
    return HttpResponseRedirect(back)


@require_POST
def put_away(request: HttpRequest, key: str) -> HttpResponse:
    """Put the season away; the first page can bring it back."""
    found(key)
    changes.forget_season(key)
    return HttpResponseRedirect(reverse("home"))
