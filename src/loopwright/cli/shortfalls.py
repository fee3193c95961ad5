"""What makes ``--check`` say no."""

from __future__ import annotations

from loopwright.season import SeasonPlan
from loopwright.season.season_answers import PROMISE
from loopwright.units import write_share

__all__ = ["shortfalls"]


def shortfalls(planned: SeasonPlan) -> tuple[str, ...]:
    """Give a line for each garment still to be made that lacks yarn or whose date is not sure enough."""
    lines = []
    for garment in planned.garments:
        if not garment.is_open:
            continue
        for role in garment.roles:
            if role.p_enough < role.sureness:
                lines.append(
                    f"{garment.name}: {role.colour} suffices {write_share(role.p_enough)} sure, "
                    f"{write_share(role.sureness)} is wanted"
                )
        if garment.due is None:
            continue
        sure = garment.forecast.p_by_due if garment.forecast else None
        if sure is None:
            lines.append(f"{garment.name}: due on {garment.due}, and no finish can be foreseen")
        elif sure < PROMISE:
            lines.append(
                f"{garment.name}: done by {garment.due} {write_share(sure)} sure, {write_share(PROMISE)} is wanted"
            )
    return tuple(lines)
