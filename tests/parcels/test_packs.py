"""Cheapest packs against brute force over every mix."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.parcels import cheapest_packs
from loopwright.parcels.packs import pack_mixes

PACKS = st.lists(st.tuples(st.integers(1, 6), st.integers(1, 60)), min_size=1, max_size=3)
BALLS = st.integers(0, 14)


def every_mix(balls: int, packs: list[tuple[int, int]], most: int) -> list[tuple[int, int]]:
    """Cost and balls of every mix that holds from ``balls`` to ``most``."""
    counts = product(*(range(most // size + 1) for size, _ in packs))
    mixes = [
        (
            sum(n * price for n, (_, price) in zip(mix, packs, strict=True)),
            sum(n * size for n, (size, _) in zip(mix, packs, strict=True)),
        )
        for mix in counts
    ]
    return [(cost, held) for cost, held in mixes if balls <= held <= most]


@given(BALLS, PACKS)
def test_no_mix_is_cheaper(balls: int, packs: list[tuple[int, int]]) -> None:
    """Of equal cost, the one with fewest balls; a mix with a whole largest pack to spare is never needed."""
    most = balls + max(size for size, _ in packs)
    found = cheapest_packs(balls, packs)
    assert (found.cost_minor, found.balls) == min(every_mix(balls, packs, most))


@given(BALLS, PACKS)
def test_a_choice_is_what_its_packs_say(balls: int, packs: list[tuple[int, int]]) -> None:
    found = cheapest_packs(balls, packs)
    assert found.balls == sum(n * size for n, (size, _) in zip(found.packs, packs, strict=True))
    assert found.cost_minor == sum(n * price for n, (_, price) in zip(found.packs, packs, strict=True))


@given(BALLS, PACKS, st.integers(0, 80), st.integers(0, 20))
def test_all_mixes_within_reach_of_a_shelf(balls: int, packs: list[tuple[int, int]], extra: int, in_stock: int) -> None:
    found = {(one.cost_minor, one.balls) for one in pack_mixes(balls, packs, extra_minor=extra, in_stock=in_stock)}
    every = set(every_mix(balls, packs, in_stock)) if in_stock >= balls else set()
    least = min(every, default=(0, 0))[0]
    assert found == {(cost, held) for cost, held in every if cost <= least + extra}


def test_equal_costs_take_fewer_packs() -> None:
    assert cheapest_packs(5, [(1, 400), (5, 2000)]).packs == (0, 1)


def test_none_wanted_costs_nothing() -> None:
    assert cheapest_packs(0, [(1, 400)]).cost_minor == 0


@pytest.mark.parametrize("packs", [[], [(0, 100)]])
def test_what_are_no_packs(packs: list[tuple[int, int]]) -> None:
    with pytest.raises(ValueError, match="at least one"):
        cheapest_packs(3, packs)


def test_balls_for_nothing_or_a_cent_come_to_an_end() -> None:
    """A price typed as a stopgap: no more than sixty packs beyond the need are looked at."""
    for price in (0, 1):
        found = pack_mixes(4, [(1, price), (5, 5 * price)], extra_minor=2000)
        assert found[0].cost_minor == 4 * price
