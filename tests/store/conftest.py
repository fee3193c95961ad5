"""Every test of the store has an empty database, and two seasons at hand."""

import datetime as dt
from pathlib import Path

import pytest

from loopwright.files import demo_text, read_season_text
from loopwright.season import Season
from tests.store.database import data_folder, empty_store

__all__ = ["empty_store"]

data_folder()


@pytest.fixture(autouse=True)
def folder(empty_store: Path) -> Path:
    """The data folder, with an empty database in it."""
    return empty_store


@pytest.fixture
def text() -> str:
    """A season file with comments."""
    return demo_text()


@pytest.fixture
def winter(text: str) -> Season:
    """A season with five garments."""
    return read_season_text(text, name="winter.toml", format="toml")


@pytest.fixture
def later(winter: Season) -> Season:
    """The same a week later."""
    return winter.model_copy(update={"today": winter.today + dt.timedelta(days=7)})
