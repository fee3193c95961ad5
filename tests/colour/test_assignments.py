"""Colours for roles: every way, the weakest meeting first, near twins folded."""

import itertools
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.colour import MOST_ASSIGNMENTS, lightness, rank_assignments, srgb_from_lab
from loopwright.units import BadInput
from tests.colour.samples import table_of

ROLES = ("main", "ground", "pattern")
MEETING = (("main", "ground"), ("ground", "pattern"))


@settings(max_examples=20)
@given(st.integers(3, 6), st.integers(0, 10_000))
def test_ranked_like_a_list_of_every_permutation(number: int, seed: int) -> None:
    colours = table_of(number, seed)
    found = rank_assignments(colours, ROLES, MEETING, most=1000, alike_below=0)
    light = lightness(colours).tolist()
    plain = {
        way: min(abs(light[way[0]] - light[way[1]]), abs(light[way[1]] - light[way[2]]))
        for way in itertools.permutations(range(number), 3)
    }
    assert found.tried == len(found.ranked) == math.perm(number, 3)
    assert {one.colours: one.worst_delta_l for one in found.ranked} == pytest.approx(plain)
    worst = [one.worst_delta_l for one in found.ranked]
    np.testing.assert_allclose(worst, sorted(worst, reverse=True), atol=1e-8)


@settings(max_examples=20)
@given(st.integers(3, 6), st.integers(0, 10_000), st.floats(0, 60), st.integers(1, 20))
def test_none_is_lost(number: int, seed: int, limit: float, most: int) -> None:
    found = rank_assignments(table_of(number, seed), ROLES, MEETING, most=most, alike_below=limit)
    assert len(found.ranked) <= most
    assert len(found.ranked) + sum(one.alike for one in found.ranked) + found.left_out == found.tried


def test_light_against_dark_wins() -> None:
    """40 at least either way with the middle colour at an end; then the mean, (80 + 40) / 2, decides against 40."""
    best = rank_assignments(srgb_from_lab([[90, 0, 0], [50, 0, 0], [10, 0, 0]]), ROLES, MEETING).ranked[0]
    assert (best.worst_delta_l, best.mean_delta_l) == pytest.approx((40, 60))
    assert best.colours == (0, 2, 1)
    assert best.grade.name == "good"


def test_near_twins_are_folded_into_the_better_one() -> None:
    """Two creams 3 apart in L*: each way with one has its twin with the other."""
    colours = srgb_from_lab([[92, 0, 8], [89, 0, 8], [30, 0, -20]])
    roles = ("ground", "pattern")
    found = rank_assignments(colours, roles, [roles])
    assert found.tried == 6
    assert [(one.colours, one.alike) for one in found.ranked] == [((0, 2), 1), ((2, 0), 1), ((0, 1), 1)]
    assert len(rank_assignments(colours, roles, [roles], alike_below=0).ranked) == 6


def test_the_weakest_meeting_is_named() -> None:
    colours = srgb_from_lab([[90, 0, 0], [20, 0, 0], [30, 0, 0]])
    ways = rank_assignments(colours, ROLES, MEETING, alike_below=0).ranked
    assert next(one for one in ways if one.colours == (0, 1, 2)).worst_pair == ("ground", "pattern")


@pytest.mark.parametrize(
    ("roles", "meeting", "says"),
    [
        (("a", "a"), [("a", "a")], "each role once"),
        (("a", "b"), [], "one pair of roles or more"),
        (("a", "b"), [("a", "c")], "found \"the role 'c'\"; wanted one of a, b"),
        (("a", "b"), [("a", "a")], "two different roles"),
        (("a", "b", "c", "d", "e"), [("a", "b")], "one for each of 5 roles"),
    ],
)
def test_roles_that_cannot_be_filled(roles: tuple[str, ...], meeting: list[tuple[str, str]], says: str) -> None:
    with pytest.raises(BadInput, match=says):
        rank_assignments(table_of(4, 1), roles, meeting)


def test_too_many_are_refused_before_they_are_made() -> None:
    assert math.perm(30, 6) > MOST_ASSIGNMENTS
    with pytest.raises(BadInput, match=r"at most 200000 of them \(leave out colours"):
        rank_assignments(table_of(30, 1), list("abcdef"), [("a", "b")])
