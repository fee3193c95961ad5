"""The tables follow the models, forth and back, and a database of a newer program is left alone."""

from pathlib import Path

import pytest
from django.core.management import call_command
from django.db import connection
from django.db.migrations.executor import MigrationExecutor
from django.db.migrations.recorder import MigrationRecorder

from loopwright.store.models import LotRow, YarnRow
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
    assert len(before) == 12


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


def test_lots_and_yarns_of_before_are_found_by_more_than_their_name(folder: Path) -> None:
    """What was kept by the first tables is folded anew by the second."""
    migrate_to("0001_first_tables")
    old = MigrationExecutor(connection).loader.project_state([("store", "0001_first_tables")]).apps
    season = old.get_model("store", "SeasonRow").objects.create(key="old", name="Old", today="2027-03-01")
    fibres = [{"fibre": "merino", "percent": 100}]
    rows = {
        "YarnRow": {"name": "Étang", "folded": "étang", "facts": {"fibres": fibres, "note": "From the FEN"}},
        "LotRow": {"name": "Oat", "folded": "oat", "facts": {"yarn": "y", "dye_lot": "B7", "kept_in": "Hat box"}},
    }
    for model, fields in rows.items():
        old.get_model("store", model).objects.create(season=season, key="x", position=0, **fields)
    prepare(folder)
    assert YarnRow.objects.get(key="x").folded == "étang merino from the fen"
    assert LotRow.objects.get(key="x").folded == "oat b7 hat box"
