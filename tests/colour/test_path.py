"""The shortest path: equal to trying every order, never worse than greedy, its ends kept."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.colour import EXACT_UP_TO, MOST_POINTS, difference_matrix, lab_from_srgb, path_length, shortest_path
from loopwright.colour.path_search import good_path, greedy_path
from loopwright.units import BadInput
from tests.colour.brute_force import least_length
from tests.colour.samples import table_of

seeds = st.integers(0, 10_000)


def distances_of(number: int, seed: int) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    return difference_matrix(lab_from_srgb(table_of(number, seed)))


@settings(max_examples=40)
@given(st.integers(1, 7), seeds, st.integers(0, 6), st.integers(0, 6), st.sampled_from(["", "first", "last", "both"]))
def test_it_is_the_best_of_every_order(number: int, seed: int, one: int, other: int, fixed: str) -> None:
    first = one % number if fixed in {"first", "both"} else None
    last = other % number if fixed in {"last", "both"} else None
    if number > 1 and first is not None and first == last:
        last = (first + 1) % number
    distances = distances_of(number, seed)
    path = shortest_path(distances, first, last)
    assert sorted(path) == list(range(number))
    assert first in (None, path[0])
    assert last in (None, path[-1])
    assert path_length(distances, path) == pytest.approx(least_length(distances, first, last))


@settings(max_examples=20)
@given(st.integers(8, 24), seeds)
def test_it_is_never_worse_than_greedy(number: int, seed: int) -> None:
    distances = distances_of(number, seed)
    best = path_length(distances, shortest_path(distances))
    assert all(best <= path_length(distances, greedy_path(distances, start)) + 1e-9 for start in range(number))
    ended = path_length(distances, shortest_path(distances, 0, 1))
    assert best - 1e-9 <= ended <= path_length(distances, greedy_path(distances, 0, 1)) + 1e-9


@settings(max_examples=15)
@given(st.integers(3, EXACT_UP_TO), seeds, st.booleans(), st.booleans())
def test_the_search_comes_near_the_proven_path(number: int, seed: int, first: bool, last: bool) -> None:
    """In these draws no path of the search is more than 5 % longer; where that ends is not known."""
    distances = distances_of(number, seed)
    ends = (0 if first else None, 1 if last else None)
    found = good_path(distances, *ends)
    assert sorted(found) == list(range(number))
    assert (ends[0] in (None, found[0]), ends[1] in (None, found[-1])) == (True, True)
    proven = path_length(distances, shortest_path(distances, *ends))
    assert proven - 1e-9 <= path_length(distances, found) <= 1.05 * proven


def test_a_line_of_many_points_is_found() -> None:
    """Points on a straight line: the only shortest path runs along it."""
    at = np.random.default_rng(3).permutation(60).astype(float)
    path = shortest_path(np.abs(at[:, None] - at))
    assert path_length(np.abs(at[:, None] - at), path) == 59


@pytest.mark.parametrize("number", [9, 20])
def test_the_same_table_gives_the_same_path(number: int) -> None:
    distances = np.ones((number, number)) - np.eye(number)
    assert shortest_path(distances) == shortest_path(distances)
    assert sorted(shortest_path(distances)) == list(range(number))


def test_two_points_with_ends() -> None:
    distances = np.array([[0.0, 5], [5, 0]])
    assert shortest_path(distances) == (0, 1)
    assert shortest_path(distances, first=1) == shortest_path(distances, last=0) == (1, 0)
    assert shortest_path(distances, first=0) == (0, 1)


@pytest.mark.parametrize("number", [0, MOST_POINTS + 1])
def test_none_and_too_many_are_refused(number: int) -> None:
    with pytest.raises(BadInput, match="wanted 1 to 100"):
        shortest_path(np.zeros((number, number)))


def test_one_point_cannot_be_both_ends() -> None:
    with pytest.raises(BadInput, match="two different ones"):
        shortest_path(np.zeros((3, 3)), 1, 1)
    assert shortest_path(np.zeros((1, 1)), 0, 0) == (0,)


def test_faults_of_the_caller() -> None:
    with pytest.raises(ValueError, match="symmetric"):
        shortest_path([[0, 1, 2], [3, 0, 1], [2, 1, 0]])
    with pytest.raises(ValueError, match="found the place 7"):
        shortest_path(np.zeros((3, 3)), 7)
