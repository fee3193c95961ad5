"""Templates of the pages: those of the documents, and what a page needs beside them."""

from __future__ import annotations

from typing import Any

from django.conf import settings
from django.templatetags.static import static
from django.urls import reverse
from django_htmx.jinja import htmx_script
from jinja2 import Environment

from loopwright.documents import page_environment

__all__ = ["environment"]


def _at_home() -> bool:
    """Say whether the seasons are kept in a file on this machine, rather than on a guild's server."""
    return "sqlite" in settings.DATABASES["default"]["ENGINE"]


def environment(**options: Any) -> Environment:
    """Make the environment that Django's Jinja backend asks for."""
    made = page_environment(**options)
    made.globals.update(static=static, url=reverse, htmx_script=htmx_script, at_home=_at_home())
    return made
