"""Where a garment stands is derived, row by row of the table: what she said, what happened, what is missing."""

import datetime as dt
from typing import Any

import pytest

from loopwright.season import State, plan
from tests.season.small import TODAY, season

J = "garments.jumper"
FEW: dict[str, Any] = {"cupboard.oat.put_ups": 2}
COMING: dict[str, Any] = {
    "orders.post": {
        "arrives_on": dt.date(2027, 3, 9),
        "lines": [{"yarn": "dk", "colour": "Oat", "put_ups": 12, "dye_lot": "2"}],
    }
}
NO_SIZE: dict[str, Any] = {f"{J}.for": None}
EARLIER = TODAY - dt.timedelta(days=9)


@pytest.mark.parametrize(
    ("changes", "state"),
    [
        ({}, State.READY),
        (NO_SIZE, State.TO_SIZE),
        ({f"{J}.swatch": None}, State.TO_SWATCH),
        (FEW, State.SHORT),
        (FEW | COMING, State.WAITING),
        ({f"{J}.begun_on": EARLIER}, State.ON_NEEDLES),
        ({f"{J}.knitted_off_on": EARLIER}, State.DRYING),
        ({f"{J}.done_on": EARLIER}, State.DONE),
        ({f"{J}.set_aside": True}, State.SET_ASIDE),
        # What comes first stands, whatever else is missing.
        (NO_SIZE | FEW | {f"{J}.swatch": None}, State.TO_SIZE),
        (FEW | {f"{J}.swatch": None}, State.TO_SWATCH),
        (FEW | {f"{J}.begun_on": EARLIER}, State.ON_NEEDLES),
        ({f"{J}.begun_on": EARLIER, f"{J}.knitted_off_on": EARLIER}, State.DRYING),
        ({f"{J}.begun_on": EARLIER, f"{J}.done_on": EARLIER}, State.DONE),
        ({f"{J}.begun_on": EARLIER, f"{J}.set_aside": True}, State.SET_ASIDE),
        # A parcel that is not needed is not waited for.
        (COMING, State.READY),
    ],
)
def test_state(changes: dict[str, Any], state: State) -> None:
    assert plan(season(changes)).garment("jumper").state is state


@pytest.mark.parametrize("fact", ["knitted_off_on", "done_on"])
def test_what_is_knitted_claims_no_yarn(fact: str) -> None:
    assert plan(season({f"{J}.{fact}": EARLIER})).garment("jumper").roles == ()


def test_what_is_drying_is_not_open() -> None:
    assert not plan(season({f"{J}.knitted_off_on": EARLIER})).garment("jumper").is_open
