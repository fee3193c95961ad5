"""Yarns held together that come to a wanted strand."""

from itertools import combinations_with_replacement

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.need.substitution import (
    LIMITS,
    catalogue_of,
    compare,
    held_near,
    metres_of,
    put_ups_for,
    rank_held,
    strand_of,
    wish_of,
)
from loopwright.uncertainty import Estimate, Origin
from loopwright.yarn import Yarn, grist_held_together
from tests.need.substitution.yarns import original, yarn

SOCK = yarn("sock", {"superwash wool": 75, "nylon": 25}, 250)
FINE = yarn("fine", {"wool": 100}, 200)
HAZE = yarn("haze", {"mohair": 70, "silk": 30}, 120, 25)
CUPBOARD = [SOCK, FINE, HAZE, yarn("rug", {"wool": 100}, 1500), yarn("thin", {"wool": 100}, 90)]
STRANDS = st.lists(st.sampled_from(CUPBOARD), min_size=1, max_size=3)


@given(STRANDS)
def test_grists_add(strands: list[Yarn]) -> None:
    assert strand_of(strands).grist_tex[0] == pytest.approx(grist_held_together(y.grist_tex for y in strands))


@given(STRANDS)
def test_diameters_add_in_square(strands: list[Yarn]) -> None:
    def square(*parts: Yarn) -> float:
        row = strand_of(parts)
        return float((row.grist_tex * row.bulk_cm3_g)[0])

    assert square(*strands) == pytest.approx(sum(square(one) for one in strands))


def test_a_blend_of_strands_is_weighted_by_mass() -> None:
    """250 tex of 75/25 and 250 tex of wool: 37.5 % superwash, 12.5 % nylon, 50 % wool."""
    found = compare(original(), [SOCK, yarn("plain", {"wool": 100}, 250)]).substitute.fibres
    assert found == pytest.approx({"superwash wool": 37.5, "nylon": 12.5, "wool": 50})


@pytest.mark.parametrize("strands", [2, 3])
def test_every_way_that_is_near_is_found(strands: int) -> None:
    wish = wish_of(original())
    found = {tuple(row) for row in held_near(wish, catalogue_of(CUPBOARD).strands, strands)}
    near = set()
    for places in combinations_with_replacement(range(len(CUPBOARD)), strands):
        ratio = compare(original(), [CUPBOARD[place] for place in places]).thickness_ratio.mean
        if abs(ratio - 1) <= LIMITS["thickness"].end:
            near.add(places)
    assert found == near
    assert found


def test_two_fine_strands_make_a_dk() -> None:
    _, members = rank_held(wish_of(original()), catalogue_of(CUPBOARD).strands, 1)
    assert members[0].tolist() == [1, 1]


@settings(max_examples=20, deadline=None)
@given(st.permutations(CUPBOARD))
def test_the_order_of_the_cupboard_does_not_matter(cupboard: list[Yarn]) -> None:
    wish = wish_of(original())
    ranking, members = rank_held(wish, catalogue_of(cupboard).strands, 5)
    again, same = rank_held(wish, catalogue_of(CUPBOARD).strands, 5)
    assert np.allclose(ranking.scores, again.scores, atol=1e-6)
    assert sorted(cupboard[int(place)].key for place in members[0]) == sorted(CUPBOARD[int(p)].key for p in same[0])


def test_an_empty_cupboard_holds_nothing() -> None:
    ranking, members = rank_held(wish_of(original()), catalogue_of([]).strands, 5)
    assert (len(ranking.places), members) == (0, [])


def test_put_ups_of_a_yarn_that_runs_twice() -> None:
    """850 m of two strands of sock (200 m a ball) and one of haze (208 m): 1700/200 and 850/208, rounded up.

    Half sure needs no reserve where nothing is in doubt.
    """
    need = Estimate.known("given", 850, "m", Origin.STATED)
    assert metres_of(need, 2).mean == 1700
    assert put_ups_for([SOCK, SOCK, HAZE], need, 0.5) == {"sock": 9, "haze": 5}
