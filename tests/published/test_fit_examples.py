"""The eight worked examples of the ranking rule, every size of each, to the four decimals printed.

Source and status stand in `fit_examples.json`: the rule is a proposal, the bodies are rows of a public survey,
the numbers were computed by a script of another hand.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from loopwright.fit import SizeFit, rank_sizes, score_size
from loopwright.pattern import Construction

DATA: dict[str, Any] = json.loads((Path(__file__).parent / "fit_examples.json").read_text(encoding="utf-8"))
EXAMPLES: list[dict[str, Any]] = DATA["examples"]
PRINTED = 0.5e-4 * 1.001
"""Half of the last printed decimal."""


def scored(example: dict[str, Any]) -> dict[str, SizeFit]:
    return {
        size: score_size(
            size,
            example["body"],
            garment,
            example["intended"],
            Construction(example["construction"]),
            example["stretch"],
        )
        for size, garment in DATA["size_tables"][example["size_table"]].items()
    }


@pytest.fixture(params=EXAMPLES, ids=lambda example: example["name"])
def example(request: pytest.FixtureRequest) -> dict[str, Any]:
    chosen: dict[str, Any] = request.param
    return chosen


def test_every_score(example: dict[str, Any]) -> None:
    fits = scored(example)
    printed = {row["size"]: row["score"] for row in example["sizes"]}
    assert {size: fit.score for size, fit in fits.items()} == pytest.approx(printed, abs=PRINTED)


def test_every_penalty(example: dict[str, Any]) -> None:
    fits = scored(example)
    for row in example["sizes"]:
        found = {point.point: point.penalty for point in fits[row["size"]].points}
        assert found == pytest.approx(row["penalties"], abs=PRINTED), row["size"]


def test_every_size_that_is_out(example: dict[str, Any]) -> None:
    found = {size: set(fit.too_small_at) for size, fit in scored(example).items()}
    assert found == {row["size"]: set(row["rejected_for"]) for row in example["sizes"]}


def test_the_choice_and_the_next_best(example: dict[str, Any]) -> None:
    best, second, *_ = rank_sizes(list(scored(example).values()))
    wanted = example["result"]
    assert (best.size, second.size) == (wanted["size"], wanted["runner_up"])
    assert second.score == pytest.approx(wanted["runner_up_score"], abs=PRINTED)


def test_the_verdict_and_what_to_change(example: dict[str, Any]) -> None:
    best = rank_sizes(list(scored(example).values()))[0]
    assert best.verdict == example["result"]["verdict"]
    assert {point.point for point in best.to_change} == set(example["result"]["points_to_change"])
