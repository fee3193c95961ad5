"""Which lots of the cupboard knit which sections: of one garment, or of all that are still to be made."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from loopwright.allotment import (
    Allotment,
    AllotmentProblem,
    Hiding,
    LotSupply,
    Meeting,
    SectionDemand,
    allot,
    hiding,
    related,
    sections_of,
    supplies,
)
from loopwright.garment import RolePlan
from loopwright.need import SectionNeed
from loopwright.need.sections import SECTION_RELATIVE_SD
from loopwright.season.lot_names import lot_names
from loopwright.season.remake import draft_of
from loopwright.season.result import GarmentPlan, RolePlanned, SeasonPlan
from loopwright.season.season import Season

__all__ = ["Allotted", "allotted"]


@dataclass(frozen=True, slots=True)
class Allotted:
    """An allotment with what it was made from.

    :ivar alternating: by (garment, role), how sections would be knitted with rows of two dye lots alternated on a plain
        field; only for roles that are short but would then be covered.
    :ivar change_rows: of sections that two lots knit, the row after which the first is done, and all its rows.
    :ivar hidden: where a substitute hides, of each role that is short.
    :ivar yarns: key of the yarn that was planned, by (garment, role).
    :ivar names: of every lot in words, by its key.
    """

    problem: AllotmentProblem
    allotment: Allotment
    alternating: Mapping[tuple[str, str], Allotment]
    change_rows: Mapping[str, tuple[int, int]]
    hidden: tuple[Hiding, ...]
    yarns: Mapping[tuple[str, str], str]
    names: Mapping[str, str]


def allotted(
    season: Season, planned: SeasonPlan, garment: str | None = None, *, with_next_best: bool = True
) -> Allotted:
    """Share the cupboard and what is on its way over the sections of one garment, or of all that are to be made.

    :param garment: its key; it then has the whole cupboard to itself.
    :param with_next_best: of one garment also say how good the best other allotment is, which takes about as long.
    """
    played = list(_played(season, planned, garment))
    problem = _problem(season, played)
    found = allot(problem, with_next_best=with_next_best and garment is not None)
    alternating = {}
    for lack in found.lacks:
        if lack.kind == "dye lots":
            role = lack.garment, lack.role
            tried = allot(replace(related(problem, role), alternate=True), with_next_best=False)
            if not set(lack.sections) & set(tried.uncovered):
                alternating[role] = tried
    rows = _change_rows(season, played, found)
    hidden = hiding(problem, found, _substitutes(problem, played))
    yarns = {one.key: one.planned.yarn for one in played}
    return Allotted(problem, found, alternating, rows, hidden, yarns, lot_names(season))


@dataclass(frozen=True, slots=True)
class _Played:
    """One yarn of one role of a garment that is to be made.

    :ivar name: the role, with the number of the strand where other yarns are held together with it.
    :ivar strands: how many strands of this yarn run together.
    """

    garment: GarmentPlan
    role: RolePlan
    planned: RolePlanned
    name: str
    strands: int

    @property
    def key(self) -> tuple[str, str]:
        """Give what the allotment knows it by."""
        return self.garment.key, self.name


def _played(season: Season, planned: SeasonPlan, garment: str | None) -> Iterator[_Played]:
    for one in planned.garments:
        if not one.is_open or garment not in (None, one.key):
            continue
        for role in season.garment_by_key[one.key].yarns:
            for number, known in enumerate(known for known in one.roles if known.role == role.key):
                name = role.key if number == 0 else f"{role.key}, strand {number + 1}"
                yield _Played(one, role, known, name, role.strands if number == 0 else 1)


def _problem(season: Season, played: Sequence[_Played]) -> AllotmentProblem:
    """Give the sections, lots and roles.

    A garment without a draft is one section of each role, in a plain field.
    """
    lots = _lots(season)
    sections: list[SectionDemand] = []
    meetings: list[Meeting] = []
    for one in played:
        needs: Sequence[SectionNeed | _Whole] = [need for need in one.garment.sections if need.role == one.role.key]
        strands = one.strands
        if not needs:
            needs, strands = [_Whole.of(one)], 1
        demands, met = sections_of(*one.key, needs, draft_of(season, one.garment), strands=strands)
        sections += demands
        meetings += met
    return AllotmentProblem(
        sections=tuple(sections),
        meetings=tuple(meetings),
        lots=lots,
        may_play={one.key: _suitable(one, lots) for one in played},
        sureness=season.sureness,
        garment_sureness={one.garment.key: one.planned.sureness for one in played},
    )


@dataclass(frozen=True, slots=True)
class _Whole:
    """All that a role knits, where its sections are not known."""

    piece: str
    section: str
    name: str
    length_m: float
    own_sd_m: float
    shared_sd_m: float

    @classmethod
    def of(cls, one: _Played) -> _Whole:
        need = one.planned.need_m
        own = min(SECTION_RELATIVE_SD * need.mean, need.sd)
        return cls("whole", one.name, one.garment.name, need.mean, own, math.sqrt(max(need.sd**2 - own**2, 0.0)))


def _change_rows(season: Season, played: Sequence[_Played], found: Allotment) -> dict[str, tuple[int, int]]:
    """Give the row in which the first of two lots is used up, by the stitches of the draft."""
    begun = {one.section: one.share for one in reversed(found.portions) if one.share < 1}
    rows = {}
    for one in played:
        draft = draft_of(season, one.garment)
        for piece, section in draft.sections() if draft else ():
            for number in ("", " 1", " 2"):
                key = f"{one.garment.key}/{one.name}/{piece.key}{number}/{section.key}"
                if key in begun:
                    done = np.cumsum(section.stitches) <= begun[key] * section.worked
                    rows[key] = int(done.sum()), section.rows
    return rows


def _lots(season: Season) -> tuple[LotSupply, ...]:
    """Give every lot of the cupboard and every line of an order, with its put-ups; opened yarn is one."""
    yarns = season.yarn_by_key
    put_ups = {
        lot.key: [yarns[lot.yarn].length_m] * lot.put_ups
        + ([] if not lot.mass_g else [lot.mass_g / yarns[lot.yarn].mass_g * yarns[lot.yarn].length_m])
        for lot in season.cupboard
    }
    return tuple(
        LotSupply(
            key=supply.key,
            yarn=supply.yarn,
            colour=supply.colour,
            dye_lot=supply.dye_lot,
            length_m=supply.length_m.mean,
            sd_m=supply.length_m.sd,
            put_ups=tuple(put_ups.get(supply.key) or _ordered(supply.length_m.mean, yarns[supply.yarn].length_m)),
        )
        for supply in supplies(season.cupboard, season.orders, yarns)
    )


def _ordered(length_m: float, put_up_m: float) -> list[float]:
    return [put_up_m] * round(length_m / put_up_m)


def _suitable(one: _Played, lots: Sequence[LotSupply]) -> tuple[str, ...]:
    """Give the lots of its yarn and colour, or only those that she named for the role."""
    named = tuple(lot.key for lot in lots if lot.key in one.role.lots and lot.yarn == one.planned.yarn)
    same = (one.planned.yarn, one.planned.colour)
    return named or tuple(lot.key for lot in lots if (lot.yarn, lot.colour) == same)


def _substitutes(problem: AllotmentProblem, played: Sequence[_Played]) -> dict[tuple[str, str], tuple[str, ...]]:
    """Give the lots of the same yarn in another colour, by role."""
    return {
        one.key: tuple(
            lot.key for lot in problem.lots if lot.yarn == one.planned.yarn and lot.key not in problem.may_play[one.key]
        )
        for one in played
    }
