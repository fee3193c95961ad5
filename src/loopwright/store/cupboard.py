"""The cupboard read in parts, so that a page of it costs the same whether it holds ten lots or ten thousand.

What the plan reserves is worked out once for each version of a season and remembered in this process: the version grows
with every change, so what is remembered is never out of date.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, Final

from django.db.models import Q, QuerySet, TextField
from django.db.models.fields.json import KT
from django.db.models.functions import Cast

from loopwright.season import Season, plan
from loopwright.season.cupboard_report import (
    CupboardUse,
    LotAmount,
    LotReport,
    cupboard_use,
    lot_report,
    sum_of_lots,
)
from loopwright.season.cupboard_search import search_words, yarn_text
from loopwright.store.errors import NoSuchSeason
from loopwright.store.kept import season_keys
from loopwright.store.models import LotRow, SeasonRow
from loopwright.store.rows import KINDS, Form, entry_of_row, form_of_entries, season_of_form
from loopwright.uncertainty import Estimate
from loopwright.units import BadInput, read_mass_g
from loopwright.yarn import Lot

__all__ = ["Cupboard", "LotsFound", "cupboard_of", "lots_found", "lots_named", "one_lot"]

_REMEMBERED: Final = 16
_YARN: Final = Cast(KT("facts__yarn"), TextField())
"""A lot's yarn as plain text: compared as JSON, each key of a list would be read anew for each row."""
_CUPBOARD: Final = next(kind for kind in KINDS if kind.table == "cupboard")


@dataclass(frozen=True, slots=True)
class Cupboard:
    """What a page of the cupboard needs beside the lots that it shows.

    :ivar row: primary key of the season's row.
    :ivar season: the season with those lots only that its plan can use.
    :ivar count: how many lots there are.
    :ivar mass_g, length_m: of all lots together.
    :ivar cannot_plan: why the season cannot be planned; nothing is then known to be reserved.
    :ivar lots_of_yarn: how many lots there are of each yarn, by its key.
    """

    row: int
    season: Season
    use: CupboardUse
    count: int
    mass_g: Estimate
    length_m: Estimate
    cannot_plan: str
    lots_of_yarn: Mapping[str, int]
    yarn_texts: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class LotsFound:
    """One page of the lots that a search finds.

    :ivar count: how many it finds in all.
    :ivar number: of this page, from 1.
    :ivar pages: how many there are, at least one.
    :ivar photos: digest of the photo by key of the lot.
    """

    lots: tuple[LotReport, ...]
    photos: Mapping[str, str]
    count: int
    number: int
    pages: int


class _ChangedMeanwhile(Exception):
    """The season was changed while it was read."""


def cupboard_of(key: str) -> Cupboard:
    """Give the cupboard of a season, remembered while the season stays as it is.

    :raises NoSuchSeason: none is kept under the key.
    """
    while True:
        row = SeasonRow.objects.filter(key=key).values_list("pk", "version").first()
        if row is None:
            raise NoSuchSeason(key, season_keys())
        try:
            return _cupboard(*row)
        except _ChangedMeanwhile:
            continue


def lots_found(cupboard: Cupboard, text: str, number: int, size: int) -> LotsFound:
    """Give one page of the lots in which every word of a search stands, in the season's order.

    :param number: of the page, from 1; beyond the last, the last is given.
    :param size: lots on a page.
    """
    rows = _found(cupboard, text)
    count = rows.count()
    pages = max(-(-count // size), 1)
    number = min(max(number, 1), pages)
    page = rows[(number - 1) * size : number * size]
    lots = tuple(_report(cupboard, row) for row in page)
    return LotsFound(lots, _photos(cupboard), count, number, pages)


def one_lot(cupboard: Cupboard, lot_key: str) -> tuple[LotReport, str | None] | None:
    """Give one lot and the digest of its photo; None where there is no such lot."""
    row = LotRow.objects.filter(season=cupboard.row, key=lot_key).first()
    return None if row is None else (_report(cupboard, row), _photos(cupboard).get(lot_key))


def lots_named(cupboard: Cupboard, keys: Iterable[str]) -> tuple[LotReport, ...]:
    """Give some lots by their keys, in the season's order; keys of no lot are passed over."""
    rows = LotRow.objects.filter(season=cupboard.row, key__in=list(keys))
    return tuple(_report(cupboard, row) for row in rows)


def _found(cupboard: Cupboard, text: str) -> QuerySet[LotRow]:
    rows = LotRow.objects.filter(season=cupboard.row)
    for word in search_words(text):
        yarns = [key for key, known in cupboard.yarn_texts.items() if word in known]
        if len(yarns) == len(cupboard.yarn_texts):  # it stands in every yarn, hence in every lot
            continue
        here = Q(folded__contains=word)
        rows = rows.alias(yarn=_YARN).filter(here | Q(yarn__in=yarns)) if yarns else rows.filter(here)
    return rows


def _report(cupboard: Cupboard, row: LotRow) -> LotReport:
    lot = Lot.model_validate(entry_of_row(_CUPBOARD, row))
    return lot_report(lot, cupboard.season.yarn_by_key[lot.yarn], cupboard.use)


def _photos(cupboard: Cupboard) -> Mapping[str, str]:
    photos: Mapping[str, str] | None = (
        SeasonRow.objects.filter(pk=cupboard.row).values_list("photos", flat=True).first()
    )
    return photos or {}


@lru_cache(maxsize=_REMEMBERED)
def _cupboard(pk: int, version: int) -> Cupboard:
    row = SeasonRow.objects.filter(pk=pk, version=version).first()
    if row is None:
        raise _ChangedMeanwhile
    form = form_of_entries(row, leave_out={"cupboard"})
    # Whole facts and not single ones: SQLite gives a key such as "7" that is asked for alone back as a number.
    amounts = list(LotRow.objects.filter(season=row).order_by().values_list("facts", flat=True))
    form["cupboard"] = [entry_of_row(_CUPBOARD, lot) for lot in _usable(row, form)]
    if not SeasonRow.objects.filter(pk=pk, version=version).exists():
        raise _ChangedMeanwhile
    season = season_of_form(form, row.key)
    yarns = season.yarn_by_key
    counted: dict[str, int] = {}
    for lot in amounts:
        counted[lot["yarn"]] = counted.get(lot["yarn"], 0) + 1
    mass_g, length_m = sum_of_lots(
        LotAmount(yarns[lot["yarn"]], lot.get("put_ups", 0), _grams(lot.get("weighed"))) for lot in amounts
    )
    use, cannot_plan = _use(season)
    return Cupboard(
        row=pk,
        season=season,
        use=use,
        cannot_plan=cannot_plan,
        count=len(amounts),
        mass_g=mass_g,
        length_m=length_m,
        lots_of_yarn=counted,
        yarn_texts={yarn.key: yarn_text(yarn) for yarn in season.yarns},
    )


def _use(season: Season) -> tuple[CupboardUse, str]:
    try:
        return cupboard_use(season, plan(season)), ""
    except BadInput as error:
        return CupboardUse(), str(error)


def _usable(row: SeasonRow, form: Form) -> Iterable[LotRow]:
    """Give the lots that a garment's role may take: of a colour that one has, or named by one."""
    roles: list[dict[str, Any]] = [role for garment in form["garments"] for role in garment["yarns"]]
    colours = {one["colour"] for role in roles for one in (role, *role.get("held_with", ()))}
    named = {lot for role in roles for lot in role.get("lots", ())}
    return LotRow.objects.filter(Q(name__in=colours) | Q(key__in=named), season=row)


def _grams(text: str | None) -> float | None:
    return None if text is None else _read_grams(text)


@lru_cache(maxsize=4096)
def _read_grams(text: str) -> float:
    return read_mass_g(text)
