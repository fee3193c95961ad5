"""A picture drawn for a browser, which keeps it and asks whether it is still the same."""

from __future__ import annotations

import hashlib

from django.http import HttpRequest, HttpResponse, HttpResponseNotModified
from django.http.response import HttpResponseBase

__all__ = ["png_response"]


def png_response(request: HttpRequest, content: bytes) -> HttpResponseBase:
    """Give a PNG, or that it is the one that the browser has."""
    tag = f'"{hashlib.sha256(content).hexdigest()[:32]}"'
    same = tag in (one.strip() for one in request.headers.get("If-None-Match", "").split(","))
    response: HttpResponseBase = HttpResponseNotModified() if same else HttpResponse(content, content_type="image/png")
    response["ETag"] = tag
    response["Cache-Control"] = "private, no-cache"
    return response
