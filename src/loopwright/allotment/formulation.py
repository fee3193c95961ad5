r"""An allotment as an integer programme.

For section s and dye lot d: which lot knits its first rows, which its last (f, g, whole numbers), and the share of the
section that d knits (x); c says that the part of the garment to which s belongs is left uncovered. So a section is
knitted by one lot or by two, one after the other:

.. math:: \sum_d f_{sd} + c_s = \sum_d g_{sd} + c_s = \sum_d x_{sd} + c_s = 1, \qquad x_{sd} \le f_{sd} + g_{sd}

**Sureness.** A lot of M metres suffices for what it is given with probability p when

.. math:: \sum_s m_s x_{sd} + z_p\,\sqrt{S_d^2 o_d + \sum_s (w_s x_{sd})^2 + (\sum_s h_s x_{sd})^2} \le M_d

with own doubts w and shared doubts h, o = 1 where it is opened. The root is the length of a vector v(x, o). It is not
linear, but by the inequality of Cauchy and Schwarz never less than its projection on any other vector,
:math:`|v| \ge v \cdot \bar v / |\bar v|`, and that is linear. Each solution that fails the true condition gives one
more such row, taken at that solution, until none fails: no allotment that holds is ever cut off, and none that fails
is given out.

A garment that is knitted from k dye lots of one kind wants each of them with probability :math:`p^{1/k}`; the whole
number k is chosen with the rest, by rows that bind only when k is that large. Their joint chance is then at least p
(:func:`loopwright.allotment.lots.joint_chance`).
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from statistics import NormalDist

from loopwright.allotment.lots import DyeLot, alike, spread_m
from loopwright.allotment.model import BESIDE, VISIBLE, At, Meeting, Place, SectionDemand
from loopwright.allotment.programme import Programme

__all__ = [
    "INSIDE",
    "LEAST_CHANGED",
    "LEAST_SHARE",
    "MOST_LOTS",
    "Formulation",
    "Group",
    "cut_at",
    "deviations",
    "ends",
    "formulate",
    "level_of",
    "may_change",
    "part_key",
]

LEAST_SHARE = 0.05
"""A section knitted from two lots has at least this share from each; a change nearer to an edge is one at the edge."""
LEAST_CHANGED = 0.1
"""A section of a smaller share of its role's yarn is knitted from one lot, such as a cuff; our judgement."""
INSIDE = 2
"""A change in the middle of a rib, a hem or a band weighs as two at its edge; our judgement."""
MOST_LOTS = 6
"""Most dye lots of one kind that one garment is knitted from; our judgement."""


@dataclass(frozen=True)
class Group:
    """Sections and dye lots that have nothing to do with any others.

    :ivar sureness: the highest that any of its garments wants.
    """

    sections: tuple[SectionDemand, ...]
    lots: tuple[DyeLot, ...]
    meetings: tuple[Meeting, ...]
    sureness: float
    alternate: bool

    @cached_property
    def role_m(self) -> dict[tuple[str, str], float]:
        """Give the metres of each role of each garment."""
        metres: dict[tuple[str, str], float] = defaultdict(float)
        for one in self.sections:
            metres[one.garment, one.role] += one.length_m
        return metres

    def suiting(self, section: SectionDemand) -> tuple[DyeLot, ...]:
        """Give the dye lots that may knit a section."""
        return tuple(lot for lot in self.lots if (section.garment, section.role) in lot.roles)


_Use = dict[tuple[str, str], int]
"""Variables by section and dye lot."""


@dataclass(slots=True)
class Formulation:
    """The programme of one group, with what its variables mean.

    :ivar costs: of each level, the weightiest first.
    :ivar more: variables that say, from two on, that some garment has so many dye lots.
    :ivar opened: variables that count put-ups, by dye lot and their metres.
    """

    group: Group
    programme: Programme
    first: _Use = field(default_factory=dict)
    last: _Use = field(default_factory=dict)
    share: _Use = field(default_factory=dict)
    bare: dict[tuple[str, str, str], int] = field(default_factory=dict)
    open: dict[str, int] = field(default_factory=dict)
    more: list[int] = field(default_factory=list)
    opened: dict[tuple[str, float], int] = field(default_factory=dict)
    costs: tuple[dict[int, float], ...] = field(default_factory=lambda: tuple({} for _ in range(6)))

    def edge(self, at: str, section: SectionDemand) -> dict[tuple[str, str, str], dict[int, float]]:
        """Give, by shade, the variables that say which lot lies at the first or the last rows of a section."""
        use = self.first if at == "first" else self.last
        by_shade: dict[tuple[str, str, str], dict[int, float]] = {}
        for lot in self.group.suiting(section):
            by_shade.setdefault(lot.shade, {})[use[section.key, lot.key]] = 1.0
        return by_shade


def ends(meeting: Meeting) -> list[tuple[str, str]]:
    """Give which rows of the two sections meet, first or last; along a seam first meet first and last meet last."""
    rows: Mapping[At, tuple[str, ...]] = {"begin": ("first",), "end": ("last",), "side": ("first", "last")}
    if meeting.one_at == meeting.other_at == "side":
        return [("first", "first"), ("last", "last")]
    return [(one, other) for one in rows[meeting.one_at] for other in rows[meeting.other_at]]


def level_of(place: Place) -> tuple[int, int]:
    """Give which level a change at a place counts in, and how much."""
    if place in VISIBLE:
        return 1, 1
    return (2, BESIDE[place]) if place in BESIDE else (3, 1)


def deviations(sureness: float, lots: int) -> float:
    """Give how many standard deviations each of so many lots needs, so that all suffice: the quantile of p^(1/k)."""
    return NormalDist().inv_cdf(sureness ** (1 / lots))


def formulate(group: Group) -> Formulation:
    """Give the programme of a group, with the first rows for its sureness."""
    made = Formulation(group, Programme())
    for section in group.sections:
        _cover(made, section)
    for lot in group.lots:
        _open(made, lot)
    _count_lots(made)
    for section in group.sections:
        _count_split(made, section)
    for meeting, times in Counter(group.meetings).items():
        _count_meeting(made, meeting, times)
    for lot in group.lots:
        cut_at(made, lot, {section.key: 1.0 for section, _ in _given(made, lot)})
    return made


def _cover(made: Formulation, section: SectionDemand) -> None:
    """Let one lot knit the first rows and one the last, or leave its whole part uncovered.

    Where it cannot be changed inside, one variable for each lot says all.
    """
    programme = made.programme
    part = part_key(section)
    if part not in made.bare:
        made.bare[part] = programme.variable()
    bare = made.bare[part]
    made.costs[0][bare] = made.costs[0].get(bare, 0.0) + section.visibility * section.length_m
    lots = made.group.suiting(section)
    uses: tuple[dict[tuple[str, str], int], ...] = (made.first, made.last, made.share)
    if not may_change(made.group, section):
        for lot in lots:
            made.first[section.key, lot.key] = programme.variable()
            for use in uses[1:]:
                use[section.key, lot.key] = made.first[section.key, lot.key]
        uses = uses[:1]
    for use in uses:
        for lot in lots:
            if (section.key, lot.key) not in use:
                use[section.key, lot.key] = programme.variable(whole=use is not made.share)
        row = {use[section.key, lot.key]: 1.0 for lot in lots}
        programme.require(row | {bare: 1.0}, least=1.0, most=1.0)
    if len(uses) == 1:
        return
    for lot in lots:
        key = section.key, lot.key
        programme.require({made.share[key]: 1.0, made.first[key]: -1.0, made.last[key]: -1.0}, most=0.0)
        for use in (made.first, made.last):
            programme.require({made.share[key]: 1.0, use[key]: -LEAST_SHARE}, least=0.0)


def part_key(section: SectionDemand) -> tuple[str, str, str]:
    """Give what is left uncovered together: all of one part in one role, else the section alone."""
    return section.garment, section.role, section.part or f"section {section.key}"


def may_change(group: Group, section: SectionDemand) -> bool:
    """Say whether the lot may change inside a section.

    Not unseen on a plain field, nor where there is but one, nor in a small section.
    """
    shades = [lot.shade for lot in group.suiting(section)]
    if section.length_m < LEAST_CHANGED * group.role_m[section.garment, section.role]:
        return False
    if section.within in VISIBLE and not group.alternate:
        return len(set(shades)) < len(shades)
    return len(shades) > 1


def _given(made: Formulation, lot: DyeLot) -> Iterator[tuple[SectionDemand, int]]:
    for section in made.group.sections:
        if (section.key, lot.key) in made.share:
            yield section, made.share[section.key, lot.key]


def _open(made: Formulation, lot: DyeLot) -> None:
    """Open a lot for what it knits, and put-ups of it that hold the mean."""
    programme = made.programme
    opened = made.open[lot.key] = programme.variable()
    made.costs[4][opened] = 1.0
    metres = {share: section.length_m for section, share in _given(made, lot)}
    made.costs[5].update({share: -length_m for share, length_m in metres.items()})
    programme.require(metres | {opened: -lot.length_m}, most=0.0)
    held = dict(metres)
    for length_m, count in sorted(Counter(lot.put_ups).items()):
        number = made.opened[lot.key, length_m] = programme.variable(upper=count)
        made.costs[5][number] = length_m
        held[number] = -length_m
    programme.require(held, most=0.0)


def _count_lots(made: Formulation) -> None:
    """Bind the number of lots of every garment to the rows that make each lot surer."""
    programme, group = made.programme, made.group
    used: dict[str, dict[str, int]] = defaultdict(dict)
    for section in group.sections:
        for lot in group.suiting(section):
            by_lot = used[section.garment]
            if lot.key not in by_lot:
                by_lot[lot.key] = programme.variable(whole=False)
                programme.require({by_lot[lot.key]: 1.0, made.open[lot.key]: -1.0}, most=0.0)
            for use in (made.first, made.last):
                programme.require({use[section.key, lot.key]: 1.0, by_lot[lot.key]: -1.0}, most=0.0)
    most = min(max((len(by_lot) for by_lot in used.values()), default=1), MOST_LOTS)
    made.more += [programme.variable() for _ in range(2, most + 1)]
    for fewer, one_more in zip(made.more, made.more[1:], strict=False):
        programme.require({fewer: 1.0, one_more: -1.0}, least=0.0)
    for by_lot in used.values():
        row = dict.fromkeys(by_lot.values(), 1.0) | dict.fromkeys(made.more, -1.0)
        programme.require(row, most=1.0)


def _count_split(made: Formulation, section: SectionDemand) -> None:
    """Count a change of shade inside a section; on a plain field it may be forbidden."""
    first, last = made.edge("first", section), made.edge("last", section)
    if len(first) < 2 or not may_change(made.group, section):
        return
    level, weight = level_of(section.within)
    if level == 1 and not made.group.alternate:
        for shade, variables in first.items():
            made.programme.require(variables | dict.fromkeys(last[shade], -1.0), least=0.0, most=0.0)
        return
    split = made.programme.variable(whole=False)
    made.costs[level][split] = INSIDE * weight if level == 3 else weight
    for shade, variables in first.items():
        made.programme.require({split: 1.0} | dict.fromkeys(variables, -1.0) | last[shade], least=0.0)


def _count_meeting(made: Formulation, meeting: Meeting, times: int) -> None:
    """Count two shades that meet so often, or covered and uncovered sections; a plain field may forbid the first."""
    by_key = {one.key: one for one in made.group.sections}
    one, other = by_key[meeting.one], by_key[meeting.other]
    if not alike(one, other):
        return
    level, weight = level_of(meeting.place)
    meets = made.programme.variable(whole=False)
    made.costs[level][meets] = times * weight
    sides = [(made.edge(a, one), one, made.edge(b, other), other) for a, b in ends(meeting)]
    for near, _, far, beyond in [*sides, *((d, e, b, c) for b, c, d, e in sides)]:
        for shade, variables in near.items():
            lacks = variables | dict.fromkeys(far.get(shade, {}), -1.0)
            made.programme.require({v: -factor for v, factor in lacks.items()} | {meets: 1.0}, least=0.0)
            if level == 1 and not made.group.alternate:
                made.programme.require(lacks | {made.bare[part_key(beyond)]: -1.0}, most=0.0)


def cut_at(made: Formulation, lot: DyeLot, shares: Mapping[str, float]) -> None:
    """Add the rows by which a lot is sure enough, with its spread projected on that of these shares."""
    given = [(section, variable, shares.get(section.key, 0.0)) for section, variable in _given(made, lot)]
    spread = spread_m(lot, [(section, share) for section, _, share in given])
    if spread == 0:
        return
    shared = math.fsum(share * section.shared_sd_m for section, _, share in given)
    most = spread_m(lot, [(section, 1.0) for section, _, _ in given])
    nearest = deviations(made.group.sureness, 1)
    for count in range(1, len(made.more) + 2):
        z = deviations(made.group.sureness, count)
        row = {
            variable: section.length_m + z * (section.own_sd_m**2 * share + section.shared_sd_m * shared) / spread
            for section, variable, share in given
        }
        row[made.open[lot.key]] = z * lot.sd_m**2 / spread - lot.length_m
        slack = 0.0
        if count > 1:
            slack = (z - nearest) * most
            row[made.more[count - 2]] = slack
        made.programme.require(row, most=slack)
