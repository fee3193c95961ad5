"""The one place where a season becomes rows and rows a season; nothing is lost on the way.

In between stands the *form*: plain lists, tables and text that JSON can hold, under the names of the season file.
Where the order of a table's keys means something, the form has a list: PostgreSQL gives the keys of a JSON object
back in an order of its own.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from pydantic import ValidationError

from loopwright.files import faults_of
from loopwright.season import Season
from loopwright.season.cupboard_search import folded
from loopwright.store.errors import DamagedSeason
from loopwright.store.models import (
    BodyRow,
    ChartRow,
    Entry,
    GarmentRow,
    LotRow,
    OrderRow,
    PatternRow,
    SeasonRow,
    ShopRow,
    SwatchRow,
    YarnRow,
)

__all__ = [
    "KINDS",
    "Form",
    "entry_of_row",
    "folded_entry",
    "form_of",
    "form_of_entries",
    "read_form",
    "season_of_form",
    "season_tables",
    "write_form",
]

Form = dict[str, Any]

_MOST_NAMED: Final = 500
"""Rows that are deleted by their keys; beyond, all of a table are, since databases bound what a query may hold."""


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of entry.

    :ivar table: its table in a season.
    :ivar row: its model.
    :ivar called: the field that an entry is called by.
    :ivar found_by: other fields that it is found by.
    """

    table: str
    row: type[Entry]
    called: str = "name"
    found_by: tuple[str, ...] = ()


KINDS: Final = (
    Kind("bodies", BodyRow),
    Kind("yarns", YarnRow, found_by=("fibres", "note")),
    Kind("swatches", SwatchRow, called="fabric"),
    Kind("cupboard", LotRow, called="colour", found_by=("dye_lot", "kept_in", "note")),
    Kind("patterns", PatternRow),
    Kind("garments", GarmentRow),
    Kind("shops", ShopRow),
    Kind("orders", OrderRow, called="shop"),
    Kind("charts", ChartRow),
)


# ------------------------------------------------------------------------------------- a season and its form
def season_tables(season: Season) -> Form:
    """Give a season as the plain tables of its file, keyed tables as objects; what is as usual is left out."""
    tables: Form = season.model_dump(mode="json", by_alias=True, exclude_defaults=True, exclude_none=True)
    return tables


def form_of(season: Season) -> Form:
    """Give a season as a form: every table whose order counts is a list, empty ones too."""
    form = season_tables(season)
    for kind in KINDS:
        form[kind.table] = _keyed(form.get(kind.table, {}))
    for yarn in form["yarns"]:
        _list_pairs(yarn, "fibres", "fibre", "percent")
    for pattern in form["patterns"]:
        pattern["yarn"] = _keyed(pattern.get("yarn", {}))
    for garment in form["garments"]:
        garment["yarns"] = _keyed(garment["yarns"])
    for chart in form["charts"]:
        _list_pairs(chart, "roles", "mark", "role")
    _list_pairs(form, "rates", "currency", "rate")
    _list_pairs(form.get("pace", {}), "fabrics", "fabric", "stitches_per_minute")
    return form


def _keyed(table: Mapping[str, Mapping[str, Any]]) -> list[Form]:
    return [{"key": key, **fields} for key, fields in table.items()]


def _list_pairs(table: Form, field: str, first: str, second: str) -> None:
    if field in table:
        table[field] = [{first: name, second: value} for name, value in table[field].items()]


def season_of_form(form: Form, key: str) -> Season:
    """Give the season of a form.

    :param key: under which it is kept, for the message.
    :raises DamagedSeason: the form makes no season.
    """
    try:
        return Season.model_validate(form)
    except ValidationError as error:
        raise DamagedSeason(key, faults_of(error, form)) from error


# --------------------------------------------------------------------------------------- a form and its rows
def read_form(row: SeasonRow) -> Form:
    """Give the form that a season's row and its entries hold."""
    return form_of_entries(row)


def form_of_entries(row: SeasonRow, *, leave_out: Container[str] = ()) -> Form:
    """Give the form that a season's row and its entries hold.

    :param leave_out: tables that are not read; they are empty lists.
    """
    form: Form = {"name": row.name, "today": row.today.isoformat(), **row.facts}
    for kind in KINDS:
        read = kind.table not in leave_out
        entries = kind.row._default_manager.filter(season=row) if read else ()
        form[kind.table] = [_fields(kind, entry) for entry in entries]
    return form


def write_form(row: SeasonRow, form: Form, before: Form | None) -> None:
    """Write a form to a season's row and its entries; a table that is as before is left alone.

    :param before: what the rows hold, None when they hold nothing yet.
    """
    columns = {"name", "today", *(kind.table for kind in KINDS)}
    row.name = form["name"]
    row.today = dt.date.fromisoformat(form["today"])
    row.facts = {name: value for name, value in form.items() if name not in columns}
    row.save()
    for kind in KINDS:
        # A change that was noted before there were entries of this kind says nothing of them.
        entries, there = form.get(kind.table, []), before.get(kind.table, []) if before else []
        if before is None or there != entries:
            _write_entries(kind, row, entries, there)


def _write_entries(kind: Kind, row: SeasonRow, entries: Sequence[Form], before: Sequence[Form]) -> None:
    """Write the entries that are new or changed or stand elsewhere, and delete what is there in their stead."""
    manager = kind.row._default_manager
    there = {fields["key"]: (position, fields) for position, fields in enumerate(before)}
    stays = {fields["key"] for place in enumerate(entries) if there.get((fields := place[1])["key"]) == place}
    gone = [key for key in there if key not in stays]
    rows = manager.filter(season=row)
    if len(gone) > _MOST_NAMED:
        rows, stays = rows.all(), set()
    else:
        rows = rows.filter(key__in=gone)
    rows.delete()
    manager.bulk_create(
        _entry(kind, row, position, fields) for position, fields in enumerate(entries) if fields["key"] not in stays
    )


def _entry(kind: Kind, row: SeasonRow, position: int, fields: Form) -> Entry:
    """Make an entry; a field that is its name stands in the column alone, another that it is called by in both."""
    inside = {"key", "name"}
    name = fields.get(kind.called, "")
    facts = {field: value for field, value in fields.items() if field not in inside}
    text = folded_entry(kind, fields)
    return kind.row(season=row, key=fields["key"], position=position, name=name, folded=text, facts=facts)


def folded_entry(kind: Kind, fields: Form) -> str:
    """Give what an entry is found by, in folded case; of a list of fibres their names."""
    texts = [fields.get(kind.called, "")]
    for field in kind.found_by:
        value = fields.get(field, "")
        texts += [pair["fibre"] for pair in value] if isinstance(value, list) else [value]
    return folded("\n".join(texts))


def entry_of_row(kind: Kind, entry: Entry) -> Form:
    """Give one entry of a form from its row."""
    return _fields(kind, entry)


def _fields(kind: Kind, entry: Entry) -> Form:
    own = {"name": entry.name} if kind.called == "name" else {}
    return {"key": entry.key, **own, **entry.facts}
