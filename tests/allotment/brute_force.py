"""The best allotment by trying every one: the independent twin of the integer programme, for a few sections.

Every section is left, knitted from one lot, or from one and then another. Whether shares exist that make all lots sure
enough is found without linear rows: the least room of any lot is a concave function of the shares, and its highest
point is sought by ternary search, or by sequential quadratic programmes for several shares.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from itertools import product
from statistics import NormalDist

import numpy as np
from scipy.optimize import minimize

from loopwright.allotment import AllotmentProblem, LotSupply, Meeting, SectionDemand

__all__ = ["best_levels", "two_best_levels"]

Pattern = tuple[tuple[LotSupply, ...], ...]
"""The lots of every section in the order of knitting: none, one or two."""

WEIGHTS = {"plain field": (1, 1), "seam": (2, 1), "pair": (2, 2)}
EDGES = {"begin": (0,), "end": (-1,), "side": (0, -1)}


def best_levels(problem: AllotmentProblem) -> tuple[float, ...]:
    """The six levels of the best allotment, of lots that differ in their dye lot."""
    return two_best_levels(problem)[0]


def two_best_levels(problem: AllotmentProblem) -> list[tuple[float, ...]]:
    """The same of the best allotment and of the best other that covers as much, where there is one."""
    ranked: dict[tuple[float, ...], list[Pattern]] = {}
    for pattern in patterns(problem):
        levels = counted(problem, pattern)
        if levels is not None:
            ranked.setdefault(levels, []).append(pattern)
    found: list[tuple[float, ...]] = []
    for levels in sorted(ranked):
        if found and levels[0] > found[0][0] + 1e-5:
            break
        left = [metres for pattern in ranked[levels] if (metres := least_left(problem, pattern)) is not None]
        found += [(*levels, metres) for metres in sorted(left)]
        if len(found) > 1:
            break
    return found[:2]


def patterns(problem: AllotmentProblem) -> Iterator[Pattern]:
    lots = {lot.key: lot for lot in problem.lots}
    choices = []
    for one in problem.sections:
        able = [lots[key] for key in problem.may_play.get((one.garment, one.role), ())]
        role_m = sum(s.length_m for s in problem.sections if (s.garment, s.role) == (one.garment, one.role))
        halved = able if one.length_m >= 0.1 * role_m else []
        choices.append([(), *((lot,) for lot in able), *((a, b) for a in halved for b in halved if a != b)])
    yield from product(*choices)


def counted(problem: AllotmentProblem, pattern: Pattern) -> tuple[float, ...] | None:
    """The levels that need no shares, or None where a part is half left or two lots must not meet."""
    knitted = dict(zip((one.key for one in problem.sections), pattern, strict=True))
    sections = {one.key: one for one in problem.sections}
    counts = [0, 0, 0, 0]
    left: dict[str, set[bool]] = {}
    for key, lots in knitted.items():
        left.setdefault(f"{sections[key].garment} {sections[key].part or key}", set()).add(not lots)
        if len(lots) == 2:
            level, weight = WEIGHTS.get(sections[key].within, (3, 2))
            counts[level] += weight
            if level == 1 and not problem.alternate:
                return None
    if any(len(bare) == 2 for bare in left.values()):
        return None
    for meeting in problem.meetings:
        one, other = sections[meeting.one], sections[meeting.other]
        if (one.garment, one.role) != (other.garment, other.role):
            continue
        met = list(meets(meeting, knitted[one.key], knitted[other.key]))
        level, weight = WEIGHTS.get(meeting.place, (3, 1))
        counts[level] += weight * any(a != b for a, b in met)
        if level == 1 and not problem.alternate and any(a and b and a != b for a, b in met):
            return None
    bare = sum(one.visibility * one.length_m for one in problem.sections if not knitted[one.key])
    return round(bare, 6), *counts[1:], len({lot.key for lots in pattern for lot in lots})


def meets(
    meeting: Meeting, one: tuple[LotSupply, ...], other: tuple[LotSupply, ...]
) -> Iterator[tuple[LotSupply | None, LotSupply | None]]:
    both_sides = meeting.one_at == meeting.other_at == "side"
    for a, b in product(EDGES[meeting.one_at], EDGES[meeting.other_at]):
        if a == b or not both_sides:
            yield (one[a] if one else None), (other[b] if other else None)


def least_left(problem: AllotmentProblem, pattern: Pattern) -> float | None:
    """The least that is left over in opened put-ups, or None where no shares make every lot sure enough."""
    knitting = [(one, lots) for one, lots in zip(problem.sections, pattern, strict=True) if lots]
    lots = {lot.key: lot for _, own in knitting for lot in own}
    garments = {one.garment for one, _ in knitting}
    most = max(
        (len({lot.key for one, own in knitting if one.garment == g for lot in own}) for g in garments), default=1
    )
    sureness = max(problem.sureness_of(one.garment) for one in problem.sections)
    z = NormalDist().inv_cdf(sureness ** (1 / most))
    wants = sum(one.length_m for one, _ in knitting)
    everything = {key: lot.length_m for key, lot in lots.items()}
    if room(knitting, lots, z, everything) < -1e-6:
        return None
    sums = {key: sorted({sum(some) for some in subsets(lot.put_ups)}) for key, lot in lots.items()}
    for opened in sorted(product(*sums.values()), key=sum):
        if sum(opened) >= wants - 1e-6 and room(knitting, lots, z, dict(zip(sums, opened, strict=True))) >= -1e-6:
            return sum(opened) - wants
    raise AssertionError("all put-ups together are the whole lot")


def subsets(put_ups: Sequence[float]) -> Iterator[tuple[float, ...]]:
    for chosen in product((False, True), repeat=len(put_ups)):
        yield tuple(metres for metres, is_open in zip(put_ups, chosen, strict=True) if is_open)


def room(
    knitting: Sequence[tuple[SectionDemand, tuple[LotSupply, ...]]],
    lots: dict[str, LotSupply],
    z: float,
    opened: dict[str, float],
) -> float:
    """The room that the tightest lot has with the best shares, in m; without a bound where nothing is knitted."""
    split = [number for number, (_, own) in enumerate(knitting) if len(own) == 2]

    def of_lot(key: str, begun: Callable[[int], float]) -> float:
        lot = lots[key]
        mean = own = shared = 0.0
        for number, (one, by) in enumerate(knitting):
            share = portion(by, key, begun(number))
            mean += share * one.length_m
            own += (share * one.own_sd_m) ** 2
            shared += share * one.shared_sd_m
        sure = lot.length_m - mean - z * math.sqrt(lot.sd_m**2 + own + shared**2 + 1e-18)
        return min(sure, opened[key] - mean)

    def rooms(shares: Sequence[float]) -> list[float]:
        begun = dict(zip(split, shares, strict=True))
        return [of_lot(key, lambda number: begun.get(number, 1.0)) for key in lots]

    most_of_each = [
        of_lot(key, lambda number, key=key: 0.05 if knitting[number][1][0].key == key else 0.95)  # type: ignore[misc]
        for key in lots
    ]
    if not split or min(most_of_each) < -1e-6:
        return min(rooms([0.5] * len(split)) if not split else most_of_each, default=math.inf)
    if len(split) == 1:
        return highest(lambda share: min(rooms([share])))
    return best_of_several(rooms, len(split))


def portion(by: tuple[LotSupply, ...], key: str, begun: float) -> float:
    if by[0].key == key:
        return begun if len(by) == 2 else 1.0
    return 1 - begun if by[-1].key == key else 0.0


def highest(height: Callable[[float], float], low: float = 0.05, high: float = 0.95) -> float:
    """The highest point of a concave function, by ternary search."""
    for _ in range(60):
        third = (high - low) / 3
        if height(low + third) < height(high - third):
            low += third
        else:
            high -= third
    return height((low + high) / 2)


def best_of_several(rooms: Callable[[Sequence[float]], list[float]], number: int) -> float:
    """The same for several shares, by sequential quadratic programmes: the most that is below the room of every lot."""
    begin = np.full(number, 0.5)
    found = minimize(
        lambda values: -values[-1],
        np.append(begin, min(rooms(begin.tolist()))),
        bounds=[*[(0.05, 0.95)] * number, (None, None)],
        constraints={"type": "ineq", "fun": lambda values: np.array(rooms(values[:-1].tolist())) - values[-1]},
        method="SLSQP",
        options={"maxiter": 200, "ftol": 1e-10},
    )
    return min(rooms(np.clip(found.x[:-1], 0.05, 0.95).tolist()))
