"""Every test of the pages has an empty database in a file of its own, and a browser without a screen."""

from pathlib import Path

import pytest
from django.test import Client

from loopwright.files import demo_text
from loopwright.season import Season
from tests.store.database import data_folder, empty_store
from tests.web.asking import HOST, load, season_in

__all__ = ["empty_store"]

data_folder()


@pytest.fixture(autouse=True)
def folder(empty_store: Path) -> Path:
    """The data folder, with an empty database in it."""
    return empty_store


@pytest.fixture
def browser() -> Client:
    return Client(headers={"host": HOST})


@pytest.fixture
def text() -> str:
    return demo_text()


@pytest.fixture
def season(text: str) -> Season:
    return season_in(text)


@pytest.fixture
def page(browser: Client, text: str) -> str:
    """The address of the demo season's page, which is loaded."""
    return load(browser, text)
