"""What becomes of an allotment when she gives a section to another lot: how sure each lot is, and which lots meet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from loopwright.allotment import Change, SectionDemand
from loopwright.allotment.lots import DyeLot, chance_of, dye_lots, joint_chance, spread_m
from loopwright.allotment.reading import Sharing, changes_of, given_of
from loopwright.season.allotted import Allotted

__all__ = ["ChosenAllotment", "LotChance", "chosen_allotment"]


@dataclass(frozen=True, slots=True)
class LotChance:
    """One dye lot and what it is given.

    :ivar used_m, have_m: mean of what it knits, and of what there is.
    :ivar sd_m: doubt of what is left, from both.
    :ivar p_enough: chance that it suffices.
    """

    lot: DyeLot
    used_m: float
    have_m: float
    sd_m: float
    p_enough: float


@dataclass(frozen=True, slots=True)
class ChosenAllotment:
    """Sections with their lots, as she has them.

    :ivar choices: keys of the dye lots of the yarn that its role is planned in, by section: another yarn would be
        another fabric, and its metres are not known.
    :ivar lot_of: key of the dye lot by section; a section without yarn is not in it.
    :ivar portions: by section, the dye lots that knit it in the order of knitting, each with its share.
    :ivar chances: of every dye lot that knits something.
    :ivar p_enough: chance that all of them suffice at once.
    :ivar changes: where two dye lots meet.
    """

    sections: tuple[SectionDemand, ...]
    lots: Mapping[str, DyeLot]
    choices: Mapping[str, tuple[str, ...]]
    lot_of: Mapping[str, str]
    portions: Mapping[str, tuple[tuple[str, float], ...]]
    chances: tuple[LotChance, ...]
    p_enough: float
    changes: tuple[Change, ...]


def chosen_allotment(found: Allotted, garment: str, chosen: Mapping[str, str]) -> ChosenAllotment:
    """Judge an allotment of one garment with some sections given to other lots.

    Any lot of its yarn may be given, a substitute colour as well. A section that the proposal splits is taken
    whole, from the lot of its first rows, once anything is chosen.

    :param chosen: key of a dye lot by section; what is left out stays as proposed.
    """
    lots = {lot.key: lot for lot in dye_lots(found.problem)}
    sections = tuple(one for one in found.problem.sections if one.garment == garment)
    lot_of: dict[str, str] = {}
    share: dict[tuple[str, str], float] = {}
    for section in sections:
        portions = found.allotment.of(section.key)
        key = chosen.get(section.key, portions[0].lots[0] if portions else "")
        if key not in lots:
            continue
        lot_of[section.key] = key
        whole = bool(chosen) or len(portions) < 2
        for portion in portions if not whole else ():
            share[section.key, portion.lots[0]] = portion.share
        if whole:
            share[section.key, key] = 1.0
    ends = {key: (lot, lot) for key, lot in lot_of.items()}
    sharing = Sharing(ends, share)
    by_key = {one.key: one for one in sections}
    chances = []
    for lot in lots.values():
        given = given_of(sharing, lot, by_key)
        if given:
            used = sum(portion * section.length_m for section, portion in given)
            chances.append(LotChance(lot, used, lot.length_m, spread_m(lot, given), chance_of(lot, given)))
    meetings = [one for one in found.problem.meetings if one.one in by_key and one.other in by_key]
    parts: dict[str, list[tuple[str, float]]] = {}
    for (name, key), part in share.items():
        parts.setdefault(name, []).append((key, part))
    return ChosenAllotment(
        sections=sections,
        lots=lots,
        choices={one.key: _of_its_yarn(found, one, lots) for one in sections},
        lot_of=lot_of,
        portions={name: tuple(own) for name, own in parts.items()},
        chances=tuple(chances),
        p_enough=joint_chance(one.p_enough for one in chances),
        changes=changes_of(sharing, by_key, meetings, lots),
    )


def _of_its_yarn(found: Allotted, section: SectionDemand, lots: Mapping[str, DyeLot]) -> tuple[str, ...]:
    planned = found.yarns[section.garment, section.role]
    return tuple(key for key, lot in lots.items() if lot.shade[0] == planned)
