from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units import (
    GaugeCount,
    Reader,
    UnreadableQuantity,
    WindowCount,
    read_gauge,
    read_window_count,
    write_gauge,
)

PER_4_IN = 10 / 10.16

GAUGES = {
    "28 sts / 4 in": (28 * PER_4_IN, None),
    "28sts/4in": (28 * PER_4_IN, None),
    "22 st x 30 rows = 10 cm": (22.0, 30.0),
    "22 st × 30 rows = 10 cm.": (22.0, 30.0),
    "22 sts and 30 rows over 10cm": (22.0, 30.0),
    "22 stitches, 30 rows to 10 cm square": (22.0, 30.0),
    "22 sts in 10 cm": (22.0, None),
    "22 sts 30 rows = 10 x 10 cm": (22.0, 30.0),
    "22 sts × 30 rows = 10 cm × 12 cm": (22.0, 25.0),
    '22 sts x 30 rows = 4" x 4"': (22 * PER_4_IN, 30 * PER_4_IN),
    "5.5 st/in": (5.5 / 0.254, None),
    "5½ sts to the inch": (5.5 / 0.254, None),
    "5 sts and 7 rows per inch": (5 / 0.254, 7 / 0.254),
    "11 sts = 2 in": (5.5 / 0.254, None),
    "11 sts in 5 cm": (22.0, None),
    '20 sts, 28 rounds to 4" (10 cm)': (20.0, 28.0),
    "20 sts, 28 rounds to 10 cm (4 in)": (20.0, 28.0),
    "20 sts x 28 rows = 10cm/4in": (20.0, 28.0),
    "20 sts x 28 rows = 4 in / 10 cm": (20.0, 28.0),
    "20 sts = 4 in or 10 cm, 28 rows = 10 cm": (20.0, 28.0),
    "50 st = 11 in, 25 rows = 3 in": (50 / 2.794, 25 / 0.762),
    "30 rows / 10 cm; 22 sts / 10 cm": (22.0, 30.0),
    "20 sts = 10 cm, 20 ridges = 10 cm": (20.0, 40.0),
}


@pytest.mark.parametrize(("text", "gauge"), GAUGES.items())
def test_reads(text: str, gauge: tuple[float, float | None]) -> None:
    read, (stitches, rows) = read_gauge(text), gauge
    assert read.stitches_per_10cm == pytest.approx(stitches, rel=1e-12)
    assert read.rows_per_10cm == (rows if rows is None else pytest.approx(rows, rel=1e-12))


BAD_GAUGES = {
    "": "wanted a gauge with its window",
    "22": 'say "sts" or "rows" after 22',
    "22 sts": "over what width",
    "22 sts 10 cm": "over what width",
    "22 = 10 cm": 'say "sts" or "rows" after 22',
    "30 rows = 10 cm": "the stitches are missing",
    "22 sts = 10": "the window needs a unit",
    "22 sts = 10 x 10": "the window needs a unit",
    "22 sts = 4 inchs": 'did you mean "in"',
    "22 sts = 10 zz": "the window needs a unit",
    "22 sts = 50 g": '"g" is a unit of mass',
    "0 sts = 10 cm": "above zero",
    "22 sts = 0 cm": "above zero",
    "-22 sts = 10 cm": "above zero",
    "1/0 sts = 10 cm": "divided by 0",
    "22 sts x 24 sts = 10 cm": "told twice",
    "22 sts = 4 in (12 cm)": "not the same field",
    "22 sts = 4 in (10 cm": "a bracket is not closed",
    "22 sts = 10 cm in stocking stitch": 'not "in stocking stitch"',
    "sts = 10 cm": 'a number should stand before "sts"',
}


@pytest.mark.parametrize(("text", "message"), BAD_GAUGES.items())
def test_refuses_and_says_why(text: str, message: str) -> None:
    with pytest.raises(UnreadableQuantity, match=message):
        read_gauge(text)


TENTHS = st.integers(10, 999).map(lambda tenths: tenths / 10)


@given(TENTHS, st.none() | TENTHS)
def test_what_is_written_for_a_metric_reader_reads_back(stitches: float, rows: float | None) -> None:
    assert read_gauge(write_gauge(stitches, rows, Reader())) == GaugeCount(stitches, rows)


@given(st.text(alphabet='0123456789 st/rows=xcmin"(),.½', max_size=40))
def test_any_text_is_read_or_refused_but_never_breaks(text: str) -> None:
    with suppress(UnreadableQuantity):
        assert read_gauge(text).stitches_per_10cm > 0


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("22 sts x 30 rows = 10 cm", WindowCount(22, 30, 10, 10)),
        ("11 sts / 2 in", WindowCount(11 / 0.508, None, 5.08, None)),
        ("15 rows = 5 cm", WindowCount(None, 30, None, 5)),
        ("15 ridges to 10 cm", WindowCount(None, 30, None, 10)),
        ("5.5 st/in", WindowCount(5.5 / 0.254, None, None, None)),
        ("50 st = 11 in, 25 rows = 3 in", WindowCount(50 / 2.794, 25 / 0.762, 27.94, 7.62)),
    ],
)
def test_a_count_keeps_its_window_and_rows_may_stand_alone(text: str, count: WindowCount) -> None:
    read = read_window_count(text)
    for name in ("stitches_per_10cm", "rows_per_10cm", "across_cm", "along_cm"):
        assert getattr(read, name) == pytest.approx(getattr(count, name))


@pytest.mark.parametrize("text", ["22 sts x 0 rows = 10 cm", "0 rows = 10 cm", "22 sts = 0 cm", "10 cm", ""])
def test_a_count_of_nothing_is_refused(text: str) -> None:
    with pytest.raises(UnreadableQuantity):
        read_window_count(text)
