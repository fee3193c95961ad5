"""In which measures and words a page is read: the reader's own choice, kept in a cookie, else the season's."""

from __future__ import annotations

from typing import get_args

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_POST

from loopwright.season import Season
from loopwright.season.wording import Wording
from loopwright.units import Measures, Reader, Words

__all__ = ["choose_reading", "reader_of", "wording_of"]

A_YEAR_S = 365 * 24 * 3600


def reader_of(request: HttpRequest, season: Season) -> Reader:
    """Give the reader of this request."""
    measures = request.COOKIES.get("measures", season.measures)
    words = request.COOKIES.get("words", season.words)
    return Reader(
        measures=measures if measures in get_args(Measures) else season.measures,  # type: ignore[arg-type]
        words=words if words in get_args(Words) else season.words,  # type: ignore[arg-type]
    )


def wording_of(request: HttpRequest, season: Season) -> Wording:
    """Give the wording of this request's pages."""
    return Wording(reader_of(request, season), season.today.year)


@require_POST
def choose_reading(request: HttpRequest) -> HttpResponse:
    """Keep the reader's choice and go back to where she was."""
    back = request.POST.get("back", "/")
    if not url_has_allowed_host_and_scheme(back, allowed_hosts={request.get_host()}):
        back = "/"
    response = HttpResponseRedirect(back)
    for name, allowed in (("measures", get_args(Measures)), ("words", get_args(Words))):
        value = request.POST.get(name, "")
        if value in allowed:
            response.set_cookie(name, value, max_age=A_YEAR_S, samesite="Lax")
    return response
