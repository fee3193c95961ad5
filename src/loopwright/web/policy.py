"""What a browser may do with our pages, and how much it may send."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from django.conf import settings
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import render

from loopwright.units import BadInput

__all__ = ["CONTENT_POLICY", "ContentPolicy", "SaysWhatIsWrong", "UploadLimit"]

CONTENT_POLICY: Final = "; ".join(
    (
        "default-src 'self'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data:",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'none'",
    )
)
"""Scripts and styles from our own files only, nothing from elsewhere, in nobody's frame. Source: W3C, Content Security
Policy Level 3."""

_ROOM_FOR_THE_FORM = 100_000

_Answer = Callable[[HttpRequest], HttpResponseBase]


class ContentPolicy:
    """Puts the content policy on every answer that has none of its own; the referrer stays on our own pages."""

    def __init__(self, get_response: _Answer) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        """Answer, with the policy in the head."""
        response = self.get_response(request)
        response.headers.setdefault("Content-Security-Policy", CONTENT_POLICY)
        response.headers.setdefault("Referrer-Policy", "same-origin")
        return response


class UploadLimit:
    """Refuses what is larger than a season file may be, before any of it is read."""

    def __init__(self, get_response: _Answer) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        """Answer, or say that it is too large."""
        said = request.META.get("CONTENT_LENGTH") or "0"
        most: int = settings.UPLOAD_LIMIT_BYTES
        if said.isdigit() and int(said) > most + _ROOM_FOR_THE_FORM:
            text = f"This is larger than the {most // 1_000_000} MB that can be taken in."
            return HttpResponse(text, status=413, content_type="text/plain; charset=utf-8")
        return self.get_response(request)


class SaysWhatIsWrong:
    """Shows a season that cannot be planned as a page that says why, in place of an error of ours."""

    def __init__(self, get_response: _Answer) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        """Answer."""
        return self.get_response(request)

    def process_exception(self, request: HttpRequest, exception: Exception) -> HttpResponse | None:
        """Say what is wrong in what she wrote; any other exception is ours and stays one."""
        if not isinstance(exception, BadInput):
            return None
        return render(request, "422.html", {"fault": str(exception)}, status=422)
