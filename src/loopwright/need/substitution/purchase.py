"""What a substitute costs: whole put-ups for the garment, at a price each."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from loopwright.need.enough import balls_to_buy
from loopwright.uncertainty import Estimate, Origin
from loopwright.yarn import Yarn

__all__ = ["PutUps", "put_ups_for"]

PutUps = dict[str, int]
"""Whole put-ups by the key of the yarn."""


def put_ups_for(yarns: Sequence[Yarn], strand_m: Estimate, sureness: float) -> PutUps:
    """Give the whole put-ups of each yarn that a strand takes, none being at home.

    :param yarns: of the strand; one named twice runs twice and takes twice the metres.
    :param strand_m: metres of the whole strand.
    :param sureness: chance with which each yarn must suffice.
    :raises OverflowError: no number of put-ups makes it that sure.
    """
    nothing = Estimate(mean=0, sd=0, unit="m", origin=Origin.MEASURED)
    own = {yarn.key: yarn for yarn in yarns}
    return {
        key: balls_to_buy(nothing, metres_of(strand_m, count), own[key].length_m, sureness)
        for key, count in Counter(yarn.key for yarn in yarns).items()
    }


def metres_of(strand_m: Estimate, count: int) -> Estimate:
    """Give the metres of a yarn that runs so many times in a strand."""
    if count == 1:
        return strand_m
    return Estimate.worked(
        f"{count} strands of it",
        f"{count} × {strand_m.mean:.4g} m",
        count * strand_m.mean,
        count * strand_m.sd,
        "m",
        after=strand_m.steps,
    )
