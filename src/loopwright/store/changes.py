"""Every user action, one function each. A change happens whole or not at all, and can be undone.

What is kept is read with the functions of :mod:`loopwright.store.kept`, which can be had from here as well.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any, Final

from django.db import IntegrityError, transaction
from pydantic import ValidationError

from loopwright.chart import NamedChart
from loopwright.files import Format, faults_of, read_season_text
from loopwright.garment import Garment
from loopwright.records import FROM_FILE
from loopwright.season import Season, Table
from loopwright.season.bodies import tables_with_body
from loopwright.season.change import (
    Entries,
    tables_with_entries,
    tables_with_entry,
    tables_with_new_entry,
    tables_without_entry,
)
from loopwright.store.errors import (
    ChangedMeanwhile,
    ChangeRefused,
    DamagedSeason,
    NoSuchGarment,
    NoSuchSeason,
    NothingToRedo,
    NothingToUndo,
    SeasonIsThere,
)
from loopwright.store.kept import (
    KeptSeason,
    Past,
    history,
    photos_of,
    put_away_list,
    season_keys,
    season_list,
    season_of,
    text_of,
)
from loopwright.store.keys import check_key, free_key, key_from_name
from loopwright.store.models import SeasonRow
from loopwright.store.photos import LotPhoto, keep_photo
from loopwright.store.rows import Form, form_of, season_of_form
from loopwright.store.undo import State, change, go_on, locked_row, state_of, step
from loopwright.units import BadInput

__all__ = [
    "ChangeRefused",
    "ChangedMeanwhile",
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
    "change_entries",
    "change_entry",
    "change_garment",
    "draw_chart",
    "forget_season",
    "history",
    "keep_season",
    "photos_of",
    "put_away_list",
    "put_lot_photo",
    "redo",
    "remove_entry",
    "season_keys",
    "season_list",
    "season_of",
    "take_lot_photo_away",
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


def change_entries(
    key: str,
    says: str,
    *,
    added: Entries,
    changed: Entries | None = None,
) -> Season:
    """Add and change several entries of a season as one action.

    :param added: fields by table and key, as the season file has them.
    :param changed: fields by table and key, as :func:`change_entry` takes them.
    :raises NoSuchSeason, BadInput, ChangeRefused: as for :func:`change_entry`.
    """
    return _change(key, says, lambda season: tables_with_entries(season, added, changed or {}))


def draw_chart(
    key: str,
    chart_key: str,
    says: str,
    changes: Mapping[str, Any],
    *,
    known: str,
    last_version: int | None = None,
) -> tuple[NamedChart, int]:
    """Change a chart while it is being drawn; give it as it is now, and the season's version.

    What is drawn in one sitting is one change: a step that follows the last one with nothing between joins it.

    :param known: the fingerprint of the chart as the hand that draws knows it.
    :param last_version: what this gave for the step before; None for the first step of a sitting.
    :raises ChangedMeanwhile: the chart is another than the one that is known.
    :raises NoSuchSeason, BadInput, ChangeRefused: as for :func:`change_entry`.
    """

    def tables(season: Season) -> dict[str, Any]:
        changed = tables_with_entry(season, "charts", chart_key, changes)
        there = season.chart_by_key[chart_key]
        if there.fingerprint != known and not _is(there, changed["charts"][chart_key]):
            raise ChangedMeanwhile("chart", there.name)
        return changed

    with transaction.atomic():
        season = _change(key, says, tables, joins=last_version)
        return season.chart_by_key[chart_key], _row_of(key).version


def _is(there: NamedChart, fields: Mapping[str, Any]) -> bool:
    """Say whether a chart is already what these fields make of it, such as by a step that was sent twice."""
    try:
        return NamedChart.model_validate({**fields, "key": there.key}, context=FROM_FILE) == there
    except ValidationError:
        return False


def put_lot_photo(key: str, lot_key: str, photo: LotPhoto) -> None:
    """Give a lot its photo; the one before can be had back by :func:`undo`.

    :raises NoSuchSeason: there is none under the key.
    :raises BadInput: the season has no such lot.
    """
    with transaction.atomic():
        keep_photo(photo)
        _change_photo(key, lot_key, photo.digest)


def take_lot_photo_away(key: str, lot_key: str) -> None:
    """Take a lot's photo away, if it has one; :func:`undo` gives it back.

    :raises NoSuchSeason, BadInput: as for :func:`put_lot_photo`.
    """
    with transaction.atomic():
        _change_photo(key, lot_key, None)


def _change_photo(key: str, lot_key: str, digest: str | None) -> None:
    row = _row_of(key)
    present = state_of(row)
    lots = {lot["key"]: lot for lot in present.form["cupboard"]}
    if lot_key not in lots:
        raise BadInput(found=f"'{lot_key}', which is not there", wanted="a lot of this season", place="cupboard")
    photos = {other: kept for other, kept in present.photos.items() if other != lot_key}
    if digest is not None:
        photos[lot_key] = digest
    if photos != present.photos:
        done = "took the photo away of" if digest is None else "put in a photo of"
        change(
            key,
            row,
            replace(present, photos=photos),
            f"{done} {lots[lot_key].get('colour') or lot_key}",
            present=present,
        )


def _change(key: str, says: str, tables_of: Callable[[Season], dict[str, Any]], joins: int | None = None) -> Season:
    """Change a season by its plain tables, whole or not at all.

    :param joins: the version that this change goes on from as one with the change that made it.
    """
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
            photos = _photos_of(present.photos, form)
            state = State(form, "", present.source_format, present.position, photos)
            if joins is not None and joins == row.version:
                go_on(key, row, state, present)
            else:
                change(key, row, state, says, present=present)
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
    photos = _photos_of(present.photos, form)
    state = State(form, text, text_format if text else present.source_format, present.position, photos)
    if state.form != present.form or (text and state != present):
        change(key, row, state, says)


def _photos_of(photos: Mapping[str, str], form: Form) -> dict[str, str]:
    """Give the photos of the lots that a form has."""
    lots = {lot["key"] for lot in form["cupboard"]}
    return {lot: digest for lot, digest in photos.items() if lot in lots}


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
