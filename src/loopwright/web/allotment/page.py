"""What the page of lots shows: every section in the colour of the lot that knits it, and how sure each lot is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from loopwright.allotment import Change
from loopwright.documents.view import AnswerView, answer_view
from loopwright.pictures import colour_chip
from loopwright.season import Season
from loopwright.season.allot_answer import allot_answer
from loopwright.season.allot_choice import ChosenAllotment, LotChance
from loopwright.season.allotted import Allotted
from loopwright.season.wording import Wording
from loopwright.units import write_share

__all__ = ["LotRow", "LotsView", "SectionChoice", "lots_view"]

NO_YARN = "#e4e4e3"


@dataclass(frozen=True, slots=True)
class SectionChoice:
    """One section: its field in the form, the lot it has, and the width and colour of its bar."""

    key: str
    name: str
    metres: str
    lot: str
    shade: str
    share: float


@dataclass(frozen=True, slots=True)
class LotRow:
    """One lot that knits something."""

    name: str
    chip: str
    used: str
    have: str
    sure: str
    share: float
    shade: str


@dataclass(frozen=True, slots=True)
class LotsView:
    """The whole page.

    :ivar choices: lots that can be given, as (key, words).
    """

    answer: AnswerView
    sections: tuple[tuple[str, tuple[SectionChoice, ...]], ...]
    choices: tuple[tuple[str, str], ...]
    lots: tuple[LotRow, ...]
    together: str
    is_sure: bool
    meetings: tuple[str, ...]


def lots_view(season: Season, found: Allotted, chosen: ChosenAllotment, garment: str, wording: Wording) -> LotsView:
    """Lay out an allotment of one garment."""
    names, shades = _names(season), _shades(season)
    most = max((one.length_m for one in chosen.sections), default=1.0)
    by_role: dict[str, list[SectionChoice]] = {}
    for one in chosen.sections:
        lot = chosen.lot_of.get(one.key, "")
        by_role.setdefault(one.role, []).append(
            SectionChoice(
                key=one.key,
                name=one.name,
                metres=wording.yarn(one.length_m),
                lot=lot,
                shade=shades.get(lot, NO_YARN),
                share=one.length_m / most,
            )
        )
    sureness = season.garment_by_key[garment].sureness or season.sureness
    return LotsView(
        answer=answer_view(allot_answer(found, garment, wording), wording),
        sections=tuple((role, tuple(rows)) for role, rows in by_role.items()),
        choices=tuple((key, names.get(key, key)) for key in chosen.lots),
        lots=tuple(_lot(one, names, shades, wording) for one in chosen.chances),
        together=write_share(chosen.p_enough),
        is_sure=chosen.p_enough >= sureness and len(chosen.lot_of) == len(chosen.sections),
        meetings=_meetings(chosen, names),
    )


def _names(season: Season) -> dict[str, str]:
    names = {
        lot.key: f"{lot.colour}, {season.yarn_by_key[lot.yarn].name}"
        + (f", dye lot {lot.dye_lot}" if lot.dye_lot else "")
        for lot in season.cupboard
    }
    for order in season.orders:
        for number, line in enumerate(order.lines, 1):
            names[f"{order.key}-{number}"] = f"{line.colour}, {season.yarn_by_key[line.yarn].name}, on its way"
    return names


def _shades(season: Season) -> dict[str, str]:
    return {lot.key: lot.shade for lot in season.cupboard if lot.shade}


def _lot(one: LotChance, names: Mapping[str, str], shades: Mapping[str, str], wording: Wording) -> LotRow:
    key = one.lot.key
    return LotRow(
        name=names.get(key, key),
        chip=colour_chip(shades.get(key), names.get(key, key)),
        used=wording.yarn(one.used_m),
        have=wording.yarn(one.have_m),
        sure=write_share(one.p_enough),
        share=min(one.used_m / one.have_m, 1.0) if one.have_m else 1.0,
        shade=shades.get(key, NO_YARN),
    )


def _meetings(chosen: ChosenAllotment, names: Mapping[str, str]) -> tuple[str, ...]:
    told: dict[str, None] = {}
    section_names = {one.key: one.name for one in chosen.sections}
    for change in chosen.changes:
        if all(change.lots):
            told[_meeting(change, section_names, names)] = None
    return tuple(told)


def _meeting(change: Change, section_names: Mapping[str, str], names: Mapping[str, str]) -> str:
    one, other = (" with ".join(names.get(key, key) for key in keys) for keys in change.lots)
    where = section_names[change.one]
    if change.other != change.one:
        where += f" and {section_names[change.other]}"
    note = f": {change.note}" if change.note else ""
    return f"{where}: {one} meets {other} at the {change.place}{note}."
