"""Yarn that is at home or on its way and reserved for nothing else."""

from __future__ import annotations

from loopwright.allotment import supplies
from loopwright.records import Record
from loopwright.season.buying import share_out
from loopwright.season.season import Season
from loopwright.season.settle import settle
from loopwright.uncertainty import Estimate, total

__all__ = ["FreeColour", "free_yarn"]


class FreeColour(Record):
    """One colour of a yarn, all dye lots together.

    :ivar dye_lots: how many lots it comes from.
    """

    colour: str
    length_m: Estimate
    dye_lots: int


def free_yarn(season: Season, garment: str, role: str) -> dict[str, tuple[FreeColour, ...]]:
    """Give what is free by key of the yarn, the longest colour first.

    Free is a supply less what the season's other garments and the garment's other roles have reserved; what this role
    itself has reserved is free.

    :param garment, role: keys of what is to be knitted in something else.
    """
    planned = share_out(season, [settle(season, one) for one in season.garments])
    reserved: dict[str, float] = {}
    for key, roles in planned.items():
        for one in roles:
            if (key, one.role) != (garment, role):
                for taken in one.taken:
                    reserved[taken.supply] = reserved.get(taken.supply, 0.0) + taken.metres
    by_colour: dict[tuple[str, str], list[Estimate]] = {}
    for supply in supplies(season.cupboard, season.orders, season.yarn_by_key):
        used = reserved.get(supply.key, 0.0)
        left = supply.length_m.mean - used
        if left >= 1:
            by_colour.setdefault((supply.yarn, supply.colour), []).append(_less(supply.length_m, left, used))
    free: dict[str, list[FreeColour]] = {}
    for (yarn, colour), parts in by_colour.items():
        length = total(parts, unit="m") if len(parts) > 1 else parts[0]
        free.setdefault(yarn, []).append(FreeColour(colour=colour, length_m=length, dye_lots=len(parts)))
    return {yarn: tuple(sorted(rows, key=lambda row: -row.length_m.mean)) for yarn, rows in free.items()}


def _less(length: Estimate, left: float, used: float) -> Estimate:
    if not used:
        return length
    return Estimate.worked(
        "less what is reserved", f"{length.mean:.4g} − {used:.4g} m", left, length.sd, "m", after=length.steps
    )
