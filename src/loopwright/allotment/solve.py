"""Which dye lot knits which section: the best allotment, level by level, with its proof."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from loopwright.allotment.fields import apart, as_fields
from loopwright.allotment.formulation import Group
from loopwright.allotment.lacks import lacks_of
from loopwright.allotment.lots import DyeLot, dye_lots
from loopwright.allotment.model import (
    LEVEL_GRAIN,
    Allotment,
    AllotmentProblem,
    Levels,
    Meeting,
    Proof,
    SectionDemand,
)
from loopwright.allotment.reading import Sharing, changes_of, portions_of, uses_of
from loopwright.allotment.search import Best, Search

__all__ = ["TIME_LIMIT_S", "allot"]

TIME_LIMIT_S = 10.0
"""For each integer programme, unless another is asked for."""


def allot(problem: AllotmentProblem, *, time_limit_s: float = TIME_LIMIT_S, with_next_best: bool = True) -> Allotment:
    """Give which dye lot knits which section, whole or changed once at a row.

    Best is, the weightiest first: the least yarn in uncovered sections, each metre by how much it shows; the fewest
    meetings on a plain field; the fewest changes side by side (seams, pairs); the fewest where the eye expects one
    (stripe, rib, hem, cuff, yoke edge, band); the fewest dye lots opened; the least left over in opened put-ups. Each
    level is solved as an integer programme with the better ones held. Groups of sections that have nothing to do with
    each other are solved apart, which is exact, for every level is a sum over them. How an allotment is made sure, with
    doubts that sections share, is told in :mod:`loopwright.allotment.formulation`. The order of the input does
    not matter.

    :param time_limit_s: for each programme. When it ends, the best found stands, with its bound.
    :param with_next_best: also give how good the best other allotment is.
    Source: common practice for what is preferred; the order of the levels is our judgement.
    """
    lots = {lot.key: lot for lot in dye_lots(problem)}
    groups = list(_groups(problem, lots.values()))
    fields = [as_fields(group) for group in groups]
    found = [Search(group, time_limit_s).best(with_next_best=with_next_best) for group, _ in fields]
    sharing = Sharing.joined(apart(one.sharing, members) for one, (_, members) in zip(found, fields, strict=True))
    sections = {one.key: one for one in problem.sections}
    uncovered = tuple(sorted(key for key in sections if key not in sharing.lots_of))
    grouped = {section.key for group in groups for section in group.sections}
    alone = Levels(uncovered_m=_bare_m(one for key, one in sections.items() if key not in grouped))
    levels = _sum([alone, *(one.levels for one in found)])
    bound = _sum([alone, *(one.bound for one in found)])
    return Allotment(
        portions=portions_of(sharing, sections, lots),
        uncovered=uncovered,
        changes=changes_of(sharing, sections, _sorted(problem.meetings), lots),
        uses=uses_of(sharing, sections, lots),
        levels=levels,
        proof=Proof(
            status="proven" if all(one.proven for one in found) else "time limit",
            bound=bound,
            gap=_gap(levels, bound),
            time_limit_s=time_limit_s,
            next_best=_next_best(levels, found),
            programmes=sum(one.programmes for one in found),
        ),
        lacks=lacks_of(problem, sharing, lots),
    )


def _bare_m(sections: Iterable[SectionDemand]) -> float:
    return math.fsum(one.visibility * one.length_m for one in sections)


def _sorted(meetings: Iterable[Meeting]) -> list[Meeting]:
    return sorted(set(meetings), key=lambda one: (one.one, one.other, one.one_at, one.other_at, one.place))


def _sum(parts: Iterable[Levels]) -> Levels:
    return Levels(*(math.fsum(column) for column in zip(*(one.as_tuple() for one in parts), strict=True)))


def _less(one: Levels, other: Levels) -> Levels:
    pairs = zip(one.as_tuple(), other.as_tuple(), strict=True)
    return Levels(*(a - b for a, b in pairs))


def _gap(levels: Levels, bound: Levels) -> float:
    """Give by how much the first level that is not proven may be too high; 0 where all are proven."""
    for value, least, grain in zip(levels.as_tuple(), bound.as_tuple(), LEVEL_GRAIN, strict=True):
        if value - least > grain:
            return value - least
    return 0.0


def _groups(problem: AllotmentProblem, lots: Iterable[DyeLot]) -> Iterator[Group]:
    """Give what has to do with each other, group by group; sections that no lot suits are in none."""
    by_lot = list(lots)
    sections = sorted(problem.sections, key=lambda one: one.key)
    group_of: dict[tuple[str, str], int] = {}
    for index, lot in enumerate(by_lot):
        joined = {group_of[role] for role in lot.roles if role in group_of} | {index}
        number = min(joined)
        group_of.update({role: number for role, old in group_of.items() if old in joined})
        group_of.update(dict.fromkeys(lot.roles, number))
    for number in sorted(set(group_of.values())):
        own = tuple(one for one in sections if group_of.get((one.garment, one.role)) == number)
        if not own:
            continue
        keys = {one.key for one in own}
        yield Group(
            sections=own,
            lots=tuple(lot for lot in by_lot if any(group_of[role] == number for role in lot.roles)),
            meetings=tuple(one for one in _sorted(problem.meetings) if {one.one, one.other} <= keys),
            sureness=max(problem.sureness_of(one.garment) for one in own),
            alternate=problem.alternate,
        )


def _next_best(levels: Levels, found: Sequence[Best]) -> Levels | None:
    """Give how good the whole is with the next best of that group in which this costs least."""
    others = [_sum([_less(levels, one.levels), one.next_best]) for one in found if one.next_best is not None]
    return min(others, default=None)
