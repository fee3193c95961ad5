"""Sharing the cupboard over the season, and buying what is short."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence

from loopwright.allotment import Cover, Supply, cover, supplies
from loopwright.garment import RolePlan
from loopwright.need import RoleNeed, balls_to_buy, p_with_balls
from loopwright.parcels import ParcelPlan, Shortfall, cheapest_parcels
from loopwright.season.result import RolePlanned
from loopwright.season.season import Season
from loopwright.season.settle import Settled
from loopwright.uncertainty import Estimate, Origin
from loopwright.units import BadInput
from loopwright.yarn import Yarn

__all__ = ["buy", "share_out"]


def _first_claims(settled: Sequence[Settled]) -> list[Settled]:
    """Give the garments in the order in which they may claim yarn: begun, then by deadline, then as listed."""
    return sorted(settled, key=lambda one: (one.garment.begun_on is None, one.garment.due or dt.date.max))


def share_out(season: Season, settled: Sequence[Settled]) -> dict[str, tuple[RolePlanned, ...]]:
    """Cover every garment's roles from the cupboard and what is on its way.

    A garment on the needles claims yarn first, then those with a deadline, the earliest first, then the others in
    her order. Garments that are done, drying or set aside claim none.

    :returns: the covered roles by garment key.
    """
    stock = supplies(season.cupboard, season.orders, season.yarn_by_key)
    left = {supply.key: supply.length_m.mean for supply in stock}
    planned: dict[str, tuple[RolePlanned, ...]] = {}
    for one in _first_claims(settled):
        garment = one.garment
        if garment.set_aside or garment.done_on or garment.knitted_off_on:
            continue
        sureness = garment.sureness or season.sureness
        roles = []
        for need in one.needs:
            role = garment.role(need.role)
            assert role is not None  # needs are made from the garment's own roles
            for yarn, colour, share in _strands(role):
                covered = cover(_for_strands(need, share), _suitable(stock, role, yarn, colour), left, sureness)
                for taken in covered.taken:
                    left[taken.supply] -= taken.metres
                roles.append(_planned(role, season.yarn_by_key[yarn], colour, covered, stock, sureness))
        planned[garment.key] = tuple(roles)
    return planned


def _strands(role: RolePlan) -> Iterator[tuple[str, str, int]]:
    """Give each yarn of a role with its colour and how many strands of it run together."""
    yield role.yarn, role.colour, role.strands
    for strand in role.held_with:
        yield strand.yarn, strand.colour, 1


def _for_strands(need: RoleNeed, strands: int) -> Estimate:
    metres = need.strand_m
    if strands == 1:
        return metres
    return Estimate.worked(
        f"{strands} strands held together",
        f"{strands} × {metres.mean:.4g} m",
        metres.mean * strands,
        metres.sd * strands,
        "m",
        after=metres.steps,
    )


def _suitable(stock: Sequence[Supply], role: RolePlan, yarn: str, colour: str) -> list[Supply]:
    """Give the supplies of this yarn and colour, or only the lots that she named for the role."""
    named = [supply for supply in stock if supply.key in role.lots and supply.yarn == yarn]
    if named:
        return named
    return [supply for supply in stock if supply.yarn == yarn and supply.colour == colour]


def _planned(
    role: RolePlan, yarn: Yarn, colour: str, covered: Cover, stock: Sequence[Supply], sureness: float
) -> RolePlanned:
    nothing = Estimate(mean=0, sd=0, unit="m", origin=Origin.MEASURED)
    try:
        in_all = balls_to_buy(nothing, covered.need_m, yarn.length_m, sureness)
        to_buy = balls_to_buy(covered.have_m, covered.need_m, yarn.length_m, sureness)
    except OverflowError as error:
        raise BadInput(
            place=f"yarns.{yarn.key}.length",
            found=f"put-ups of {yarn.length_m:g} m for {covered.need_m.mean:,.0f} m",
            wanted="a put-up of which 10,000 or fewer suffice",
        ) from error
    seen = [one for one in stock if (one.yarn, one.colour) == (yarn.key, colour) and one.shade]
    seen.sort(key=lambda one: one.key not in role.lots)
    return RolePlanned(
        role=role.key,
        yarn=yarn.key,
        yarn_name=yarn.name,
        colour=colour,
        shade=seen[0].shade if seen else None,
        need_m=covered.need_m,
        need_g=covered.need_m.mean * yarn.grist_tex / 1000,
        have_m=covered.have_m,
        chances=tuple(
            p_with_balls(balls, covered.have_m, covered.need_m, yarn.length_m) for balls in range(to_buy + 2)
        ),
        sureness=sureness,
        balls_in_all=in_all,
        balls_to_buy=to_buy,
        ball_m=yarn.length_m,
        ball_g=yarn.mass_g,
        taken=covered.taken,
        dye_lots=covered.dye_lots,
        ready_on=covered.ready_on,
    )


def buy(season: Season, planned: Mapping[str, Sequence[RolePlanned]]) -> ParcelPlan:
    """Give the cheapest parcels for everything that is short, one dye lot of a colour from one shop."""
    short: dict[tuple[str, str], list[tuple[str, RolePlanned]]] = {}
    for garment, roles in planned.items():
        for role in roles:
            if role.balls_to_buy:
                short.setdefault((role.yarn, role.colour), []).append((garment, role))
    shortfalls = [
        Shortfall(
            yarn=yarn,
            colour=colour,
            balls=sum(role.balls_to_buy for _, role in wanted),
            ball_mass_g=wanted[0][1].ball_g,
            garments=tuple(dict.fromkeys(garment for garment, _ in wanted)),
        )
        for (yarn, colour), wanted in short.items()
    ]
    rates = {shop.currency: rate for shop in season.shops if (rate := season.rate_of(shop.currency))}
    return cheapest_parcels(shortfalls, season.shops, rates, season.currency, season.today)
