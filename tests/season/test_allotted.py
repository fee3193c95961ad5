"""The cupboard shared over the sections of a season."""

import math
from typing import Any

import pytest

from loopwright.season import plan
from loopwright.season.allot_answer import allot_answer
from loopwright.season.allotted import Allotted, allotted
from loopwright.season.wording import Wording
from loopwright.units import Reader
from tests.season.small import TODAY, season

J = "garments.jumper"


def shared(changes: dict[str, Any] | None = None, garment: str | None = None) -> Allotted:
    whole = season(changes)
    return allotted(whole, plan(whole), garment)


def answer(changes: dict[str, Any] | None = None) -> str:
    said = allot_answer(shared(changes), "jumper", Wording(Reader()))
    return " ".join((said.sentence, *said.reasons))


def test_sections_add_up_to_the_role_and_its_doubt() -> None:
    """The chance of the lot is that of the plan, since both add the same doubts."""
    whole = season()
    planned = plan(whole)
    found = allotted(whole, planned)
    (role,) = planned.garment("jumper").roles
    sections = found.problem.sections
    assert math.fsum(one.length_m for one in sections) == pytest.approx(role.need_m.mean)
    sd = math.hypot(math.hypot(*(one.own_sd_m for one in sections)), math.fsum(one.shared_sd_m for one in sections))
    assert sd == pytest.approx(role.need_m.sd, rel=1e-6)


def test_enough_of_one_lot() -> None:
    assert answer() == "Each colour comes from one dye lot: no two of them meet."


def test_too_little_says_what_hides() -> None:
    said = answer({"cupboard.oat.put_ups": 8})
    assert "All lots for main hold 960 m" in said
    assert "Knit " in said


def test_two_dye_lots_of_a_raglan_ask_for_alternating() -> None:
    changes = {
        "cupboard.oat.put_ups": 7,
        "cupboard.later": {"yarn": "dk", "colour": "Oat", "dye_lot": "2", "put_ups": 6},
    }
    found = shared(changes)
    assert found.allotment.uncovered
    assert ("jumper", "main") in found.alternating
    assert "With rows of two dye lots alternated" in answer(changes)
    tried = found.alternating["jumper", "main"]
    assert any(change.note == "alternate every two rows" for change in tried.changes)


def test_no_yarn_at_all() -> None:
    assert "There is no yarn for main" in answer({"cupboard": {}})


def test_a_lot_that_is_named_for_the_role_is_the_only_one() -> None:
    changes = {
        "cupboard.later": {"yarn": "dk", "colour": "Oat", "dye_lot": "2", "put_ups": 14},
        f"{J}.yarns.main.lots": ["later"],
    }
    assert {portion.lots for portion in shared(changes).allotment.portions} == {("later",)}


def test_yarn_held_together_is_wanted_of_both() -> None:
    changes = {
        f"{J}.yarns.main.held_with": [{"yarn": "lace", "colour": "Mist"}],
        "cupboard.mist": {"yarn": "lace", "colour": "Mist", "put_ups": 9},
    }
    sections = shared(changes).problem.sections
    roles = {one.role for one in sections}
    assert roles == {"main", "main, strand 2"}
    by_role = [math.fsum(one.length_m for one in sections if one.role == role) for role in sorted(roles)]
    assert by_role[0] == pytest.approx(by_role[1])


def test_what_is_done_wants_none() -> None:
    changes = {f"{J}.begun_on": TODAY, f"{J}.knitted_off_on": TODAY, f"{J}.done_on": TODAY}
    assert shared(changes).problem.sections == ()
