"""Every key of a season leads somewhere: each fault with its place, what was found, and a hint."""

from typing import Any

import pytest

from loopwright.season import Faults, Season
from loopwright.units import BadInput
from tests.season.small import season

J = "garments.jumper"
STRAND = {"yarn": "laces", "colour": "Mist"}
OFFER = {"yarn": "dkk", "price": "9.90 NZD"}


def faults(changes: dict[str, Any]) -> list[BadInput]:
    with pytest.raises(ValueError, match="wanted") as caught:
        season(changes)
    (error,) = caught.value.errors()  # type: ignore[attr-defined]
    reason = error["ctx"]["error"]
    assert isinstance(reason, Faults)
    return reason.faults


@pytest.mark.parametrize(
    ("changes", "place", "hint"),
    [
        ({f"{J}.pattern": "plan"}, f"{J}.pattern", "did you mean 'plain'?"),
        ({f"{J}.for": "moe"}, f"{J}.for", "did you mean 'mo'?"),
        ({f"{J}.swatch": "plane"}, f"{J}.swatch", "did you mean 'plain'?"),
        ({f"{J}.size": "XM"}, f"{J}.size", "did you mean 'M'?"),
        ({f"{J}.yarns.main.yarn": "kd"}, f"{J}.yarns.main.yarn", None),
        ({f"{J}.yarns.main.held_with": [STRAND]}, f"{J}.yarns.main.yarn", "did you mean 'lace'?"),
        ({f"{J}.yarns.main.lots": ["oats"]}, f"{J}.yarns.main.lots", "did you mean 'oat'?"),
        ({"cupboard.oat.yarn": "dkk"}, "cupboard.oat.yarn", "did you mean 'dk'?"),
        ({"swatches.plain.yarns": ["dkk"]}, "swatches.plain.yarns", "did you mean 'dk'?"),
        ({"shops.loft.offers": [OFFER]}, "shops.loft.offers.0.yarn", "did you mean 'dk'?"),
        (
            {"orders.post": {"arrives_on": "2027-03-09", "lines": [{"yarn": "dkk", "colour": "x", "put_ups": 1}]}},
            "orders.post.lines.0.yarn",
            "did you mean 'dk'?",
        ),
        ({f"{J}.yarns.mian": {"yarn": "dk", "colour": "Oat"}}, f"{J}.yarns.mian", "did you mean 'main'?"),
        ({f"{J}.changes.bust_girth": "130 cm"}, f"{J}.changes.bust_girth", None),
        ({f"{J}.changes.body_longer": "-60 cm"}, f"{J}.changes.body_longer", None),
        (
            {f"{J}.changes.body_longer": "4 cm", "patterns.plain.finished.length": None},
            f"{J}.changes.body_longer",
            None,
        ),
        ({f"{J}.changes": {"body_longer": "4 cm", "role": "mian"}}, f"{J}.changes.role", "did you mean 'main'?"),
        ({"shops.loft.border_fee": "2.50 EUR"}, "shops.loft.border_fee", None),
        ({"purse": "150.00 EUR"}, "purse", None),
    ],
)
def test_a_key_that_leads_nowhere(changes: dict[str, Any], place: str, hint: str | None) -> None:
    (fault,) = faults(changes)
    assert (fault.place, fault.hint) == (place, hint)


def test_a_foreign_shop_needs_a_rate() -> None:
    shop = {"name": "Abroad", "currency": "GBP", "postage": {"flat": "9.00 GBP"}}
    (fault,) = faults({"shops.abroad": shop})
    assert fault.place == "rates"
    assert "GBP" in fault.wanted


def test_a_lot_of_another_yarn() -> None:
    changes = {f"{J}.yarns.main.lots": ["haze"], "cupboard.haze": {"yarn": "lace", "colour": "Oat", "put_ups": 1}}
    (fault,) = faults(changes)
    assert "of the yarn 'lace'" in fault.found


def test_a_role_of_the_pattern_without_a_yarn() -> None:
    (fault,) = faults({"patterns.plain.yarn.edge": {"length": "80 (90, 100) m"}})
    assert (fault.place, fault.found) == (f"{J}.yarns", "no yarn for the role 'edge'")


def test_all_faults_come_at_once() -> None:
    found = faults({f"{J}.pattern": "plan", f"{J}.for": "moe", "cupboard.oat.yarn": "dkk"})
    assert {fault.place for fault in found} == {f"{J}.pattern", f"{J}.for", "cupboard.oat.yarn"}


def test_a_season_without_garments() -> None:
    assert [fault.place for fault in faults({"garments": {}})] == ["garments"]


def test_nothing_wrong_is_no_fault() -> None:
    assert isinstance(season(), Season)


@pytest.mark.parametrize("sureness", ["49 %", "100 %"])
def test_a_sureness_that_is_none(sureness: str) -> None:
    with pytest.raises(ValueError, match="from 50 % to under 100 %"):
        season({"sureness": sureness})
