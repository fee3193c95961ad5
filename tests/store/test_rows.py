"""A season becomes rows and comes back as it was."""

import json

import pytest
from django.db import connection, transaction
from hypothesis import HealthCheck, given, settings

from loopwright.season import Season
from loopwright.store.errors import DamagedSeason
from loopwright.store.kept import season_of
from loopwright.store.models import GarmentRow, LotRow, SeasonRow, SwatchRow, YarnRow
from loopwright.store.rows import KINDS, form_of, read_form, season_of_form, write_form
from tests.strategies import seasons

one_database = [HealthCheck.function_scoped_fixture]  # each example rolls its own rows back


def kept(season: Season, key: str = "winter") -> SeasonRow:
    """Write a season to new rows."""
    row = SeasonRow(key=key)
    write_form(row, form_of(season), None)
    return row


def holds_nul(season: Season) -> bool:
    """Whether a text holds what PostgreSQL refuses (the changes refuse it on every database)."""
    return "\\u0000" in season.model_dump_json()


@given(seasons())
def test_a_form_does_not_need_the_order_of_keys(season: Season) -> None:
    """PostgreSQL keeps the keys of a JSON object in an order of its own."""
    stored = json.loads(json.dumps(form_of(season), sort_keys=True))
    assert season_of_form(stored, "x") == season


@settings(suppress_health_check=one_database, max_examples=60)
@given(seasons())
def test_rows_give_the_season_back(season: Season) -> None:
    if connection.vendor == "postgresql" and holds_nul(season):
        return
    with transaction.atomic():
        row = kept(season)
        row.refresh_from_db()
        assert season_of_form(read_form(row), "winter") == season
        transaction.set_rollback(True)


@settings(suppress_health_check=one_database, max_examples=30)
@given(seasons(), seasons())
def test_rows_can_take_another_season(one: Season, other: Season) -> None:
    if connection.vendor == "postgresql" and (holds_nul(one) or holds_nul(other)):
        return
    with transaction.atomic():
        row = kept(one)
        write_form(row, form_of(other), form_of(one))
        row.refresh_from_db()
        assert season_of_form(read_form(row), "winter") == other
        transaction.set_rollback(True)


def test_every_table_of_a_season_has_its_rows(winter: Season) -> None:
    tables = {name for name in Season.model_fields if isinstance(form_of(winter).get(name), list)}
    assert tables - {"rates", "days_off"} == {kind.table for kind in KINDS}


def test_each_entry_has_one_row_in_its_order(winter: Season) -> None:
    row = kept(winter)
    keys = list(GarmentRow.objects.filter(season=row).values_list("key", flat=True))
    assert keys == [garment.key for garment in winter.garments]


def test_rows_of_a_table_that_did_not_change_stay(winter: Season) -> None:
    row = kept(winter)
    before = set(YarnRow.objects.values_list("pk", flat=True))
    write_form(row, form_of(winter), form_of(winter))
    assert set(YarnRow.objects.values_list("pk", flat=True)) == before


def test_names_are_kept_folded_to_search_by(winter: Season) -> None:
    yarn = winter.yarns[0].model_copy(update={"name": "ÉTÉ Straße"})
    kept(winter.model_copy(update={"yarns": (yarn, *winter.yarns[1:])}))
    assert YarnRow.objects.get(folded__contains="été strasse").key == yarn.key


def test_what_has_no_name_is_called_by_what_a_knitter_calls_it(winter: Season) -> None:
    kept(winter)
    assert {lot.name for lot in LotRow.objects.all()} == {lot.colour for lot in winter.cupboard}
    assert SwatchRow.objects.filter(name="rib and moss stitch").exists()


def test_rows_that_make_no_season_are_named(winter: Season) -> None:
    row = kept(winter)
    YarnRow.objects.filter(season=row).delete()
    with pytest.raises(DamagedSeason, match=r"winter: the database holds a season that cannot be read:\n.*the yarn '"):
        season_of("winter")
