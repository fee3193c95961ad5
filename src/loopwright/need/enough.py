"""Whether there is enough, and how many balls must be bought."""

from __future__ import annotations

import math
from collections.abc import Callable

from loopwright.uncertainty import Estimate, Origin, p_at_least
from loopwright.yarn.lot import LABEL_RELATIVE_SD

__all__ = ["balls_to_buy", "metres_in_balls", "p_with_balls"]

MOST_BALLS = 10_000


def metres_in_balls(balls: int, ball_m: float, relative_sd: float = LABEL_RELATIVE_SD) -> Estimate:
    """Give the metres in new balls of one lot: the band's length, whose error all of them share."""
    mean = balls * ball_m
    return Estimate.known(f"{balls} × {ball_m:g} m", mean, "m", Origin.STATED, sd=mean * relative_sd, source="the band")


def p_with_balls(
    balls: int, have: Estimate, need: Estimate, ball_m: float, relative_sd: float = LABEL_RELATIVE_SD
) -> float:
    """Give the probability that the yarn suffices once ``balls`` new ones are bought.

    :param have: metres already there; its error is independent of the new lot's.
    :param relative_sd: spread of a ball's length about its band, shared by the balls of one lot.
    """
    bought = metres_in_balls(balls, ball_m, relative_sd)
    both = Estimate(mean=have.mean + bought.mean, sd=math.hypot(have.sd, bought.sd), unit="m", origin=Origin.COMPUTED)
    return p_at_least(both, need)


def balls_to_buy(
    have: Estimate, need: Estimate, ball_m: float, sureness: float, relative_sd: float = LABEL_RELATIVE_SD
) -> int:
    """Give the fewest whole balls to buy so that yarn suffices with probability ``sureness``.

    :param have: metres already there (its own error is independent of the new lot's).
    :param need: metres wanted. With no doubt anywhere this is ``ceil((need - have) / ball)``.
    :param relative_sd: spread of a ball's length about its band, shared by the balls of one lot.
    :raises OverflowError: even 10,000 balls do not make it that sure, because the band is too doubtful.
    """
    return _least(lambda balls: p_with_balls(balls, have, need, ball_m, relative_sd) >= sureness)


def _least(holds: Callable[[int], bool]) -> int:
    """Give the least number from 0 on for which ``holds``, which once true stays true."""
    high = 1
    if holds(0):
        return 0
    while not holds(high):
        high *= 2
        if high > MOST_BALLS:
            raise OverflowError("no number of balls makes it that sure")
    low = high // 2
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if holds(middle) else (middle, high)
    return high
