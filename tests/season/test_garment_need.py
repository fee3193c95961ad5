"""Need of a garment by its sections: they add up to the roles, changes act once, a measured loop counts."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.need import together
from loopwright.season import GarmentPlan, plan
from tests.season.small import TODAY, season

J = "garments.jumper"
SIZE: dict[str, Any] = {f"{J}.size": "M"}
TWO_ROLES: dict[str, Any] = {
    "patterns.plain.yarn.edge": {"length": "95 (100, 105) m"},
    f"{J}.yarns": {"main": {"yarn": "dk", "colour": "Oat"}, "edge": {"yarn": "dk", "colour": "Rust"}},
}
OWN: dict[str, Any] = {
    f"{J}.pattern": None,
    f"{J}.draft": {"construction": "raglan", "measures": {"length": "58 cm", "upper_arm_girth": "35 cm"}},
    f"{J}.draft.measures.sleeve_length": "45 cm",
}


def jumper(changes: dict[str, Any]) -> GarmentPlan:
    return plan(season(changes)).garment("jumper")


def need_m(changes: dict[str, Any], role: str = "main") -> float:
    return next(one.need_m.mean for one in jumper(SIZE | changes).roles if one.role == role)


@pytest.mark.parametrize("changes", [{}, TWO_ROLES, {f"{J}.begun_on": TODAY, f"{J}.knitted": "35 %"}, OWN])
def test_the_sections_of_a_role_are_the_role(changes: dict[str, Any]) -> None:
    found = jumper(SIZE | changes if changes is not OWN else OWN)
    assert found.sections
    for role in found.roles:
        whole = together([one for one in found.sections if one.role == role.role])
        assert whole.mean == pytest.approx(role.need_m.mean)
        assert whole.sd == pytest.approx(role.need_m.sd)


def test_what_the_pattern_states_is_joined_with_what_is_counted() -> None:
    silent, stated = need_m({"patterns.plain.yarn": {}}), 1060.0
    assert min(silent, stated) < need_m({}) < max(silent, stated)


def test_a_longer_body_acts_once() -> None:
    """5 cm of 100 cm round at 22 × 30: 15 rounds of 220 loops of 17.7 mm, whether the pattern states yarn or not."""
    more = {f"{J}.changes": {"body_longer": "5 cm"}}
    by_hand = 15 * 220 * 17.7 / 1000
    assert need_m(more) - need_m({}) == pytest.approx(by_hand, rel=0.05)
    silent: dict[str, Any] = {"patterns.plain.yarn": {}}
    assert need_m(silent | more) - need_m(silent) == pytest.approx(by_hand, rel=0.05)


def test_her_own_draft_acts_once_and_in_the_role_that_takes_it() -> None:
    wish = {f"{J}.draft": {"measures": {"length": "63 cm"}}}
    longer = {f"{J}.changes": {"body_longer": "5 cm"}}
    assert need_m(TWO_ROLES | wish) == pytest.approx(need_m(TWO_ROLES | longer), rel=1e-6)
    assert need_m(TWO_ROLES | wish, "edge") == pytest.approx(need_m(TWO_ROLES, "edge"))


@settings(max_examples=15, deadline=None)
@given(st.integers(-8, 12))
def test_a_change_and_the_same_wish_are_one(longer: int) -> None:
    wish = {f"{J}.draft": {"measures": {"length": f"{58 + longer} cm"}}}
    change = {f"{J}.changes": {"body_longer": f"{longer} cm"}}
    assert need_m(wish) == pytest.approx(need_m(change), rel=1e-6)


def test_no_sleeves_take_no_yarn_for_sleeves() -> None:
    drop = {"patterns.plain.construction": "drop shoulder"}
    bare = jumper(SIZE | drop | {f"{J}.draft": {"sleeves": "none"}})
    assert not [one for one in bare.sections if "sleeve" in one.piece]
    assert bare.roles[0].need_m.mean < 0.85 * need_m(drop)


def test_an_unravelled_loop_counts_for_most_of_it() -> None:
    """A tenth more yarn in a stitch than the model says, and the pattern silent: a tenth more yarn."""
    silent: dict[str, Any] = {"patterns.plain.yarn": {}}
    longer = silent | {"swatches.plain.unravelled": "100 sts = 195 cm"}
    assert need_m(longer) / need_m(silent) == pytest.approx(19.5 / 17.8, rel=0.02)


def test_what_is_knitted_is_taken_off_from_the_first_section_on() -> None:
    whole, begun = jumper(SIZE), jumper(SIZE | {f"{J}.begun_on": TODAY, f"{J}.knitted": "30 %"})
    assert begun.roles[0].need_m.mean == pytest.approx(0.7 * whole.roles[0].need_m.mean)
    assert begun.sections[0].name != whole.sections[0].name
    assert begun.sections[-1].length_m == pytest.approx(whole.sections[-1].length_m)


def test_her_own_draft_needs_no_pattern_amount() -> None:
    own = jumper(OWN)
    assert own.roles[0].need_m.mean == pytest.approx(sum(one.length_m for one in own.sections))
    assert 0.04 < own.roles[0].need_m.relative_sd < 0.08


def test_what_cannot_be_drafted_goes_by_area() -> None:
    """An armhole as deep as the garment is long cannot be drafted; plain shapes still give an area."""
    broken = jumper(SIZE | {f"{J}.draft": {"measures": {"armhole_depth": "57 cm"}}})
    assert (broken.drafted, broken.sections) == (None, ())
    assert broken.roles[0].need_m.mean > 500
