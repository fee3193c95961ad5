"""The table of symbols: every row whole, and consistent in itself."""

import pytest

from loopwright.chart import SYMBOLS, symbol
from loopwright.chart.symbols import BOXES, BY_KEY, BY_MARK, KNIT, MADE, TAKEN
from loopwright.data import table
from loopwright.units import BadInput


def test_knit_comes_first() -> None:
    assert SYMBOLS[KNIT].key == "knit"
    assert KNIT == 0


def test_marks_and_keys_stand_once() -> None:
    assert len(BY_KEY) == len(BY_MARK) == len(SYMBOLS)
    assert all(len(one.mark) == 1 and one.mark.isascii() and one.mark not in " \"'\\" for one in SYMBOLS)


def test_every_row_says_where_it_is_from() -> None:
    known = {"read", "cross-read", "memory"}
    for row in table("chart/symbols.csv"):
        assert row["source"]
        assert row["source_shape"]
        assert {row["status"], row["status_shape"]} <= known


@pytest.mark.parametrize(
    ("key", "takes", "makes"),
    [("knit", 1, 1), ("yarn-over", 0, 1), ("k2tog", 2, 1), ("cdd", 3, 1), ("kfb", 1, 2), ("no-stitch", 0, 0)],
)
def test_what_a_stitch_takes_and_makes(key: str, takes: int, makes: int) -> None:
    """Arithmetic of the stitches, from their names: cross-read in abbreviation lists."""
    one = symbol(key)
    assert (one.takes, one.makes) == (takes, makes)


def test_a_crossing_keeps_its_stitches() -> None:
    for at, one in enumerate(SYMBOLS):
        if one.boxes > 1:
            assert one.takes == one.makes == one.boxes
            assert (TAKEN[at], MADE[at], BOXES[at]) == (1, 1, one.boxes)


def test_a_mirror_does_the_same_the_other_way_round() -> None:
    for one in SYMBOLS:
        other = symbol(one.mirror)
        assert (one.takes, one.makes, one.boxes) == (other.takes, other.makes, other.boxes)
    assert symbol("k2tog").mirror == "ssk"
    assert symbol("cross-2-over-1-left").mirror == "cross-2-over-1-right"


def test_an_unknown_stitch_is_named() -> None:
    with pytest.raises(BadInput, match="k9tog"):
        symbol("k9tog")
