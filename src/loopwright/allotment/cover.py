"""Taking yarn for one role from what is left of the cupboard."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Mapping, Sequence

from loopwright.allotment.supply import Supply
from loopwright.records import Record
from loopwright.uncertainty import Estimate, Origin, Step, quantile

__all__ = ["Cover", "Taken", "cover"]


class Taken(Record):
    """Metres reserved from one supply."""

    supply: str
    colour: str
    dye_lot: str
    metres: float
    arrives_on: dt.date | None = None


class Cover(Record):
    """What covers one yarn of one role.

    :ivar need_m: metres of this yarn that the role takes.
    :ivar have_m: metres there are for it, all suitable supplies that are not reserved for an earlier garment.
    :ivar taken: what is reserved, in the order of knitting it.
    :ivar ready_on: the day the last reserved parcel is due; None when all of it is here.
    """

    need_m: Estimate
    have_m: Estimate
    taken: tuple[Taken, ...]
    ready_on: dt.date | None = None

    @property
    def dye_lots(self) -> tuple[str, ...]:
        """Give the dye lots that meet in the work; one that is not known stands as an empty text, each for itself."""
        met = {(taken.colour, taken.dye_lot or taken.supply): taken.dye_lot for taken in self.taken}
        return tuple(met.values())


def cover(need_m: Estimate, suitable: Sequence[Supply], left_m: Mapping[str, float], sureness: float) -> Cover:
    """Cover a need from suitable supplies, as sure as wanted.

    Reserved is the length that suffices with probability ``sureness``, so that a later garment counts only on what
    is left over. Supplies of one dye lot that suffice alone are taken before mixing dye lots (the smallest such
    lot first, so that the large ones stay whole); else the largest lots first. Yarn that is here goes before yarn
    on its way.

    :param suitable: supplies of the right yarn and colour.
    :param left_m: metres of each supply that no earlier garment has reserved, by key.
    """
    free = [supply for supply in suitable if left_m.get(supply.key, 0.0) > 0]
    have = _sum_of(free, left_m)
    wanted = max(quantile(need_m, sureness), 0.0)
    taken, open_m = [], wanted
    for supply in _in_order(free, left_m, wanted):
        if open_m <= 1e-9:
            break
        metres = min(open_m, left_m[supply.key])
        open_m -= metres
        taken.append(
            Taken(
                supply=supply.key,
                colour=supply.colour,
                dye_lot=supply.dye_lot,
                metres=metres,
                arrives_on=supply.arrives_on,
            )
        )
    arrivals = [piece.arrives_on for piece in taken if piece.arrives_on is not None]
    return Cover(
        need_m=need_m,
        have_m=have,
        taken=tuple(taken),
        ready_on=max(arrivals, default=None),
    )


def _sum_of(free: Sequence[Supply], left_m: Mapping[str, float]) -> Estimate:
    """Add what is free; lots err independently of each other, what was reserved before scales a lot's doubt down."""
    mean = math.fsum(left_m[supply.key] for supply in free)
    sd = math.sqrt(math.fsum((supply.length_m.relative_sd * left_m[supply.key]) ** 2 for supply in free))
    steps: list[Step] = []
    for supply in free:
        steps += supply.length_m.steps
        if left_m[supply.key] < supply.length_m.mean - 1e-6:
            steps.append(
                Step(
                    says=f"of this, free after earlier garments: {supply.colour}",
                    value=left_m[supply.key],
                    unit="m",
                    origin=Origin.COMPUTED,
                )
            )
    if not free:
        return Estimate.known("none of it is free, at home or on its way", 0.0, "m", Origin.COMPUTED)
    weighed = all(supply.length_m.origin is Origin.MEASURED for supply in free)
    origin = Origin.MEASURED if weighed else Origin.STATED
    return Estimate(mean=mean, sd=sd, unit="m", origin=origin, steps=tuple(steps))


def _in_order(free: Sequence[Supply], left_m: Mapping[str, float], wanted: float) -> list[Supply]:
    def metres(supply: Supply) -> float:
        return left_m[supply.key]

    def coming(supply: Supply) -> tuple[bool, dt.date]:
        return (supply.arrives_on is not None, supply.arrives_on or dt.date.min)

    by_lot: dict[str, list[Supply]] = {}
    for supply in free:
        by_lot.setdefault(supply.dye_lot or f"unknown {supply.key}", []).append(supply)
    alone = [group for group in by_lot.values() if math.fsum(map(metres, group)) >= wanted]
    if alone:
        group = min(alone, key=lambda group: (any(coming(s)[0] for s in group), math.fsum(map(metres, group))))
        return sorted(group, key=lambda supply: (*coming(supply), -metres(supply)))
    return sorted(free, key=lambda supply: (*coming(supply), -metres(supply)))
