"""What is kept, as plain values."""

from __future__ import annotations

import datetime as dt

from django.db.models import Count

from loopwright.files import Format, write_season_text
from loopwright.records import Record
from loopwright.season import Season
from loopwright.store.errors import NoSuchSeason
from loopwright.store.models import GarmentRow, Revision, SeasonRow
from loopwright.store.rows import Form, read_form, season_of_form

__all__ = [
    "KeptSeason",
    "Past",
    "history",
    "photos_of",
    "put_away_list",
    "season_keys",
    "season_list",
    "season_of",
    "text_of",
]


class KeptSeason(Record):
    """One line of the list of seasons.

    :ivar garments: how many garments are planned in it.
    """

    key: str
    name: str
    today: dt.date
    garments: int


class Past(Record):
    """What undo and redo would do to a season, in the words of the change; None where there is nothing to do."""

    undo: str | None
    redo: str | None


def season_keys() -> tuple[str, ...]:
    """Give the keys of all seasons, in their order."""
    return tuple(SeasonRow.objects.values_list("key", flat=True))


def season_list() -> tuple[KeptSeason, ...]:
    """Give all seasons in their order, in two queries."""
    counted = GarmentRow.objects.order_by().values_list("season").annotate(number=Count("pk"))
    garments: dict[int, int] = dict(counted)
    return tuple(
        KeptSeason(key=row.key, name=row.name, today=row.today, garments=garments.get(row.pk, 0))
        for row in SeasonRow.objects.only("key", "name", "today")
    )


def put_away_list() -> tuple[KeptSeason, ...]:
    """Give the seasons that can be brought back, the last forgotten first."""
    there = set(season_keys())
    forgotten: dict[str, Form] = {}
    for revision in Revision.objects.filter(undone=False).exclude(season_key__in=there).order_by("-pk"):
        if revision.other_side is not None:
            forgotten.setdefault(revision.season_key, revision.other_side["form"])
    return tuple(
        KeptSeason(key=key, name=form["name"], today=form["today"], garments=len(form["garments"]))
        for key, form in forgotten.items()
    )


def season_of(key: str) -> Season:
    """Give the season that is kept under a key.

    :raises NoSuchSeason: none is.
    :raises DamagedSeason: what the database holds makes no season.
    """
    return season_of_form(_read(key)[1], key)


def text_of(key: str, format: Format) -> str:
    """Give a season as the text of a file: the very text that was loaded if nothing was changed since, else a new one.

    :raises NoSuchSeason: no season is kept under the key.
    """
    row, form = _read(key)
    if row.source_text and row.source_format == format:
        return row.source_text
    return write_season_text(season_of_form(form, key), format)


def photos_of(key: str) -> dict[str, str]:
    """Give the digest of the photo of each lot of a season that has one, by the lot's key."""
    photos: dict[str, str] | None = SeasonRow.objects.filter(key=key).values_list("photos", flat=True).first()
    return photos or {}


def history(key: str) -> Past:
    """Give what undo and redo would do to a season."""
    revisions = Revision.objects.filter(season_key=key).only("says", "undone")
    undo = revisions.filter(undone=False).last()
    redo = revisions.filter(undone=True).first()
    return Past(undo=undo.says if undo else None, redo=redo.says if redo else None)


def _read(key: str) -> tuple[SeasonRow, Form]:
    """Read a season's rows as they stand between two changes: once more if one came in between."""
    while True:
        row = SeasonRow.objects.filter(key=key).first()
        if row is None:
            raise NoSuchSeason(key, season_keys())
        form = read_form(row)
        if SeasonRow.objects.filter(pk=row.pk, version=row.version).exists():
            return row, form
