"""One garment: what it must hold, and dates in order."""

from typing import Any

import pytest

from loopwright.garment import Garment


def garment(**more: Any) -> Garment:
    facts = {"key": "g", "name": "G", "pattern": "p", "yarns": {"main": {"yarn": "dk", "colour": "Oat"}}}
    return Garment.model_validate(facts | more)


def test_roles_by_key() -> None:
    role = garment().role("main")
    assert role is not None
    assert role.colour == "Oat"
    assert garment().role("contrast") is None


def test_a_garment_has_yarn() -> None:
    with pytest.raises(ValueError, match="without yarn"):
        garment(yarns={})


@pytest.mark.parametrize("share", ["sureness", "knitted"])
def test_all_of_it_is_no_share_still_open(share: str) -> None:
    with pytest.raises(ValueError, match=f"{share} of 100 %"):
        garment(**{share: "100 %"})


@pytest.mark.parametrize(
    "dates",
    [
        {"begun_on": "2027-02-02", "knitted_off_on": "2027-02-01"},
        {"knitted_off_on": "2027-02-02", "done_on": "2027-02-01"},
        {"begun_on": "2027-02-02", "done_on": "2027-02-01"},
    ],
)
def test_dates_out_of_order(dates: dict[str, str]) -> None:
    with pytest.raises(ValueError, match="begun_on before knitted_off_on before done_on"):
        garment(**dates)


def test_all_on_one_day_is_in_order() -> None:
    day = "2027-02-02"
    assert garment(begun_on=day, knitted_off_on=day, done_on=day).done_on is not None


def test_a_state_cannot_be_written_down() -> None:
    with pytest.raises(ValueError, match="state"):
        garment(state="done")


def test_a_style_of_ease_that_is_not_one() -> None:
    with pytest.raises(ValueError, match="very close"):
        garment(fit="skin tight")
