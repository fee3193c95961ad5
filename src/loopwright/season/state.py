"""Where a garment stands, derived from what is known."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.season.result import RolePlanned, State
from loopwright.season.settle import Settled

__all__ = ["state_of"]


def state_of(one: Settled, roles: Sequence[RolePlanned]) -> State:
    """Give the state: what she said, else what happened, else the first thing that is missing."""
    garment = one.garment
    said = (
        (garment.set_aside, State.SET_ASIDE),
        (garment.done_on is not None, State.DONE),
        (garment.knitted_off_on is not None, State.DRYING),
        (garment.begun_on is not None, State.ON_NEEDLES),
        (one.choice is None, State.TO_SIZE),
        (one.swatch is None, State.TO_SWATCH),
        (bool(one.unknown_roles), State.TO_SIZE),
        (any(role.balls_to_buy for role in roles), State.SHORT),
        (any(role.ready_on is not None for role in roles), State.WAITING),
    )
    return next((state for holds, state in said if holds), State.READY)
