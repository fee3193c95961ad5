"""The score of one strand and of a million."""

import dataclasses

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.need.substitution import (
    FIBRE_NAMES,
    LIMITS,
    VERDICTS,
    Ranking,
    Wish,
    YarnCatalogue,
    compare,
    rank_catalogue,
    rank_keys,
    wish_of,
)
from loopwright.need.substitution.score import BLOCK
from tests.need.substitution.yarns import original

WISH = wish_of(original())


def catalogue(number: int, seed: int = 7) -> YarnCatalogue:
    chance = np.random.default_rng(seed)
    shares = np.zeros((number, len(FIBRE_NAMES)), dtype=np.float32)
    rows, part = np.arange(number), chance.integers(5, 11, number) / 10
    np.add.at(shares, (rows, chance.integers(0, len(FIBRE_NAMES), number)), part)
    np.add.at(shares, (rows, chance.integers(0, len(FIBRE_NAMES), number)), 1 - part)
    shares[::50] = 0
    return YarnCatalogue.made(
        [f"Yarn {row}" for row in rows], chance.uniform(50, 400, number), np.full(number, 100.0), shares
    )


def one_by_one(wish: Wish, yarns: YarnCatalogue) -> list[float]:
    """The keys of single rows, each scored alone."""
    return [float(rank_keys(wish, yarns.strands.rows(slice(row, row + 1)))[0]) for row in range(len(yarns))]


def by_sorting(keys: list[float], best: int) -> list[int]:
    return sorted(range(len(keys)), key=lambda row: (keys[row], row))[:best]


def test_many_rows_score_as_each_row_alone() -> None:
    yarns = catalogue(400)
    assert rank_keys(WISH, yarns.strands).tolist() == one_by_one(WISH, yarns)


def test_blocks_leave_no_seam() -> None:
    yarns = catalogue(2 * BLOCK + 3)
    keys = rank_keys(WISH, yarns.strands)
    for row in (0, BLOCK - 1, BLOCK, 2 * BLOCK - 1, 2 * BLOCK, 2 * BLOCK + 2):
        assert keys[row] == rank_keys(WISH, yarns.strands.rows(slice(row, row + 1)))[0]


def test_the_comparison_has_the_score_of_the_ranking() -> None:
    yarns = catalogue(60)
    ranking = rank_catalogue(WISH, yarns, 60)
    for place, verdict, score in zip(ranking.places, ranking.verdicts, ranking.scores, strict=True):
        found = compare(original(), [yarns.yarn(int(place))])
        assert found.verdict == VERDICTS[verdict]
        assert found.score == pytest.approx(score, abs=1e-4)  # a catalogue keeps shares in single precision


def test_the_score_is_the_weighted_mean_of_the_penalties_by_hand() -> None:
    """Written out once more, trait by trait, from the reasons of the comparison."""
    yarns = catalogue(30)
    whole = sum(limit.weight for limit in LIMITS.values())
    for row in range(30):
        found = compare(original(), [yarns.yarn(row)])
        penalties = [
            LIMITS[reason.trait].weight * min((reason.off / LIMITS[reason.trait].close) ** 2, 9)
            for reason in found.reasons
        ]
        assert found.score == pytest.approx(sum(penalties) / whole)


@settings(max_examples=30, deadline=None)
@given(st.integers(1, 60), st.integers(0, 100))
def test_the_best_are_those_of_a_full_sort(best: int, seed: int) -> None:
    yarns = catalogue(60, seed)
    found = rank_catalogue(WISH, yarns, best)
    assert found.places.tolist() == by_sorting(one_by_one(WISH, yarns), best)


def test_equal_yarns_keep_the_order_of_their_rows() -> None:
    few, number = catalogue(3, 3), 600
    rows = np.arange(number) % 3
    many = YarnCatalogue.made(["same"] * number, few.length_m[rows], few.mass_g[rows], few.shares[rows])
    keys = one_by_one(WISH, few)
    expected = by_sorting([keys[row] for row in rows], 450)
    assert rank_catalogue(WISH, many, 450).places.tolist() == expected


def test_more_than_there_are_and_none_at_all() -> None:
    assert len(rank_catalogue(WISH, catalogue(4), 100).places) == 4
    assert len(rank_catalogue(WISH, catalogue(0), 5).places) == 0


def test_a_fibre_left_out_is_in_none_and_nothing_unknown_is() -> None:
    yarns = catalogue(500)
    found: Ranking = rank_catalogue(WISH, yarns, 500, without=["wool", "silk"])
    shares = yarns.shares[found.places]
    assert len(found.places) > 0
    assert not shares[:, [FIBRE_NAMES.index(name) for name in ("wool", "silk", "other")]].any()
    assert np.allclose(shares.sum(axis=1), 1)


def test_worse_verdicts_stand_behind() -> None:
    found = rank_catalogue(WISH, catalogue(300), 300)
    assert (np.diff(found.verdicts) >= 0).all()
    assert ((found.scores >= 0) & (found.scores <= 9)).all()


def test_a_catalogue_is_frozen_and_checked() -> None:
    yarns = catalogue(3)
    with pytest.raises(dataclasses.FrozenInstanceError):
        yarns.names = ()  # type: ignore[misc]
    with pytest.raises(ValueError, match="not above nothing"):
        YarnCatalogue.made(["a"], np.array([0.0]), np.array([50.0]), yarns.shares[:1])
    with pytest.raises(ValueError, match="several lengths"):
        YarnCatalogue.made(["a"], np.array([1.0, 2.0]), np.array([50.0]), yarns.shares[:1])
