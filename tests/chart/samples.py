"""Charts for tests: from letters, and any small chart."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn

from loopwright.chart import SYMBOLS, Chart, ChartRole, RepeatBox
from loopwright.chart.symbols import BY_KEY

__all__ = ["any_charts", "lettered", "stitched"]


def lettered(*rows: str, in_the_round: bool = False, repeat: RepeatBox | None = None) -> Chart:
    """A chart of knit stitches: rows as they are drawn, the last one first; roles in the order of the alphabet."""
    names = sorted(set("".join(rows)))
    cells = np.array([[names.index(letter) for letter in row] for row in reversed(rows)], dtype=np.uint8)
    return Chart(
        cells, np.zeros_like(cells), tuple(ChartRole(name.lower()) for name in names), in_the_round, repeat=repeat
    )


def stitched(*rows: Sequence[str]) -> Chart:
    """A chart of one colour: each row a list of stitches by key, the last row first."""
    stitches = np.array([[BY_KEY[key] for key in row] for row in reversed(rows)], dtype=np.uint8)
    return Chart(np.zeros_like(stitches), stitches, (ChartRole("main"),))


@st.composite
def any_charts(draw: DrawFn, most_side: int = 9, *, stitches: bool = True, most_roles: int = 4) -> Chart:
    """Any small chart; its stitches fill one box each, and may be boxes without a stitch."""
    rows, columns = draw(st.integers(1, most_side)), draw(st.integers(1, most_side))
    number = draw(st.integers(1, most_roles))
    shades = st.none() | st.from_regex(r"#[0-9a-f]{6}", fullmatch=True)
    one_box = [at for at, symbol in enumerate(SYMBOLS) if symbol.boxes == 1] if stitches else [0]
    size = rows * columns
    cells = draw(st.lists(st.integers(0, number - 1), min_size=size, max_size=size))
    marks = draw(st.lists(st.sampled_from(one_box), min_size=size, max_size=size))
    column, row = draw(st.integers(0, columns - 1)), draw(st.integers(0, rows - 1))
    box = RepeatBox(column, row, draw(st.integers(1, columns - column)), draw(st.integers(1, rows - row)))
    return Chart(
        np.array(cells, dtype=np.uint8).reshape(rows, columns),
        np.array(marks, dtype=np.uint8).reshape(rows, columns),
        tuple(ChartRole(f"role-{at}", draw(shades)) for at in range(number)),
        draw(st.booleans()),
        draw(st.booleans()),
        draw(st.none() | st.just(box)),
    )
