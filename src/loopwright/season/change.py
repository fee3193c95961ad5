"""Changing one entry of a season, in the words of the season file; everything is checked anew."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from loopwright.records import FROM_FILE
from loopwright.season.season import Season
from loopwright.units import BadInput

__all__ = [
    "Entries",
    "Table",
    "entry_fields",
    "tables_with_entries",
    "tables_with_entry",
    "tables_with_new_entry",
    "tables_without_entry",
    "with_entry",
    "with_garment",
]

Table = Literal["bodies", "yarns", "swatches", "cupboard", "patterns", "garments", "shops", "orders", "charts"]
"""A table of the season file."""

Entries = Mapping[Table, Mapping[str, Mapping[str, Any]]]
"""Fields of entries, by table and key."""

Tables = dict[str, Any]
"""A season as the plain tables of its file: quantities as text, what is as usual left out."""


def _tables(season: Season) -> Tables:
    tables: Tables = season.model_dump(mode="json", by_alias=True, exclude_none=True, exclude_defaults=True)
    return tables


def _entry(tables: Tables, table: Table, key: str) -> dict[str, Any]:
    entries: dict[str, dict[str, Any]] = tables.get(table, {})
    if key not in entries:
        raise BadInput(
            place=table, found=f"'{key}', which is not there", wanted=f"one of {', '.join(entries) or 'none'}"
        )
    return entries[key]


def entry_fields(season: Season, table: Table, key: str) -> dict[str, Any]:
    """Give one entry as the season file has it: only what differs from the usual, quantities as text.

    :raises BadInput: no entry of that key.
    """
    return _entry(_tables(season), table, key)


def tables_with_entry(season: Season, table: Table, key: str, changes: Mapping[str, Any]) -> Tables:
    """Give the season's plain tables with fields of one entry changed; they are not checked yet.

    :param changes: by field path in the words of the season file, such as ``size`` or ``changes.body_longer``;
        values as a person writes them (``4 cm``). None or an empty text takes the field away.
    :raises BadInput: no entry of that key.
    """
    tables = _tables(season)
    _set_fields(_entry(tables, table, key), changes)
    return tables


def _set_fields(entry: dict[str, Any], changes: Mapping[str, Any]) -> None:
    for path, value in changes.items():
        *above, last = path.split(".")
        place = entry
        for name in above:
            place = place.setdefault(name, {})
        if value is None or value == "":
            place.pop(last, None)
        else:
            place[last] = value


def tables_with_new_entry(season: Season, table: Table, key: str, fields: Mapping[str, Any]) -> Tables:
    """Give the season's plain tables with one entry more; they are not checked yet.

    :raises BadInput: the key is taken.
    """
    tables = _tables(season)
    entries = tables.setdefault(table, {})
    if key in entries:
        raise BadInput(place=table, found=f"'{key}', which is there already", wanted="a key of its own")
    entries[key] = {}
    _set_fields(entries[key], fields)
    return tables


def tables_with_entries(
    season: Season,
    added: Entries,
    changed: Entries,
) -> Tables:
    """Give the season's plain tables with several entries more and several changed; they are not checked yet.

    :param added: fields by table and key, as the season file has them.
    :param changed: fields by table and key, as :func:`tables_with_entry` takes them.
    :raises BadInput: a new key is taken, or there is no entry of a key that is to be changed.
    """
    tables = _tables(season)
    for table, entries in added.items():
        there = tables.setdefault(table, {})
        for key, fields in entries.items():
            if key in there:
                raise BadInput(place=table, found=f"'{key}', which is there already", wanted="a key of its own")
            there[key] = dict(fields)
    for table, entries in changed.items():
        for key, changes in entries.items():
            _set_fields(_entry(tables, table, key), changes)
    return tables


def tables_without_entry(season: Season, table: Table, key: str) -> Tables:
    """Give the season's plain tables without one entry; whether something still points to it is checked later.

    :raises BadInput: no entry of that key.
    """
    tables = _tables(season)
    _entry(tables, table, key)
    del tables[table][key]
    return tables


def with_entry(season: Season, table: Table, key: str, changes: Mapping[str, Any]) -> Season:
    """Give the season with fields of one entry changed, as :func:`tables_with_entry` takes them.

    :raises pydantic.ValidationError: a value does not fit; nothing is changed.
    :raises BadInput: no entry of that key.
    """
    return Season.model_validate(tables_with_entry(season, table, key, changes), context=FROM_FILE)


def with_garment(season: Season, key: str, changes: Mapping[str, Any]) -> Season:
    """Give the season with fields of one garment changed; see :func:`with_entry`."""
    return with_entry(season, "garments", key, changes)
