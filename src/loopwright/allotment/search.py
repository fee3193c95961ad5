"""The search for the best allotment of one group, level by level."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from loopwright.allotment.formulation import Formulation, Group, cut_at, deviations, formulate, part_key
from loopwright.allotment.lots import DyeLot, spread_m
from loopwright.allotment.model import LEVEL_GRAIN, Levels
from loopwright.allotment.put_ups import least_put_ups
from loopwright.allotment.reading import Sharing, changes_of, given_of, levels_of, read

__all__ = ["Best", "Search"]

LOTS, LEFT = 4, 5
"""Levels: dye lots opened, and metres left over in opened put-ups, the last."""
MOST_CUTS = 100
"""Rounds of cutting off what is not sure enough, before a level is given up as not proven."""
NOT_SURE = 2e-6
"""By so little of its length may a lot fall short of its sureness: what the solver's arithmetic leaves."""

_Row = tuple[Mapping[int, float], float]


@dataclass(frozen=True, slots=True)
class Best:
    """The best allotment of one group, its bound, and how good the best other is that covers as much."""

    sharing: Sharing
    levels: Levels
    bound: Levels
    proven: bool
    next_best: Levels | None
    programmes: int


@dataclass(slots=True)
class _Descent:
    """How far down the levels a search has come.

    :ivar limits: the most that each level may be from now on.
    """

    sharing: Sharing | None
    limits: list[tuple[int, float]]
    rows: Sequence[_Row]
    bound: list[float]
    proven: bool = True


class Search:
    """The search of one group.

    :param time_limit_s: for each integer programme.
    """

    def __init__(self, group: Group, time_limit_s: float) -> None:
        self.group = group
        self.time_limit_s = time_limit_s
        self.sections = {one.key: one for one in group.sections}
        self.lots = {lot.key: lot for lot in group.lots}
        self.programmes = 0

    @cached_property
    def made(self) -> Formulation:
        """Give the programme; where one lot does for all, none is wanted."""
        return formulate(self.group)

    def best(self, *, with_next_best: bool) -> Best:
        """Give the best allotment of the group."""
        found = self._down(0, _Descent(self._from_one_lot() or Sharing(), [], (), [0.0] * len(LEVEL_GRAIN)))
        assert found.sharing is not None  # nothing covered is an allotment too
        levels = self.levels(found.sharing)
        next_best = None
        if with_next_best and found.proven and len(self.group.lots) > 1 and found.sharing.lots_of:
            next_best = self._next_best(found.sharing, levels)
        return Best(found.sharing, levels, Levels(*found.bound), found.proven, next_best, self.programmes)

    def levels(self, sharing: Sharing) -> Levels:
        """Give how good a sharing is."""
        changes = changes_of(sharing, self.sections, self.group.meetings, self.lots)
        return levels_of(sharing, self.group.sections, changes)

    def _next_best(self, sharing: Sharing, levels: Levels) -> Levels | None:
        limits = [(0, levels.uncovered_m + LEVEL_GRAIN[0])]
        rows = (self._other_than(sharing),)
        other = self._down(1, _Descent(None, limits, rows, [0.0] * len(LEVEL_GRAIN)))
        return self.levels(other.sharing) if other.sharing is not None and other.proven else None

    def _other_than(self, sharing: Sharing) -> _Row:
        """Give the row by which one section at least is knitted otherwise."""
        row: dict[int, float] = {}
        for key, section in self.sections.items():
            if key in sharing.lots_of:
                first, last = sharing.lots_of[key]
                row |= {self.made.first[key, first]: 1.0, self.made.last[key, last]: 1.0}
            else:
                row[self.made.bare[part_key(section)]] = 1.0
        return row, len(row) - 1.0

    def _from_one_lot(self) -> Sharing | None:
        """Give everything to one lot, where that is sure enough: in all but the last level nothing can be better."""
        for lot in self.group.lots:
            if not all((one.garment, one.role) in lot.roles for one in self.group.sections):
                continue
            whole = Sharing(
                lots_of=dict.fromkeys(self.sections, (lot.key, lot.key)),
                share={(key, lot.key): 1.0 for key in self.sections},
                opened={lot.key: lot.put_ups},
            )
            if not self._failing(whole):
                return whole
        return None

    def _down(self, begin: int, at: _Descent) -> _Descent:
        """Solve one level after the other, each with the better ones held.

        A level that already stands at the least it can be needs no programme, nor does the choice of one lot's put-ups.
        """
        for level in range(begin, len(LEVEL_GRAIN)):
            opened = self._opening_least(at.sharing) if level == LEFT else None
            at.sharing = opened or at.sharing
            if at.sharing is not None and (opened or self._value(at.sharing, level) <= _floor(level, at.sharing)):
                at.bound[level] = self._value(at.sharing, level) if at.proven else 0.0
            else:
                self._solve_level(level, at)
            if at.sharing is None:
                break
            at.limits.append((level, self._value(at.sharing, level) + LEVEL_GRAIN[level]))
        return at

    def _value(self, sharing: Sharing, level: int) -> float:
        return self.levels(sharing).as_tuple()[level]

    def _solve_level(self, level: int, at: _Descent) -> None:
        """Make one level as good as it can be; what stood before stays where nothing is found in time."""
        better, least = self._sure(level, at)
        if at.proven:
            at.bound[level] = least
        at.sharing = better or at.sharing
        at.proven = at.proven and better is not None and self._value(better, level) - least <= LEVEL_GRAIN[level]

    def _opening_least(self, sharing: Sharing | None) -> Sharing | None:
        """Give the same with the best put-ups of the only lot there is, or None where a programme must choose."""
        if len(self.group.lots) > 1 or sharing is None or not sharing.lots_of:
            return None
        (lot,) = self.group.lots
        used = math.fsum(share * one.length_m for one, share in given_of(sharing, lot, self.sections))
        put_ups = least_put_ups(lot.put_ups, used)
        return None if put_ups is None else replace(sharing, opened={lot.key: put_ups})

    def _sure(self, level: int, at: _Descent) -> tuple[Sharing | None, float]:
        """Give the best of one level that is sure enough, or None where none was found in time; and its bound."""
        least = 0.0
        for _ in range(MOST_CUTS):
            held = [*at.rows, *((self.made.costs[level], limit) for level, limit in at.limits)]
            solved = self.made.programme.solve(self.made.costs[level], self.time_limit_s, held)
            self.programmes += 1
            least = max(least, solved.bound)
            if solved.values is None:
                break
            sharing = read(self.made, solved.values)
            failing = self._failing(sharing)
            if not failing:
                return sharing, least
            if solved.status != "proven":
                break
            for lot in failing:
                cut_at(self.made, lot, {one.key: share for one, share in given_of(sharing, lot, self.sections)})
        return None, least

    def _failing(self, sharing: Sharing) -> list[DyeLot]:
        """Give the lots that are not as sure as they must be."""
        used: dict[str, set[str]] = {}
        for key, lot in sharing.share:
            used.setdefault(self.sections[key].garment, set()).add(lot)
        if not used:
            return []
        z = deviations(self.group.sureness, max(map(len, used.values())))
        failing = []
        for one in self.group.lots:
            given = given_of(sharing, one, self.sections)
            wants = math.fsum(share * section.length_m for section, share in given) + z * spread_m(one, given)
            if given and wants > one.length_m * (1 + NOT_SURE):
                failing.append(one)
        return failing


def _floor(level: int, sharing: Sharing) -> float:
    """Give what a level cannot be below, with its grain: nothing, or one lot where anything is covered."""
    least = 1.0 if level == LOTS and sharing.lots_of else 0.0
    return least + LEVEL_GRAIN[level]
