"""Where colours go, as it is written: read, refused, written back."""

import pytest
from pydantic import ValidationError

from loopwright.garment.wanted.colours import ColourPlan, ColourRun, read_colour_runs, write_colour_runs
from loopwright.units import BadInput


@pytest.mark.parametrize(
    ("text", "runs"),
    [
        ("main", (ColourRun(role="main"),)),
        ("4 main, 2 contrast-1", (ColourRun(role="main", times=4), ColourRun(role="contrast-1", times=2))),
        ("4 rows main,2 rounds a", (ColourRun(role="main", times=4), ColourRun(role="a", times=2))),
        (
            "12 main, chart waves, main",
            (ColourRun(role="main", times=12), ColourRun(chart="waves", times=1), ColourRun(role="main")),
        ),
        ("3 times chart waves", (ColourRun(chart="waves", times=3),)),
        ("chart waves", (ColourRun(chart="waves"),)),
    ],
)
def test_what_is_written_is_read(text: str, runs: tuple[ColourRun, ...]) -> None:
    assert read_colour_runs(text) == runs
    assert read_colour_runs(write_colour_runs(runs)) == runs


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("", "nothing"),
        ("4 main,", "nothing"),
        ("0 main", "0 main"),
        ("-2 main", "-2 main"),
        ("main, 4 a", "main, and more after it"),
        ("4 Main", "4 Main"),
        ("chart waves and more", "chart waves and more"),
    ],
)
def test_what_cannot_be_read_is_said(text: str, found: str) -> None:
    with pytest.raises(BadInput, match=f'found "?{found}'):
        read_colour_runs(text)


def test_a_place_that_is_not_named_takes_the_general_word() -> None:
    plan = ColourPlan.model_validate({"everywhere": "4 a, 2 b", "edges": "b", "cuff": "a", "yoke": "chart waves"})
    assert plan.runs("hem") == plan.runs("band") == plan.edges
    assert plan.runs("cuff") == (ColourRun(role="a"),)
    assert plan.runs("sleeves") == plan.everywhere
    assert plan.runs("yoke") == (ColourRun(chart="waves"),)
    assert plan.roles == ("a", "b")
    assert plan.charts == ("waves",)
    assert plan.says_anything
    assert not ColourPlan().says_anything


def test_what_is_not_a_place_is_refused() -> None:
    with pytest.raises(ValidationError, match="pocket"):
        ColourPlan.model_validate({"pocket": "a"})
