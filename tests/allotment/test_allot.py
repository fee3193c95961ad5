"""Which dye lot knits which section: held to brute force, to laws, and to drawing at random."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.allotment import Allotment, AllotmentProblem, LotSupply, Meeting, SectionDemand, allot
from loopwright.allotment.lots import joint_chance
from loopwright.units import BadInput
from tests.allotment.brute_force import best_levels, two_best_levels
from tests.allotment.problems import jumper, problems

AMPLE = LotSupply("a", "dk", "Oat", "1", 1000, 15, (100,) * 10)
SHORT = LotSupply("b", "dk", "Oat", "2", 600, 10, (100,) * 6)
SMALL = LotSupply("c", "dk", "Oat", "3", 300, 6, (100,) * 3)


def assert_no_worse(before: Allotment, after: Allotment) -> None:
    """Level by level, the first that differs is better."""
    grains = (1e-4, 0.5, 0.5, 0.5, 0.5, 1e-2)
    for was, now, grain in zip(before.levels.as_tuple(), after.levels.as_tuple(), grains, strict=True):
        if now < was - grain:
            break
        assert now <= was + grain


def lots_of(found: Allotment, section: str) -> list[tuple[str, ...]]:
    return [portion.lots for portion in found.of(section)]


@settings(max_examples=60, deadline=None)
@given(problems(3, 2))
def test_every_level_is_that_of_brute_force(problem: AllotmentProblem) -> None:
    assert allot(problem, with_next_best=False).levels.as_tuple() == pytest.approx(best_levels(problem), abs=1e-3)


@settings(max_examples=12, deadline=None)
@given(problems(4, 3))
def test_brute_force_with_more_lots(problem: AllotmentProblem) -> None:
    assert allot(problem, with_next_best=False).levels.as_tuple() == pytest.approx(best_levels(problem), abs=1e-3)


@settings(max_examples=25, deadline=None)
@given(problems(3, 2))
def test_the_next_best_is_that_of_brute_force(problem: AllotmentProblem) -> None:
    found = allot(problem).proof.next_best
    best = two_best_levels(problem)
    if len(problem.lots) == 1 or best[0][4] == 0 or len(best) == 1:
        assert found is None
    else:
        assert found is not None
        assert found.as_tuple() == pytest.approx(best[1], abs=1e-3)


def test_one_lot_that_suffices_knits_all() -> None:
    found = allot(jumper(AMPLE, SMALL))
    assert {portion.lots for portion in found.portions} == {("a",)}
    assert found.levels.as_tuple() == pytest.approx((0, 0, 0, 0, 1, 20))
    assert found.proof.status == "proven"


def test_two_lots_change_at_the_seam_and_sleeves_stay_alike() -> None:
    found = allot(jumper(SHORT, SMALL))
    assert lots_of(found, "body") == [("b",)]
    assert lots_of(found, "sleeve 1") == lots_of(found, "sleeve 2") == [("c",)]
    assert {change.place for change in found.changes} == {"seam"}
    assert not any(change.note for change in found.changes)


def test_a_plain_field_is_not_shared_unless_rows_may_be_alternated() -> None:
    lots = (replace(SMALL, key="a", dye_lot="1"), replace(SMALL, key="b", dye_lot="2"))
    strict, allowed = allot(jumper(*lots)), allot(jumper(*lots, alternate=True))
    assert "body" in strict.uncovered
    assert strict.lacks[0].kind == "too little"
    assert len(allowed.of("body")) == 2
    assert {change.note for change in allowed.changes if change.place == "plain field"} == {"alternate every two rows"}


def test_lots_that_do_by_length_but_meet_are_told_apart_from_too_little() -> None:
    lots = tuple(LotSupply(key, "dk", "Oat", key, 380, 5) for key in "abc")
    found = allot(jumper(*lots))
    assert found.uncovered == ("body",)
    (lack,) = found.lacks
    assert lack.kind == "dye lots"
    assert lack.p_enough > 0.95
    assert lack.want_m < lack.have_m
    assert allot(jumper(*lots, alternate=True)).uncovered == ()


def test_lots_of_one_dye_lot_are_one() -> None:
    lots = tuple(LotSupply(key, "dk", "Oat", "7", 260, 5) for key in "abc")
    found = allot(jumper(*lots))
    assert {portion.lots for portion in found.portions} == {("a", "b", "c")}
    assert found.levels.lots == 1


def test_lots_whose_dye_lot_is_not_known_are_not_one() -> None:
    found = allot(jumper(*(LotSupply(key, "dk", "Oat", "", 260, 5) for key in "abc")))
    assert "body" in found.uncovered


def test_no_lot_at_all() -> None:
    found = allot(jumper())
    assert len(found.uncovered) == 4
    assert found.lacks[0].kind == "no lot"
    assert found.proof.status == "proven"


def test_parts_are_left_whole() -> None:
    """Yarn for one sleeve more than the body: neither sleeve is begun."""
    found = allot(jumper(replace(SHORT, length_m=620, put_ups=())))
    assert found.uncovered == ("sleeve 1", "sleeve 2")


@settings(max_examples=40, deadline=None)
@given(problems(4, 3))
def test_nothing_is_allotted_twice_and_no_lot_beyond_its_mean(problem: AllotmentProblem) -> None:
    found = allot(problem, with_next_best=False)
    for section in problem.sections:
        shares = [portion.share for portion in found.of(section.key)]
        assert (not shares) == (section.key in found.uncovered)
        assert not shares or sum(shares) == pytest.approx(1)
        able = problem.may_play[section.garment, section.role]
        assert all(set(portion.lots) <= set(able) for portion in found.of(section.key))
    held = {lot.key: lot.length_m for lot in problem.lots}
    for use in found.uses:
        assert use.used_m == pytest.approx(sum(p.length_m for p in found.portions if p.lots == use.lots))
        assert use.used_m <= sum(use.put_ups) + 1e-3
        assert sum(use.put_ups) <= sum(held[key] for key in use.lots) + 1e-9


@settings(max_examples=25, deadline=None)
@given(problems(4, 3), st.randoms(use_true_random=False))
def test_the_order_of_input_is_irrelevant(problem: AllotmentProblem, chance: "object") -> None:
    def mixed(items: tuple[object, ...]) -> tuple[object, ...]:
        return tuple(chance.sample(list(items), len(items)))  # type: ignore[attr-defined]

    other = AllotmentProblem(
        sections=mixed(problem.sections),  # type: ignore[arg-type]
        meetings=mixed(problem.meetings),  # type: ignore[arg-type]
        lots=mixed(problem.lots),  # type: ignore[arg-type]
        may_play={role: keys[::-1] for role, keys in reversed(list(problem.may_play.items()))},
        sureness=problem.sureness,
        alternate=problem.alternate,
    )
    one, two = allot(problem, with_next_best=False), allot(other, with_next_best=False)
    assert (one.portions, one.uncovered, one.levels) == (two.portions, two.uncovered, two.levels)


@settings(max_examples=25, deadline=None)
@given(problems(3, 2), st.integers(20, 200))
def test_another_lot_is_never_worse(problem: AllotmentProblem, length_m: int) -> None:
    more = replace(
        problem,
        lots=(*problem.lots, LotSupply("z", "dk", "Oat", "dye z", length_m)),
        may_play={role: (*keys, "z") for role, keys in problem.may_play.items()},
    )
    assert_no_worse(allot(problem, with_next_best=False), allot(more, with_next_best=False))


@settings(max_examples=25, deadline=None)
@given(problems(3, 2), st.integers(10, 90))
def test_more_of_a_lot_is_never_worse(problem: AllotmentProblem, more_m: int) -> None:
    first, *others = problem.lots
    longer = replace(first, length_m=first.length_m + more_m, put_ups=(*first.put_ups, float(more_m)))
    before = allot(problem, with_next_best=False)
    assert_no_worse(before, allot(replace(problem, lots=(longer, *others)), with_next_best=False))


@pytest.mark.parametrize("sureness", [0.8, 0.95])
@pytest.mark.parametrize(("one_m", "other_m"), [(480, 300), (560, 150), (460, 285)])
def test_drawn_at_random_it_holds_as_often_as_it_says(sureness: float, one_m: float, other_m: float) -> None:
    """Two lots, doubts of each section and one that all share: the joint chance is no less than asked for.

    Drawn 200,000 times; the standard error of the chance is 0.1 %, and three of them are allowed.
    """
    lots = (LotSupply("a", "dk", "Oat", "1", one_m, 10), LotSupply("b", "dk", "Oat", "2", other_m, 6))
    problem = jumper(*lots, sureness=sureness)
    found = allot(problem, with_next_best=False)
    sections = {one.key: one for one in problem.sections}
    chance = np.random.default_rng(2027)
    drawn = 200_000
    common = chance.standard_normal(drawn)
    needs = {
        key: one.length_m + one.own_sd_m * chance.standard_normal(drawn) + one.shared_sd_m * common
        for key, one in sections.items()
    }
    holds = np.ones(drawn, dtype=bool)
    for lot in lots:
        left = lot.length_m + lot.sd_m * chance.standard_normal(drawn)
        used = sum(p.share * needs[p.section] for p in found.portions if lot.key in p.lots)
        holds &= left >= used
        stated = next((use.p_enough for use in found.uses if lot.key in use.lots), 1.0)
        assert np.mean(left >= used) == pytest.approx(stated, abs=4e-3)
    assert holds.mean() >= sureness - 3e-3
    assert holds.mean() >= joint_chance(use.p_enough for use in found.uses) - 3e-3


def test_the_sureness_is_reached_and_not_far_surpassed() -> None:
    """Just enough yarn, 95 % sure by the normal curve: m + 1.6449 s, with s² = 10² + Σo² + (Σh)²."""
    spread = (10**2 + (12**2 + 2**2 + 4**2 + 4**2) + (20 + 2 + 6 + 6) ** 2) ** 0.5
    just = 680 + 1.644854 * spread
    assert allot(jumper(LotSupply("a", "dk", "Oat", "1", just + 0.05, 10))).uncovered == ()
    assert allot(jumper(LotSupply("a", "dk", "Oat", "1", just - 0.05, 10))).uncovered != ()


def test_garments_that_share_nothing_are_solved_apart_and_summed() -> None:
    one = jumper(SHORT, SMALL)
    renamed = {section.key: f"{section.key} of the other" for section in one.sections}
    both = AllotmentProblem(
        sections=(*one.sections, *(replace(s, key=renamed[s.key], garment="other") for s in one.sections)),
        meetings=(*one.meetings, *(replace(m, one=renamed[m.one], other=renamed[m.other]) for m in one.meetings)),
        lots=(*one.lots, replace(SHORT, key="d", colour="Rust"), replace(SMALL, key="e", colour="Rust")),
        may_play={**one.may_play, ("other", "main"): ("d", "e")},
    )
    single = allot(one).levels.as_tuple()
    assert allot(both).levels.as_tuple() == pytest.approx([2 * value for value in single])


def test_a_time_that_is_too_short_leaves_a_bound_and_says_so() -> None:
    found = allot(jumper(SHORT, SMALL), time_limit_s=0.0)
    assert found.proof.status == "time limit"
    assert found.proof.bound <= found.levels
    assert found.proof.gap > 0


@pytest.mark.parametrize(
    "spoilt",
    [
        lambda: SectionDemand("s", "g", "main", 0),
        lambda: SectionDemand("s", "g", "main", 10, visibility=0),
        lambda: LotSupply("a", "dk", "Oat", "1", 100, 0, (60,)),
        lambda: replace(jumper(AMPLE), sureness=1.0),
        lambda: replace(jumper(AMPLE), lots=(AMPLE, AMPLE)),
        lambda: replace(jumper(AMPLE), meetings=(Meeting("body", "tail", "hem"),)),
        lambda: replace(jumper(AMPLE), may_play={("jumper", "main"): ("z",)}),
    ],
)
def test_what_cannot_be(spoilt: "object") -> None:
    with pytest.raises(BadInput):
        spoilt()  # type: ignore[operator]
