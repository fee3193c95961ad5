"""What the page of lots shows: every section in the colour of the lot that knits it, and how sure each lot is."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from loopwright.allotment import Change
from loopwright.allotment.lots import DyeLot
from loopwright.documents.view import AnswerView, answer_view
from loopwright.pictures import colour_chip, yarn_bar
from loopwright.season import Season
from loopwright.season.allot_answer import allot_answer, parts_words
from loopwright.season.allot_choice import ChosenAllotment, LotChance
from loopwright.season.allotted import Allotted
from loopwright.season.lot_names import lot_names
from loopwright.season.wording import Wording
from loopwright.uncertainty import Estimate, Origin
from loopwright.units import write_share
from loopwright.web.allotment.likeness import NO_YARN, UNKNOWN, lot_shades

__all__ = ["LotChip", "LotsView", "SectionChoice", "lots_view"]


@dataclass(frozen=True, slots=True)
class SectionChoice:
    """One section: its field in the form, the lot it has, and its bar.

    :ivar choices: lots that can be given, as (key, words).
    :ivar bars: what each lot knits, in the order of knitting, as (begin, width, colour) in shares of the longest bar.
    """

    key: str
    name: str
    metres: str
    lot: str
    choices: tuple[tuple[str, str], ...]
    bars: tuple[tuple[float, float, str], ...]


@dataclass(frozen=True, slots=True)
class LotChip:
    """One lot that could knit something.

    :ivar roles: the roles that are planned in it, as the begin of their sections' keys, in JSON.
    :ivar bar: what there is and what of it is knitted, with the doubt of what is left.
    :ivar amount: what is left of it, or what is short; :ivar sure: how sure it suffices.
    :ivar share: how much of it is knitted.
    """

    key: str
    roles: str
    name: str
    chip: str
    bar: str
    amount: str
    sure: str


@dataclass(frozen=True, slots=True)
class LotsView:
    """The whole page.

    :ivar lots: those that are planned for it first.
    :ivar bare: parts that no lot knits, in words; empty where there are none.
    """

    answer: AnswerView
    sections: tuple[tuple[str, tuple[SectionChoice, ...]], ...]
    lots: tuple[LotChip, ...]
    together: str
    bare: str
    is_sure: bool
    meetings: tuple[str, ...]


def lots_view(season: Season, found: Allotted, chosen: ChosenAllotment, garment: str, wording: Wording) -> LotsView:
    """Lay out an allotment of one garment."""
    names, shades = lot_names(season), lot_shades(season)
    most = max((one.length_m for one in chosen.sections), default=1.0)
    by_role: dict[str, list[SectionChoice]] = {}
    for one in chosen.sections:
        by_role.setdefault(one.role, []).append(
            SectionChoice(
                key=one.key,
                name=one.name,
                metres=wording.yarn(one.length_m),
                lot=chosen.lot_of.get(one.key, ""),
                choices=tuple((key, names.get(key, key)) for key in chosen.choices[one.key]),
                bars=tuple(_bars(chosen.portions.get(one.key, ()), one.length_m / most, shades)),
            )
        )
    sureness = season.garment_by_key[garment].sureness or season.sureness
    offered = {key for keys in chosen.choices.values() for key in keys}
    chances = {one.lot.key: one for one in chosen.chances}
    bare = [one for one in chosen.sections if one.key not in chosen.lot_of]
    shown = sorted((lot for key, lot in chosen.lots.items() if key in offered), key=lambda lot: not lot.roles)
    return LotsView(
        answer=answer_view(allot_answer(found, garment, wording), wording),
        sections=tuple((role, tuple(rows)) for role, rows in by_role.items()),
        lots=tuple(_chip(lot, chances.get(lot.key), names, shades, wording) for lot in shown),
        together=write_share(chosen.p_enough),
        bare=parts_words(bare, wording) if bare else "",
        is_sure=chosen.p_enough >= sureness and not bare,
        meetings=_meetings(chosen, names),
    )


def _bars(
    portions: Sequence[tuple[str, float]], width: float, shades: Mapping[str, str]
) -> Iterator[tuple[float, float, str]]:
    begin = 0.0
    for lot, share in portions or (("", 1.0),):
        yield begin, share * width, shades.get(lot, UNKNOWN) if lot else NO_YARN
        begin += share * width


def _chip(
    lot: DyeLot, chance: LotChance | None, names: Mapping[str, str], shades: Mapping[str, str], wording: Wording
) -> LotChip:
    name = names.get(lot.key, lot.key)
    used = chance.used_m if chance else 0.0
    left = lot.length_m - used
    return LotChip(
        key=lot.key,
        roles=json.dumps(sorted(f"{garment}/{role}/" for garment, role in lot.roles)),
        name=name,
        chip=colour_chip(shades.get(lot.key), name),
        bar=yarn_bar(
            Estimate(mean=used, sd=chance.sd_m if chance else 0.0, unit="m", origin=Origin.COMPUTED),
            Estimate(mean=lot.length_m, sd=0.0, unit="m", origin=Origin.COMPUTED),
            shades.get(lot.key),
            f"{name}: {wording.yarn(lot.length_m)} there, {wording.yarn(used)} knitted",
        ),
        amount=f"{wording.yarn(left)} left" if left >= 0 else f"{wording.yarn(-left)} short",
        sure=f"{write_share(chance.p_enough)} sure" if chance else "knits nothing",
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
