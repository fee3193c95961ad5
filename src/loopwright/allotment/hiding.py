"""Where a substitute colour hides best when yarn is short, how much it frees, and how sure she then is."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import Final

from loopwright.allotment.lacks import all_of_it
from loopwright.allotment.lots import DyeLot, chance_of, dye_lots, related
from loopwright.allotment.model import Allotment, AllotmentProblem, Lack, SectionDemand
from loopwright.allotment.solve import allot

__all__ = ["LOWER_SLEEVE_SHARE", "Hiding", "HidingPlace", "hiding"]

MOST_VISIBLE: Final = 0.7
"""What shows more than a sleeve is no place to hide another colour."""
LOWER_SLEEVE: Final = "lower sleeve"
LOWER_SLEEVE_SHARE: Final = 1 / 3
LOWER_SLEEVE_VISIBILITY: Final = 0.65
MOST_TRIED: Final = 8
"""So many sets of places are tried against the dye lots before the first by length alone is given."""


@dataclass(frozen=True, slots=True)
class HidingPlace:
    """Sections that a substitute colour may knit, all of one part.

    :ivar part: such as ``hem``, ``front band``, or ``lower sleeve``.
    :ivar share: how much of each section.
    :ivar length_m: metres of the short yarn that it frees.
    :ivar p_after: chance that the yarn suffices for the rest, all lots of it together.
    :ivar substitutes: lots that hold as much, as sure as she wants, beyond what else they are to knit.
    """

    part: str
    sections: tuple[str, ...]
    share: float
    length_m: float
    visibility: float
    p_after: float
    substitutes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Hiding:
    """Where another colour hides in one garment that is short of a yarn.

    :ivar p_now: chance that the yarn suffices for all of it.
    :ivar places: what may be knitted in another colour, the least visible first.
    :ivar best: the least visible places that together make her as sure as she wants; empty where none do.
    :ivar substitutes: lots that hold all of ``best``.
    :ivar holds: whether the rest can then be covered lot by lot, and not only by length.
    """

    garment: str
    role: str
    p_now: float
    places: tuple[HidingPlace, ...]
    best: tuple[HidingPlace, ...]
    p_best: float
    substitutes: tuple[str, ...]
    holds: bool


@dataclass(frozen=True, slots=True)
class _Short:
    """One role that is short, with all that bears on it."""

    problem: AllotmentProblem
    role: tuple[str, str]
    own: tuple[SectionDemand, ...]
    others: tuple[tuple[SectionDemand, float], ...]
    pool: DyeLot
    pool_is_one: bool
    spare: tuple[tuple[DyeLot, tuple[tuple[SectionDemand, float], ...]], ...]

    def p_without(self, places: Collection[HidingPlace]) -> float:
        gone = {key: place.share for place in places for key in place.sections}
        own = [(one, 1 - gone.get(one.key, 0.0)) for one in self.own]
        return chance_of(self.pool, [*self.others, *own])

    def holding(self, sections: Sequence[str], share: Mapping[str, float]) -> tuple[str, ...]:
        taken = [(one, share[one.key]) for one in self.own if one.key in sections]
        sureness = self.problem.sureness_of(self.role[0])
        return tuple(lot.key for lot, given in self.spare if chance_of(lot, [*given, *taken]) >= sureness)


def hiding(
    problem: AllotmentProblem, allotment: Allotment, substitutes: Mapping[tuple[str, str], Collection[str]]
) -> tuple[Hiding, ...]:
    """Give where a substitute hides, for each role that is short.

    Ranked by how much a part shows: hem, cuffs, bands, the lower third of the sleeves, sleeves. Chances are those of
    all lots of the yarn together against all that they are to knit, the shared doubts added up.

    :param substitutes: lots that may stand in for a role, by (garment, role).
    Source: common practice, no source.
    """
    lots = dye_lots(problem)
    return tuple(
        _hide(_short(problem, allotment, lack, lots, substitutes.get((lack.garment, lack.role), ())))
        for lack in allotment.lacks
        if lack.kind != "no lot"
    )


def _short(
    problem: AllotmentProblem, allotment: Allotment, lack: Lack, lots: Sequence[DyeLot], substitutes: Collection[str]
) -> _Short:
    role = lack.garment, lack.role
    able = [lot for lot in lots if role in lot.roles]
    return _Short(
        problem=problem,
        role=role,
        own=tuple(one for one in problem.sections if (one.garment, one.role) == role),
        others=tuple(given for lot in able for given in _given(problem, allotment, lot, but=role)),
        pool=all_of_it(able),
        pool_is_one=len(able) == 1,
        spare=tuple((lot, tuple(_given(problem, allotment, lot))) for lot in lots if set(lot.keys) & set(substitutes)),
    )


def _given(
    problem: AllotmentProblem, allotment: Allotment, lot: DyeLot, but: tuple[str, str] | None = None
) -> Iterator[tuple[SectionDemand, float]]:
    sections = {one.key: one for one in problem.sections}
    for portion in allotment.portions:
        section = sections[portion.section]
        if portion.lots == lot.keys and (section.garment, section.role) != but:
            yield section, portion.share


def _hide(short: _Short) -> Hiding:
    places = tuple(sorted(_places(short), key=lambda place: (place.visibility, place.part)))
    best, holds = _best(short, places)
    shares = {key: place.share for place in best for key in place.sections}
    return Hiding(
        garment=short.role[0],
        role=short.role[1],
        p_now=short.p_without(()),
        places=places,
        best=best,
        p_best=short.p_without(best),
        substitutes=short.holding(tuple(shares), shares) if best else (),
        holds=holds,
    )


def _places(short: _Short) -> Iterator[HidingPlace]:
    parts: dict[str, list[SectionDemand]] = {}
    for section in short.own:
        if section.part and section.visibility <= MOST_VISIBLE:
            parts.setdefault(section.part, []).append(section)
    for part, sections in parts.items():
        yield _place(short, part, sections, 1.0, max(one.visibility for one in sections))
        if part == "sleeve":
            yield _place(short, LOWER_SLEEVE, sections, LOWER_SLEEVE_SHARE, LOWER_SLEEVE_VISIBILITY)


def _place(short: _Short, part: str, sections: Sequence[SectionDemand], share: float, visibility: float) -> HidingPlace:
    keys = tuple(one.key for one in sections)
    bare = HidingPlace(part, keys, share, share * sum(one.length_m for one in sections), visibility, 0.0, ())
    substitutes = short.holding(keys, dict.fromkeys(keys, share))
    return replace(bare, p_after=short.p_without((bare,)), substitutes=substitutes)


def _best(short: _Short, places: Sequence[HidingPlace]) -> tuple[tuple[HidingPlace, ...], bool]:
    """Give the least visible set of places that suffices, the fewest of equal visibility, and whether it holds."""
    sureness = short.problem.sureness_of(short.role[0])
    sets = [
        chosen
        for number in range(1, len(places) + 1)
        for chosen in combinations(places, number)
        if not {LOWER_SLEEVE, "sleeve"} <= {place.part for place in chosen} and short.p_without(chosen) >= sureness
    ]
    sets.sort(key=lambda chosen: (chosen[-1].visibility, len(chosen), sum(place.length_m for place in chosen)))
    for chosen in sets[:MOST_TRIED]:
        if _holds(short, chosen):
            return chosen, True
    return (sets[0], False) if sets else ((), False)


def _holds(short: _Short, places: Sequence[HidingPlace]) -> bool:
    """Say whether everything else of the role is covered, lot by lot."""
    if short.pool_is_one and not short.others:
        return True
    gone = {key: place.share for place in places for key in place.sections}
    problem = related(short.problem, short.role)
    left = tuple(_scaled(one, 1 - gone.get(one.key, 0.0)) for one in problem.sections if gone.get(one.key, 0.0) < 1)
    keys = {one.key for one in left}
    meetings = tuple(one for one in problem.meetings if {one.one, one.other} <= keys)
    uncovered = set(allot(replace(problem, sections=left, meetings=meetings), with_next_best=False).uncovered)
    return not any(one.key in uncovered for one in left if (one.garment, one.role) == short.role)


def _scaled(section: SectionDemand, share: float) -> SectionDemand:
    if share == 1:
        return section
    return replace(
        section,
        length_m=share * section.length_m,
        own_sd_m=share * section.own_sd_m,
        shared_sd_m=share * section.shared_sd_m,
    )
