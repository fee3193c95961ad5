"""Where a substitute colour hides."""

import pytest

from loopwright.allotment import AllotmentProblem, LotSupply, allot, hiding
from loopwright.uncertainty import Estimate, Origin, p_at_least
from tests.allotment.problems import jumper

CHARCOAL = LotSupply("charcoal", "dk", "Charcoal", "9", 90, 2)


def short(length_m: float) -> AllotmentProblem:
    problem = jumper(LotSupply("a", "dk", "Oat", "1", length_m, 10), CHARCOAL)
    return AllotmentProblem(problem.sections, problem.meetings, problem.lots, {("jumper", "main"): ("a",)})


def test_the_hem_alone_suffices_and_charcoal_holds_it() -> None:
    problem = short(710)
    (found,) = hiding(problem, allot(problem), {("jumper", "main"): ("charcoal",)})
    assert found.p_now < 0.95 <= found.p_best
    assert [place.part for place in found.best] == ["hem"]
    assert found.substitutes == ("charcoal",)
    assert found.holds


def test_the_chance_is_that_of_the_yarn_against_the_rest() -> None:
    problem = short(710)
    (found,) = hiding(problem, allot(problem), {})
    hem = next(place for place in found.places if place.part == "hem")
    have = Estimate(mean=710, sd=10, unit="m", origin=Origin.MEASURED)
    rest = Estimate(mean=640, sd=(12**2 + 4**2 + 4**2 + (20 + 6 + 6) ** 2) ** 0.5, unit="m", origin=Origin.COMPUTED)
    assert hem.p_after == pytest.approx(p_at_least(have, rest))
    assert hem.length_m == pytest.approx(40)


def test_the_least_visible_comes_first() -> None:
    problem = short(600)
    (found,) = hiding(problem, allot(problem), {})
    assert [place.part for place in found.places] == ["hem", "lower sleeve", "sleeve"]
    assert [place.visibility for place in found.places] == sorted(place.visibility for place in found.places)


def test_more_yarn_needs_less_hidden() -> None:
    hidden = []
    for length_m in (520, 600, 660, 720):
        problem = short(length_m)
        (found,) = hiding(problem, allot(problem), {})
        hidden.append(sum(place.length_m for place in found.best))
    assert hidden == sorted(hidden, reverse=True)


def test_nothing_is_hidden_where_nothing_is_short() -> None:
    problem = short(900)
    assert hiding(problem, allot(problem), {}) == ()


def test_far_too_little_is_not_hidden() -> None:
    problem = short(200)
    (found,) = hiding(problem, allot(problem), {})
    assert found.best == ()
    assert not found.holds
