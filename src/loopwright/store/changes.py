"""Every user action, one function each. A change happens whole or not at all, and can be undone.

What is kept is read with the functions of :mod:`loopwright.store.kept`, which can be had from here as well.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping
from typing import Any, Final

from django.db import IntegrityError, transaction
from pydantic import ValidationError

from loopwright.files import Format, faults_of, read_season_text
from loopwright.garment import Garment
from loopwright.records import FROM_FILE
from loopwright.season import Season, Table
from loopwright.season.bodies import tables_with_body
from loopwright.season.change import tables_with_entry, tables_with_new_entry, tables_without_entry
from loopwright.store.errors import (
    ChangeRefused,
    DamagedSeason,
    NoSuchGarment,
    NoSuchSeason,
    NothingToRedo,
    NothingToUndo,
    SeasonIsThere,
)
from loopwright.store.kept import KeptSeason, Past, history, put_away_list, season_keys, season_list, season_of, text_of
from loopwright.store.keys import check_key, free_key, key_from_name
from loopwright.store.models import SeasonRow
from loopwright.store.rows import Form, form_of, season_of_form
from loopwright.store.undo import State, change, locked_row, state_of, step
from loopwright.units import BadInput

__all__ = [
    "ChangeRefused",
    "DamagedSeason",
    "KeptSeason",
    "NoSuchGarment",
    "NoSuchSeason",
    "NothingToRedo",
    "NothingToUndo",
    "Past",
    "SeasonIsThere",
    "add_entry",
    "bring_back",
    "change_body",
    "change_entry",
    "change_garment",
    "forget_season",
    "history",
    "keep_season",
    "put_away_list",
    "redo",
    "remove_entry",
    "season_keys",
    "season_list",
    "season_of",
    "text_of",
    "undo",
]

_ATTEMPTS: Final = 5


def keep_season(
    season: Season, *, key: str | None = None, text: str = "", text_format: Format = "toml", says: str | None = None
) -> str:
    """Keep a season; give the key that it is kept under.

    :param key: under which to keep it; left out, one is made from the name. A season that stands there under the same
        name gives way and can be had back by :func:`undo`, even if it was forgotten meanwhile. To one of another name
        only a key that is given does this; a key that is made gets a number instead.
    :param text: the file that the season was read from, to be given back as it was.
    :param says: what was done, in words.
    :raises BadInput: the key is none, or the season holds a text that a database cannot.
    :raises ValueError: the text is that of another season.
    """
    if key is not None:
        check_key(key)
    if text and read_season_text(text, name=season.name, format=text_format) != season:
        raise ValueError("the text does not say what the season says")
    form = _checked(form_of(season))
    for attempt in range(1, _ATTEMPTS + 1):
        try:
            with transaction.atomic():
                place = key or _key_for(season.name)
                _keep(place, form, text, text_format, says or f"loaded {season.name}")
                return place
        except IntegrityError:  # another process kept a season under this key a moment ago
            if attempt == _ATTEMPTS:
                raise
    raise AssertionError("the last attempt returns or raises")


def change_garment(key: str, garment_key: str, says: str, **fields: Any) -> Season:
    """Change fields of a garment and check the whole season again; where nothing changes, nothing is noted.

    :param says: what is done, in words.
    :param fields: by name, or by path in the words of the season file (``**{"changes.body_longer": "4 cm"}``); values
        as a person writes them. None or empty text puts a field back to its usual value.
    :returns: the season with the change.
    :raises NoSuchSeason, NoSuchGarment: there is none under the key.
    :raises ChangeRefused: the season would no longer hold together; it is left as it was.
    """
    known = season_of(key).garment_by_key
    if garment_key not in known:
        raise NoSuchGarment(garment_key, known)
    return change_entry(key, "garments", garment_key, says, {_in_file(name): value for name, value in fields.items()})


def change_entry(key: str, table: Table, entry_key: str, says: str, changes: Mapping[str, Any]) -> Season:
    """Change fields of one entry of a season, such as a body or a swatch, and check the whole season again.

    :param changes: by field path in the words of the season file; None or empty text takes a field away.
    :returns: the season with the change; where nothing changes, nothing is noted.
    :raises NoSuchSeason: there is none under the key.
    :raises BadInput: the season has no such entry.
    :raises ChangeRefused: the season would no longer hold together; it is left as it was.
    """
    return _change(key, says, lambda season: tables_with_entry(season, table, entry_key, changes))


def change_body(
    key: str, body_key: str, says: str, changes: Mapping[str, Any], *, measured_on: dt.date, all_again: bool = False
) -> Season:
    """Change a body's measures; former values that had another day go into its history.

    :param measured_on: the day on which what is new was measured.
    :param all_again: whether the measures that stay the same were measured on that day as well.
    :raises NoSuchSeason, BadInput, ChangeRefused: as for :func:`change_entry`.
    """
    return _change(
        key, says, lambda season: tables_with_body(season, body_key, changes, measured_on, all_again=all_again)
    )


def add_entry(key: str, table: Table, name: str, says: str, fields: Mapping[str, Any]) -> str:
    """Add an entry to a season under a key made from its name; give that key.

    :raises NoSuchSeason, ChangeRefused: as for :func:`change_entry`.
    """
    with transaction.atomic():
        entry_key = free_key(key_from_name(name), {entry.key for entry in getattr(season_of(key), table)})
        _change(key, says, lambda season: tables_with_new_entry(season, table, entry_key, fields))
        return entry_key


def remove_entry(key: str, table: Table, entry_key: str, says: str) -> Season:
    """Take an entry out of a season, unless something still needs it.

    :raises NoSuchSeason, BadInput, ChangeRefused: as for :func:`change_entry`.
    """
    return _change(key, says, lambda season: tables_without_entry(season, table, entry_key))


def _change(key: str, says: str, tables_of: Callable[[Season], dict[str, Any]]) -> Season:
    """Change a season by its plain tables, whole or not at all."""
    with transaction.atomic():
        row = _row_of(key)
        present = state_of(row)
        season = season_of_form(present.form, key)
        tables = tables_of(season)
        try:
            changed = Season.model_validate(tables, context=FROM_FILE)
        except ValidationError as error:
            raise ChangeRefused(faults_of(error, tables)) from error
        if changed != season:
            form = _checked(form_of(changed))
            change(key, row, State(form, source_format=present.source_format, position=present.position), says)
        return changed


def undo(key: str) -> str:
    """Take the last change of a season back, forgetting it included; give what it says.

    :raises NoSuchSeason: there is none under the key and never was.
    :raises NothingToUndo: it is as it was first kept.
    """
    return _step(key, back=True)


def redo(key: str) -> str:
    """Make the change that was undone last once more; give what it says.

    :raises NoSuchSeason: there is none under the key and never was.
    :raises NothingToRedo: none was undone since the last change.
    """
    return _step(key, back=False)


def forget_season(key: str) -> None:
    """Put a season away; :func:`bring_back` has it back as it was, with its changes.

    :raises NoSuchSeason: there is none under the key.
    """
    with transaction.atomic():
        row = _row_of(key)
        change(key, row, None, f"put away {row.name}")


def bring_back(key: str) -> str:
    """Have a season back that was put away; give what its putting away says.

    :raises SeasonIsThere: it is not gone.
    :raises NoSuchSeason: there never was one under the key.
    """
    with transaction.atomic():
        if locked_row(key) is not None:
            raise SeasonIsThere(key)
        return _step(key, back=True)


def _key_for(name: str) -> str:
    """Give the key of the season of this name, be it put away, or else a new one."""
    others = {kept.key for kept in (*season_list(), *put_away_list()) if kept.name != name}
    return free_key(key_from_name(name), others)


def _keep(key: str, form: Form, text: str, text_format: Format, says: str) -> None:
    row = locked_row(key)
    if row is None:
        change(key, None, State(form, text, text_format), says)
        return
    present = state_of(row)
    state = State(form, text, text_format if text else present.source_format, present.position)
    if state.form != present.form or (text and state != present):
        change(key, row, state, says)


def _step(key: str, *, back: bool) -> str:
    with transaction.atomic():
        if locked_row(key) is None and key not in {kept.key for kept in put_away_list()}:
            raise NoSuchSeason(key, season_keys())
        return step(key, back=back)


def _row_of(key: str) -> SeasonRow:
    row = locked_row(key)
    if row is None:
        raise NoSuchSeason(key, season_keys())
    return row


def _in_file(name: str) -> str:
    """Give the name that the season file has for a field of a garment."""
    field = Garment.model_fields.get(name)
    return field.alias or name if field else name


def _checked(form: Form) -> Form:
    """Give a form back if every database can hold its text.

    :raises BadInput: a text holds the character that PostgreSQL refuses.
    """
    if _holds_nul(form):
        raise BadInput("a text with a NUL character", "text without it, which databases cannot hold")
    return form


def _holds_nul(value: Any) -> bool:
    if isinstance(value, dict):
        return any(_holds_nul(below) for pair in value.items() for below in pair)
    if isinstance(value, list):
        return any(_holds_nul(below) for below in value)
    return isinstance(value, str) and "\0" in value
