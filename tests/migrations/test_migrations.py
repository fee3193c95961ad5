"""The tables follow the models, forth and back, and a database of a newer program is left alone."""

from pathlib import Path

import pytest
from django.core.management import call_command
from django.db import connection
from django.db.migrations.executor import MigrationExecutor
from django.db.migrations.recorder import MigrationRecorder

from loopwright.web.setup import CannotStart, prepare


def tables() -> set[str]:
    """Our tables in the database."""
    return {name for name in connection.introspection.table_names() if name.startswith("store_")}


def migrate_to(name: str | None) -> None:
    """Go to a migration, None for before the first."""
    MigrationExecutor(connection).migrate([("store", name)])


def test_the_models_have_changed_nowhere_without_a_migration() -> None:
    call_command("makemigrations", check=True, dry_run=True, verbosity=0)  # it exits where one is missing


def test_the_way_back_and_forth_gives_the_same_tables(folder: Path) -> None:
    before = tables()
    migrate_to(None)
    assert tables() == set()
    prepare(folder)
    assert tables() == before
    assert len(before) == 10


def test_a_database_of_a_newer_program_is_left_alone(folder: Path) -> None:
    recorder = MigrationRecorder(connection)
    recorder.record_applied("store", "9999_of_tomorrow")
    try:
        with pytest.raises(CannotStart, match=r"a newer Loopwright has written this database \(9999_of_tomorrow\)"):
            prepare(folder)
    finally:
        recorder.record_unapplied("store", "9999_of_tomorrow")


def test_an_unknown_migration_of_another_program_is_none_of_ours(folder: Path) -> None:
    recorder = MigrationRecorder(connection)
    recorder.record_applied("elsewhere", "0001_first")
    try:
        prepare(folder)
    finally:
        recorder.record_unapplied("elsewhere", "0001_first")
