"""The same purchase as a mixed-integer programme, for `scipy.optimize.milp`: the independent twin.

Variables, all integers: packs of each offer for each need, which shop serves a need, and which step of its postage, or
its free postage, a shop's parcel takes. One currency and no border: those are sums after the choice, tested apart.
"""

from collections.abc import Iterable, Mapping, Sequence

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from loopwright.parcels import Shop, Shortfall

__all__ = ["least_cost_minor"]

MOST = 1_000_000.0
MOST_PACKS = 50


class Programme:
    """Variables with their costs, and rows of constraints, gathered one by one."""

    def __init__(self) -> None:
        self.costs: list[float] = []
        self.uppers: list[int] = []
        self.rows: list[tuple[dict[int, float], float, float]] = []

    def variable(self, cost: float = 0, upper: int = 1) -> int:
        self.costs.append(cost)
        self.uppers.append(upper)
        return len(self.costs) - 1

    def require(self, *parts: Mapping[int, float], least: float = -np.inf, most: float = np.inf) -> None:
        row: dict[int, float] = {}
        for part in parts:
            row |= part
        self.rows.append((row, least, most))

    def solve(self) -> int | None:
        matrix = np.zeros((len(self.rows), len(self.costs)))
        for number, (row, _, _) in enumerate(self.rows):
            for variable, factor in row.items():
                matrix[number, variable] = factor
        answer = milp(
            self.costs,
            integrality=np.ones(len(self.costs)),
            bounds=Bounds(0, np.array(self.uppers)),
            constraints=LinearConstraint(matrix, [row[1] for row in self.rows], [row[2] for row in self.rows]),
        )
        return round(answer.fun) if answer.success else None


def ones(variables: Iterable[int]) -> dict[int, float]:
    return dict.fromkeys(variables, 1.0)


def add_goods(
    programme: Programme, shop: Shop, need: Shortfall, serves: int
) -> tuple[dict[int, float], dict[int, float]]:
    """Packs of one shop for one need, as many as it asks if the shop serves it: their prices and their masses."""
    offers = [offer for offer in shop.offers if offer.sells(need.yarn, need.colour)]
    packs = {programme.variable(offer.price.minor, MOST_PACKS): offer for offer in offers}
    balls = {x: float(offer.balls) for x, offer in packs.items()}
    shelf = min((float(offer.in_stock) for offer in offers if offer.in_stock is not None), default=MOST)
    programme.require(balls, {serves: -float(need.balls)}, least=0)
    programme.require(balls, {serves: -shelf}, most=0)
    prices = {x: float(offer.price.minor) for x, offer in packs.items()}
    return prices, {x: count * need.ball_mass_g for x, count in balls.items()}


def add_parcel(
    programme: Programme, shop: Shop, serving: Sequence[int], prices: Mapping[int, float], masses: Mapping[int, float]
) -> None:
    """One way of sending for a shop that serves anything: a step that holds the mass, a flat price, or free."""
    postage = shop.postage
    steps = {programme.variable(step.price.minor): step.up_to_g for step in postage.steps}
    sent = list(steps) if postage.flat is None else [programme.variable(postage.flat.minor)]
    free = {}
    if postage.free_from is not None:
        free[programme.variable()] = -MOST
        sent += free
        programme.require(prices, dict.fromkeys(free, -float(postage.free_from.minor)), least=0)
    programme.require(ones(sent), most=1)
    for serves in serving:
        programme.require(ones(sent), {serves: -1.0}, least=0)
    if steps:
        packing = postage.packing_g or 0.0
        programme.require(masses, {x: packing - top for x, top in steps.items()}, free, most=0)


def least_cost_minor(needs: Sequence[Shortfall], shops: Sequence[Shop]) -> int | None:
    """Give the least cost of goods and postage in minor units, or None when it cannot be bought."""
    programme = Programme()
    serving = [[programme.variable() for _ in needs] for _ in shops]
    for shop, own in zip(shops, serving, strict=True):
        prices: dict[int, float] = {}
        masses: dict[int, float] = {}
        for need, serves in zip(needs, own, strict=True):
            more_prices, more_masses = add_goods(programme, shop, need, serves)
            prices |= more_prices
            masses |= more_masses
        add_parcel(programme, shop, own, prices, masses)
    for served_by in zip(*serving, strict=True):
        programme.require(ones(served_by), least=1, most=1)
    return programme.solve()
