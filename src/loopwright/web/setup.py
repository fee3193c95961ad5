"""Getting ready: the data folder, the secret key, Django and the database, once per process."""

from __future__ import annotations

import os
import tempfile
import time
from pathlib import Path

import django
from django.conf import settings
from django.core.management import call_command
from django.db import DatabaseError, IntegrityError, OperationalError, ProgrammingError, connection
from django.db.migrations.exceptions import MigrationSchemaMissing
from django.db.migrations.executor import MigrationExecutor
from django.utils.crypto import get_random_string

from loopwright.units import LoopwrightError
from loopwright.web import surroundings

__all__ = ["CannotStart", "prepare"]

SETTINGS = "loopwright.web.settings"
_KEY_LENGTH = 64
_OURS = "store"
_LOOKS = 50
_BETWEEN_LOOKS_S = 0.1


class CannotStart(LoopwrightError):
    """The data folder or the database cannot be used; the text says which and why."""


def prepare(data_folder: Path | str | None = None) -> Path:
    """Make the data folder, set up Django and bring the database up to date; a second call has nothing to do.

    :param data_folder: the data folder; left out, what ``LOOPWRIGHT_DATA`` says, or the usual place.
    :returns: the data folder.
    :raises CannotStart: the folder or the database cannot be used, or this process already works on another folder.
    """
    if data_folder is not None:
        os.environ["LOOPWRIGHT_DATA"] = str(Path(data_folder).expanduser().absolute())
    folder = surroundings.data_folder()
    if settings.configured and folder != getattr(settings, "DATA", None):
        raise CannotStart(f"{folder}: this process already works on another data folder")
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        _make_secret_key(folder / surroundings.SECRET_KEY_NAME)
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        raise CannotStart(f"{folder}: cannot be used as the data folder: {reason}") from error
    os.environ["DJANGO_SETTINGS_MODULE"] = SETTINGS
    django.setup()
    _bring_up_to_date()
    return folder


def _make_secret_key(path: Path) -> None:
    """Write a new secret key for the owner's eyes only, unless there is one; it appears whole or not at all."""
    if path.exists():
        return
    descriptor, draft = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")  # made with mode 0600
    try:
        with os.fdopen(descriptor, "w", encoding="ascii") as file:
            file.write(get_random_string(_KEY_LENGTH))
        _put_if_missing(Path(draft), path)
    finally:
        Path(draft).unlink(missing_ok=True)


def _put_if_missing(draft: Path, path: Path) -> None:
    try:
        os.link(draft, path)
    except FileExistsError:
        pass  # another process was quicker; its key counts
    except OSError:  # a file system without links
        draft.replace(path)


def _bring_up_to_date() -> None:
    """Run the migrations that are still to run; mostly there are none, which takes two queries to see.

    Where another process starts for the first time at the same moment, one of the two finds tables half made, or
    cannot have the file for a moment; so it looks again.
    """
    for looks_left in reversed(range(_LOOKS)):
        try:
            if _is_behind():
                call_command("migrate", verbosity=0, interactive=False)
        except DatabaseError as error:
            connection.close()
            may_pass = isinstance(error, OperationalError | ProgrammingError | IntegrityError | MigrationSchemaMissing)
            if not (may_pass and looks_left):
                raise CannotStart(f"{_database_name()}: the database cannot be used: {error}") from error
            time.sleep(_BETWEEN_LOOKS_S)
        else:
            return


def _is_behind() -> bool:
    executor = MigrationExecutor(connection)
    known = set(executor.loader.graph.nodes)
    newer = sorted(
        name for app, name in executor.loader.applied_migrations if app == _OURS and (app, name) not in known
    )
    if newer:
        raise CannotStart(
            f"{_database_name()}: a newer Loopwright has written this database ({newer[-1]}); update first"
        )
    return bool(executor.migration_plan(executor.loader.graph.leaf_nodes()))


def _database_name() -> str:
    """Give what the database is called in a message, without the password that its URL may hold."""
    return str(connection.settings_dict["NAME"])
