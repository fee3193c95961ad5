"""A mixed-integer linear programme, gathered row by row and solved by HiGHS."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

import numpy as np
from numpy.typing import NDArray

__all__ = ["Programme", "Solved"]


@dataclass(frozen=True, slots=True)
class Solved:
    """What the solver found.

    :ivar values: of the variables; None where it found none.
    :ivar bound: below which the cost cannot lie.
    """

    status: Literal["proven", "time limit", "none there"]
    values: NDArray[np.float64] | None
    bound: float


@dataclass(slots=True)
class Programme:
    """Variables from 0 to an upper bound, and rows of constraints on them."""

    uppers: list[float] = field(default_factory=list)
    whole: list[bool] = field(default_factory=list)
    least: list[float] = field(default_factory=list)
    most: list[float] = field(default_factory=list)
    rows: list[int] = field(default_factory=list)
    columns: list[int] = field(default_factory=list)
    factors: list[float] = field(default_factory=list)

    def variable(self, upper: float = 1.0, *, whole: bool = True) -> int:
        """Add a variable and give its number."""
        self.uppers.append(upper)
        self.whole.append(whole)
        return len(self.uppers) - 1

    def require(self, row: Mapping[int, float], *, least: float = -math.inf, most: float = math.inf) -> None:
        """Add a constraint: least ≤ sum of factor × variable ≤ most.

        It is scaled to factors of at most 1, so that the solver's tolerance is a share and not so many metres.
        """
        largest = max(map(abs, row.values()), default=0.0) or 1.0
        self.rows += [len(self.least)] * len(row)
        self.columns += row.keys()
        self.factors += [factor / largest for factor in row.values()]
        self.least.append(least / largest)
        self.most.append(most / largest)

    def solve(
        self, costs: Mapping[int, float], time_limit_s: float, held: Sequence[tuple[Mapping[int, float], float]] = ()
    ) -> Solved:
        """Give the values that cost least.

        :param held: constraints for this once: the sum of factor × variable is at most so much.
        """
        from scipy.optimize import Bounds, LinearConstraint, milp  # noqa: PLC0415 (it takes a third of a second)
        from scipy.sparse import csr_array  # noqa: PLC0415

        cost = np.zeros(len(self.uppers))
        for variable, factor in costs.items():
            cost[variable] = factor
        whole = Programme(
            self.uppers, self.whole, [*self.least], [*self.most], [*self.rows], [*self.columns], [*self.factors]
        )
        for row, limit in held:
            whole.require(row, most=limit)
        entries = (whole.factors, (whole.rows, whole.columns))
        matrix = csr_array(entries, shape=(len(whole.least), len(self.uppers)))
        answer = milp(
            cost,
            integrality=np.array(self.whole, dtype=np.int64),
            bounds=Bounds(0, np.array(self.uppers)),
            constraints=LinearConstraint(matrix, np.array(whole.least), np.array(whole.most)),
            options={"time_limit": time_limit_s, "mip_rel_gap": 0.0},
        )
        if answer.status == 0:
            return Solved("proven", answer.x, float(answer.fun))
        if answer.status == 1:
            bound = answer.mip_dual_bound
            return Solved("time limit", answer.x, -math.inf if bound is None else float(bound))
        return Solved("none there", None, math.inf)
