"""Migrations are tried on the database of the tests."""

from pathlib import Path

import pytest

from tests.store.database import data_folder, empty_store

__all__ = ["empty_store"]

data_folder()


@pytest.fixture(autouse=True)
def folder(empty_store: Path) -> Path:
    """The data folder, with an empty database in it."""
    return empty_store
