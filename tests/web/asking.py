"""Asking for pages as a browser does, and reading what comes back."""

from __future__ import annotations

from typing import Any

from django.test import Client

from loopwright.files import read_season_text
from loopwright.season import Season
from tests.documents.pages import text_of

__all__ = ["HOST", "body", "load", "season_in", "try_out", "words"]

HOST = "localhost"


def body(response: Any) -> str:
    """The page as HTML."""
    html: str = response.content.decode()
    return html


def words(response: Any) -> str:
    """The page's text."""
    return text_of(body(response))


def season_in(text: str) -> Season:
    return read_season_text(text, "season.toml", "toml")


def load(browser: Client, text: str) -> str:
    """Paste a season that is in order; give the address of its page."""
    response = browser.post("/load/", {"text": text})
    assert response.status_code == 302, words(response)
    address: str = response["Location"]
    return address


def try_out(browser: Client, address: str, **fields: str) -> Any:
    """Ask for a bench with something tried; two underscores stand for a dot."""
    return browser.get(address, {path.replace("__", "."): value for path, value in fields.items()})
