"""Dye lots: what may be knitted together unseen, whether two may stand side by side, and whether one suffices."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from statistics import NormalDist

from loopwright.allotment.model import AllotmentProblem, LotSupply, SectionDemand

__all__ = ["DyeLot", "alike", "chance_of", "dye_lots", "joint_chance", "related", "spread_m"]


@dataclass(frozen=True, slots=True)
class DyeLot:
    """All lots of one yarn, colour and dye lot that may play the same roles; their put-ups join unseen.

    :ivar shade: what tells it from others: yarn, colour, and the dye lot or, where it is not known, the lot's key.
    :ivar length_m, sd_m: all of it; lots err independently, and the put-ups of one lot together.
    """

    keys: tuple[str, ...]
    shade: tuple[str, str, str]
    roles: frozenset[tuple[str, str]]
    length_m: float
    sd_m: float
    put_ups: tuple[float, ...]

    @property
    def key(self) -> str:
        """Give the key of its first lot, by which it is told from others."""
        return self.keys[0]


def dye_lots(problem: AllotmentProblem) -> tuple[DyeLot, ...]:
    """Give the dye lots, by key; lots whose dye lot is not known stand each for itself."""
    roles_of: dict[str, set[tuple[str, str]]] = {lot.key: set() for lot in problem.lots}
    for role, keys in problem.may_play.items():
        for key in keys:
            roles_of[key].add(role)
    groups: dict[tuple[tuple[str, str, str], frozenset[tuple[str, str]]], list[LotSupply]] = {}
    for lot in sorted(problem.lots, key=lambda lot: lot.key):
        known = f"dye lot {lot.dye_lot}" if lot.dye_lot else f"lot {lot.key}"
        groups.setdefault(((lot.yarn, lot.colour, known), frozenset(roles_of[lot.key])), []).append(lot)
    return tuple(
        DyeLot(
            keys=tuple(lot.key for lot in group),
            shade=shade,
            roles=roles,
            length_m=math.fsum(lot.length_m for lot in group),
            sd_m=math.hypot(*(lot.sd_m for lot in group)),
            put_ups=tuple(metres for lot in group for metres in lot.put_ups or (lot.length_m,) if metres > 0),
        )
        for (shade, roles), group in groups.items()
    )


def related(problem: AllotmentProblem, role: tuple[str, str]) -> AllotmentProblem:
    """Give the part of a problem that bears on one role: roles that share lots with it, or with such a role."""
    roles, lots = {role}, set(problem.may_play.get(role, ()))
    while True:
        more = {other for other, keys in problem.may_play.items() if lots & set(keys)} | roles
        if more == roles:
            break
        roles, lots = more, lots.union(*(problem.may_play[other] for other in more if other in problem.may_play))
    sections = tuple(one for one in problem.sections if (one.garment, one.role) in roles)
    keys = {one.key for one in sections}
    return replace(
        problem,
        sections=sections,
        meetings=tuple(one for one in problem.meetings if {one.one, one.other} <= keys),
        lots=tuple(lot for lot in problem.lots if lot.key in lots),
        may_play={other: keys for other, keys in problem.may_play.items() if other in roles},
    )


def alike(one: SectionDemand, other: SectionDemand) -> bool:
    """Say whether two sections should look alike: of one garment and one role."""
    return (one.garment, one.role) == (other.garment, other.role)


def spread_m(lot: DyeLot, given: Iterable[tuple[SectionDemand, float]]) -> float:
    r"""Give the standard deviation of what is left of a dye lot, in m.

    .. math:: s = \sqrt{S^2 + \sum_i (x_i o_i)^2 + \left(\sum_i x_i h_i\right)^2}

    with the lot's S, the shares x, own doubts o and shared doubts h. The shared doubts add up before they are squared,
    also over garments, since one pair of hands and one model of the loop make them: never less than the truth.
    Source: variance of a sum.
    """
    own, shared = 0.0, 0.0
    for section, share in given:
        own += (share * section.own_sd_m) ** 2
        shared += share * section.shared_sd_m
    return math.sqrt(lot.sd_m**2 + own + shared**2)


def chance_of(lot: DyeLot, given: Sequence[tuple[SectionDemand, float]]) -> float:
    """Give the chance that a dye lot suffices for shares of sections: the normal curve of what is left.

    With any doubt it is never quite 0 or 1.
    """
    left = lot.length_m - math.fsum(share * section.length_m for section, share in given)
    spread = spread_m(lot, given)
    if spread == 0:
        return 1.0 if left >= -1e-9 * lot.length_m else 0.0
    return min(max(NormalDist().cdf(left / spread), math.ulp(0.0)), math.nextafter(1.0, 0.0))


def joint_chance(chances: Iterable[float]) -> float:
    """Give a chance that is surely not above that of several lots sufficing at once: the product of their own.

    What is left of each rises and falls with the others, for their shares of the common doubts have one sign, so that
    by Slepian's inequality the product is a bound. Source: D. Slepian, Bell System Technical Journal 41 (1962) 463
    (from memory); held to draws at random by a test.
    """
    return math.prod(chances)
