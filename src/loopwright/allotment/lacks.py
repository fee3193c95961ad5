"""Why sections are left uncovered."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping
from statistics import NormalDist
from typing import Literal

from loopwright.allotment.lots import DyeLot, chance_of, spread_m
from loopwright.allotment.model import AllotmentProblem, Lack, SectionDemand
from loopwright.allotment.reading import Sharing

__all__ = ["all_of_it", "lacks_of"]


def all_of_it(lots: Collection[DyeLot]) -> DyeLot:
    """Give several dye lots as if they were one, to say whether their length would do."""
    return DyeLot(
        keys=tuple(key for lot in lots for key in lot.keys),
        shade=("", "", ""),
        roles=frozenset(),
        length_m=math.fsum(lot.length_m for lot in lots),
        sd_m=math.hypot(*(lot.sd_m for lot in lots)),
        put_ups=(),
    )


def lacks_of(problem: AllotmentProblem, sharing: Sharing, lots: Mapping[str, DyeLot]) -> tuple[Lack, ...]:
    """Give why sections are uncovered, one lack for each role of a garment."""
    sections = {one.key: one for one in problem.sections}
    bare: dict[tuple[str, str], list[SectionDemand]] = {}
    for key, section in sorted(sections.items()):
        if key not in sharing.lots_of:
            bare.setdefault((section.garment, section.role), []).append(section)
    lacks = []
    for role, left in bare.items():
        able = [lot for lot in lots.values() if role in lot.roles]
        keys = {lot.key for lot in able}
        given = [(sections[key], share) for (key, lot), share in sharing.share.items() if lot in keys]
        lacks.append(_lack(problem, role, left, able, given))
    return tuple(lacks)


def _lack(
    problem: AllotmentProblem,
    role: tuple[str, str],
    left: list[SectionDemand],
    able: Collection[DyeLot],
    given: list[tuple[SectionDemand, float]],
) -> Lack:
    pool, all_given = all_of_it(able), [*given, *((section, 1.0) for section in left)]
    sureness = problem.sureness_of(role[0])
    own = math.fsum(s.length_m * share for s, share in all_given if (s.garment, s.role) == role)
    others = math.fsum(s.length_m * share for s, share in all_given if (s.garment, s.role) != role)
    p_enough = chance_of(pool, all_given) if able else 0.0
    kind: Literal["no lot", "too little", "dye lots"] = "too little" if able else "no lot"
    if able and p_enough >= sureness:
        kind = "dye lots"
    return Lack(
        garment=role[0],
        role=role[1],
        sections=tuple(section.key for section in left),
        kind=kind,
        have_m=pool.length_m - others,
        want_m=own + NormalDist().inv_cdf(sureness) * spread_m(pool, all_given),
        p_enough=p_enough,
    )
