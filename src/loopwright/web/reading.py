"""In which measures and words a page is read: the reader's own choice, kept in a cookie, else the season's."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final, get_args

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_POST

from loopwright.season import Season
from loopwright.season.wording import Wording
from loopwright.units import Measures, Reader, Words, read_length_cm, write_length

__all__ = ["as_kept", "choose_reading", "kept_text", "reader_of", "wording_of"]

A_YEAR_S = 365 * 24 * 3600
EIGHTHS: Final = 2
_LENGTH: Final = re.compile(r"-?[\d.]+ cm")


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


def kept_text(kept: str, reader: Reader) -> str:
    """Give what is kept as this reader writes it in a form: a length in her measures, all else as it stands."""
    if reader.measures == "metric" or not _LENGTH.fullmatch(kept):
        return kept
    return write_length(read_length_cm(kept, negative=True), reader, EIGHTHS).replace("−", "-")


def as_kept(typed: Mapping[str, str], kept: Mapping[str, str], reader: Reader) -> dict[str, str]:
    """Give what was typed, and for a field that was left as it was shown, exactly what is kept.

    :param kept: by field, in the words of the season file; what is shown is rounded.
    """
    return {
        name: kept[name] if name in kept and text == kept_text(kept[name], reader) else text
        for name, text in typed.items()
    }


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
