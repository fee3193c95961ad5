"""Which put-ups of one lot are opened."""

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from loopwright.allotment.put_ups import least_put_ups


@given(st.lists(st.integers(1, 60), min_size=1, max_size=6), st.integers(0, 200))
def test_no_other_choice_leaves_less(put_ups: list[int], used_m: int) -> None:
    every = [sum(chosen) for n in range(len(put_ups) + 1) for chosen in combinations(put_ups, n)]
    enough = [held for held in every if held >= used_m]
    found = least_put_ups([float(metres) for metres in put_ups], used_m)
    assert (None if found is None else sum(found)) == (min(enough) if enough else None)


def test_a_remnant_goes_before_a_whole_one() -> None:
    assert least_put_ups((115.0, 115.0, 71.0), 60) == (71.0,)


def test_too_many_ways_are_not_tried() -> None:
    assert least_put_ups([100.0 + n for n in range(20)], 300) is None
