"""The database of the tests: a file of its own, never the one of whoever runs them, and empty for every test.

``LOOPWRIGHT_TEST_DATABASE_URL`` names another database to run them on, such as PostgreSQL. It is emptied.
"""

import atexit
import os
import shutil
import tempfile
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from loopwright.web.setup import prepare

__all__ = ["data_folder", "empty_store"]


@cache
def data_folder() -> Path:
    """Give the data folder of this run; Django is set up on it once per process.

    A ``conftest.py`` calls this when it is imported: the modules of tests can import the models only after that.
    """
    for name in [name for name in os.environ if name.startswith("LOOPWRIGHT_") or name == "DATABASE_URL"]:
        value = os.environ.pop(name)
        if name == "LOOPWRIGHT_TEST_DATABASE_URL":
            os.environ["DATABASE_URL"] = value
    folder = tempfile.mkdtemp(prefix="loopwright-tests-")
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    return prepare(folder)


@pytest.fixture
def empty_store() -> Iterator[Path]:
    """A database without a season; gives the data folder."""
    folder = data_folder()
    _empty()
    yield folder
    _empty()


def _empty() -> None:
    from django.db import connection  # noqa: PLC0415 -- Django is set up by now

    from loopwright.store.models import Revision, SeasonRow  # noqa: PLC0415

    connection.close()
    SeasonRow.objects.all().delete()
    Revision.objects.all().delete()
    connection.close()
