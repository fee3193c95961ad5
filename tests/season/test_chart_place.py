"""A chart on a part of a garment, read from its colours and written back: the same rows, whichever words are used."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.chart import Chart, ChartRole
from loopwright.colouring import ColourWork
from loopwright.garment.wanted import ColourPlan
from loopwright.garment.wanted.colours import ColourRun, read_colour_runs, write_colour_runs
from loopwright.season.chart_place import ChartPlace, read_place

PLAIN = np.zeros((3, 4), dtype=np.uint8)
CHART = Chart(PLAIN, PLAIN, (ChartRole("main"),))
ROWS = 120
"""Looked at; more than any of the runs below takes before it goes on or begins again."""

choices = st.builds(ChartPlace, st.just("body"), st.integers(0, 40), st.none() | st.integers(1, 12))
items = st.sampled_from(["main", "main", "main", "chart waves", "chart other", "contrast"])
runs = st.lists(st.tuples(st.integers(1, 9), items), min_size=1, max_size=5)


def rows_of(said: tuple[ColourRun, ...]) -> list[str]:
    """What each row shows, as the room that colours drafts has it."""
    work = ColourWork(ColourPlan(body=said), "main", (("waves", CHART), ("other", CHART)))
    return [f"{row.chart or row.role} {row.chart_row}" for row in work.rows("body", 0, ROWS)]


@given(choices)
def test_what_is_chosen_is_read_back(choice: ChartPlace) -> None:
    said = choice.runs("waves", "main")
    assert read_colour_runs(write_colour_runs(said)) == said
    assert read_place("body", said, "waves", "main") == choice


@given(runs, st.booleans())
def test_what_is_read_has_the_rows_of_what_was_said(parts: list[tuple[int, str]], goes_on: bool) -> None:
    said = read_colour_runs(", ".join(f"{times} {name}" for times, name in parts) + (", main" if goes_on else ""))
    choice = read_place("body", said, "waves", "main")
    if choice is None:
        return
    assert rows_of(choice.runs("waves", "main")) == rows_of(said)


@given(choices)
def test_its_rows_are_those_that_the_words_promise(choice: ChartPlace) -> None:
    """Counted by hand: so many plain rows, the chart's three rows so many times, plain rows."""
    found = rows_of(choice.runs("waves", "main"))
    laid = [row.startswith("waves") for row in found]
    end = ROWS if choice.times is None else min(choice.before + 3 * choice.times, ROWS)
    assert laid == [choice.before <= at < end for at in range(ROWS)]
    assert found[choice.before] == "waves 0"


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("chart waves", (0, None)),
        ("3 chart waves", (0, None)),  # every run has a number: again and again
        ("12 main, chart waves, main", (12, 1)),
        ("12 main, chart waves", (12, None)),
        ("2 main, 3 main, 4 chart waves, 2 main, main", (5, 4)),
    ],
)
def test_words_of_this_form(text: str, read: tuple[int, int | None]) -> None:
    choice = read_place("body", read_colour_runs(text), "waves", "main")
    assert choice is not None
    assert (choice.before, choice.times) == read


@pytest.mark.parametrize(
    "text",
    [
        "main",
        "chart other",
        "4 contrast, chart waves, main",
        "4 main, chart waves, contrast",
        "4 main, 2 chart waves, 3 main",
        "4 main, 2 chart waves",
        "chart waves, 2 main, chart waves, main",
        "9999 main, 9999 main, chart waves, main",
    ],
)
def test_words_that_hold_more_or_other(text: str) -> None:
    """The sixth goes on again and again: 4 rows main, two charts, 4 rows main …; no choice can say so."""
    assert read_place("body", read_colour_runs(text), "waves", "main") is None
