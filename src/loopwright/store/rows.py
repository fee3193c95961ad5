"""The one place where a season becomes rows and rows a season; nothing is lost on the way.

In between stands the *form*: plain lists, tables and text that JSON can hold, under the names of the season file.
Where the order of a table's keys means something, the form has a list: PostgreSQL gives the keys of a JSON object
back in an order of its own.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from pydantic import ValidationError

from loopwright.files import faults_of
from loopwright.season import Season
from loopwright.store.errors import DamagedSeason
from loopwright.store.models import (
    BodyRow,
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

__all__ = ["KINDS", "Form", "form_of", "read_form", "season_of_form", "season_tables", "write_form"]

Form = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of entry.

    :ivar table: its table in a season.
    :ivar row: its model.
    :ivar called: the field that an entry is called by.
    """

    table: str
    row: type[Entry]
    called: str = "name"


KINDS: Final = (
    Kind("bodies", BodyRow),
    Kind("yarns", YarnRow),
    Kind("swatches", SwatchRow, called="fabric"),
    Kind("cupboard", LotRow, called="colour"),
    Kind("patterns", PatternRow),
    Kind("garments", GarmentRow),
    Kind("shops", ShopRow),
    Kind("orders", OrderRow, called="shop"),
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
    form: Form = {"name": row.name, "today": row.today.isoformat(), **row.facts}
    for kind in KINDS:
        form[kind.table] = [_fields(kind, entry) for entry in kind.row._default_manager.filter(season=row)]
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
        if before is None or before[kind.table] != form[kind.table]:
            _write_entries(kind, row, form[kind.table])


def _write_entries(kind: Kind, row: SeasonRow, entries: Sequence[Form]) -> None:
    manager = kind.row._default_manager
    manager.filter(season=row).delete()
    manager.bulk_create(_entry(kind, row, position, fields) for position, fields in enumerate(entries))


def _entry(kind: Kind, row: SeasonRow, position: int, fields: Form) -> Entry:
    """Make an entry; a field that is its name stands in the column alone, another that it is called by in both."""
    inside = {"key", "name"}
    name = fields.get(kind.called, "")
    facts = {field: value for field, value in fields.items() if field not in inside}
    return kind.row(season=row, key=fields["key"], position=position, name=name, folded=name.casefold(), facts=facts)


def _fields(kind: Kind, entry: Entry) -> Form:
    own = {"name": entry.name} if kind.called == "name" else {}
    return {"key": entry.key, **own, **entry.facts}
