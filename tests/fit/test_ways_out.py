"""Both ways out of a gauge that is not the pattern's, and what rows do."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.fabric import Gauge, Swatch
from loopwright.fit.sizes import size_between, size_named
from loopwright.fit.ways_out import Repeat, WaysOut, count_for_repeat, read_repeat, stitches_for_width, ways_out
from loopwright.pattern import Construction, PatternFacts
from loopwright.units import BadInput


def pattern(**facts: object) -> PatternFacts:
    base = {
        "key": "p",
        "name": "P",
        "construction": "raglan",
        "gauge": "20 sts x 28 rows = 10 cm",
        "sizes": "S (M, L, XL)",
        "finished": {"bust_girth": "90 (100, 110, 120) cm", "armhole_depth": "18 (20, 22, 24) cm"},
    }
    return PatternFacts.model_validate(base | facts)


def swatch(gauge: str, places: int = 20) -> Swatch:
    return Swatch.model_validate({"key": "s", "yarns": ["dk"], "after": gauge, "places": places})


def ways(gauge: str, size: str = "M", repeat: Repeat | None = None, **facts: object) -> WaysOut:
    made = pattern(**facts)
    return ways_out(made, size_named(made, size), swatch(gauge), repeat)


def test_a_finer_gauge_wants_a_larger_size() -> None:
    """22 for 20: M comes out 100 × 20/22 = 90.9 cm, L 100.0 cm."""
    found = ways("22 sts x 28 rows = 10 cm")
    assert found.size is not None
    assert found.size.size == "L"
    assert found.as_it_is_cm == pytest.approx(90.909, abs=1e-3)
    assert found.size.off_cm == pytest.approx(0, abs=1e-9)


def test_of_two_sizes_as_near_the_larger_is_taken() -> None:
    made = pattern()
    found = ways_out(made, size_named(made, "M"), swatch("20 sts = 10 cm"), wanted_bust_cm=105)
    assert found.size is not None
    assert found.size.size == "L"
    assert found.size.off_cm == pytest.approx(5)


def test_a_size_whose_bust_is_not_stated_is_passed_over() -> None:
    found = ways("22 sts = 10 cm", finished={"bust_girth": "90 (100, -, 120) cm"})
    assert found.size is not None
    assert found.size.size in {"M", "XL"}


def test_the_counts_of_every_width_are_those_of_the_gauge() -> None:
    found = ways("22 sts x 28 rows = 10 cm")
    (bust,) = found.counts
    assert (bust.point, bust.pattern_stitches, bust.own_stitches, bust.more) == ("bust_girth", 200, 220, 20)


def test_counts_fit_the_repeat() -> None:
    """100 cm at 22 are 220; the nearest 12n + 1 is 217, which comes to 98.6 cm."""
    (bust,) = ways("22 sts = 10 cm", repeat=Repeat(multiple=12, plus=1)).counts
    assert bust.own_stitches == 217
    assert bust.comes_to_cm == pytest.approx(217 / 2.2)


def test_between_two_sizes_the_wanted_girth_is_the_chosen_one() -> None:
    made = pattern()
    found = ways_out(made, size_between(made, 104), swatch("22 sts = 10 cm"))
    assert found.wanted_bust_cm == pytest.approx(104)


@pytest.mark.parametrize(
    ("construction", "part", "length_cm"),
    [("round yoke", "round yoke", 20.0), ("raglan", "raglan", 20.0), ("set-in sleeve", "sleeve cap", 20 * 2 / 3)],
)
def test_where_rows_decide_the_shape_it_is_told_in_cm(construction: str, part: str, length_cm: float) -> None:
    """32 rows for 28: what is worked by 28 comes out 28/32 as long."""
    rows = ways("20 sts x 32 rows = 10 cm", construction=construction).rows
    assert rows is not None
    assert rows.part == part
    assert rows.length_cm == pytest.approx(length_cm)
    assert rows.off_cm == pytest.approx(length_cm * (28 / 32 - 1))


def test_fewer_rows_make_it_longer() -> None:
    rows = ways("20 sts x 25 rows = 10 cm").rows
    assert rows is not None
    assert rows.per_10cm == pytest.approx(10 * (28 / 25 - 1))


def test_a_drop_shoulder_is_knitted_to_measure() -> None:
    rows = ways("20 sts x 32 rows = 10 cm", construction="drop shoulder").rows
    assert rows is not None
    assert (rows.part, rows.off_cm) == ("", None)


def test_without_an_armhole_depth_it_is_told_for_each_10_cm() -> None:
    rows = ways("20 sts x 32 rows = 10 cm", finished={"bust_girth": "90 (100, 110, 120) cm"}).rows
    assert rows is not None
    assert (rows.part, rows.off_cm) == ("raglan", None)
    assert rows.per_10cm == pytest.approx(-1.25)


def test_rows_within_their_doubt_are_no_warning() -> None:
    made = pattern()
    once = ways_out(made, size_named(made, "M"), swatch("20 sts x 29 rows = 10 cm", places=1))
    often = ways_out(made, size_named(made, "M"), swatch("20 sts x 29 rows = 10 cm", places=40))
    assert (once.rows_differ, once.rows) == (False, None)
    assert often.rows is not None


def test_rows_that_nobody_counted_are_not_judged() -> None:
    assert ways("22 sts = 10 cm").rows_off is None
    made = pattern(gauge="20 sts = 10 cm")
    assert ways_out(made, size_named(made, "M"), swatch("22 sts x 30 rows = 10 cm")).rows_off is None


def test_a_girth_of_her_own_is_what_a_size_is_sought_for() -> None:
    """109.1 = 120 × 20/22 is nearest to 107; the counts stay those of M."""
    made = pattern()
    found = ways_out(made, size_named(made, "M"), swatch("22 sts = 10 cm"), wanted_bust_cm=107)
    assert found.size is not None
    assert (found.size.size, found.of_size, found.counts[0].width_cm) == ("XL", "M", 100)


def test_a_pattern_without_a_bust_has_no_other_size() -> None:
    found = ways("22 sts = 10 cm", construction=Construction.RECTANGLE.value, finished={"width": "40 (50, 60, 70) cm"})
    assert found.size is None
    assert [way.own_stitches for way in found.counts] == [110]


@given(st.floats(1, 900), st.integers(1, 40), st.integers(-20, 20))
def test_a_count_fits_its_repeat_and_is_the_nearest(stitches: float, multiple: int, plus: int) -> None:
    count = count_for_repeat(stitches, Repeat(multiple=multiple, plus=plus))
    assert count >= 1
    assert (count - plus) % multiple == 0
    least = multiple * max(1, math.ceil((1 - plus) / multiple)) + plus
    assert abs(count - stitches) <= max(multiple / 2, least - stitches) + 1e-9


@given(st.integers(1, 500), st.integers(-500, 500))
def test_a_repeat_reads_back(multiple: int, plus: int) -> None:
    repeat = Repeat(multiple=multiple, plus=plus)
    assert read_repeat(str(repeat)) == repeat


@pytest.mark.parametrize(
    ("text", "repeat"), [("4", (4, 0)), ("4n", (4, 0)), ("4n+2", (4, 2)), (" 12 n - 1 ", (12, -1))]
)
def test_repeats_as_people_write_them(text: str, repeat: tuple[int, int]) -> None:
    read = read_repeat(text)
    assert (read.multiple, read.plus) == repeat


@pytest.mark.parametrize("text", ["", "n", "0n", "4n + ", "4x + 2", "1000n", "4n + 501"])
def test_what_is_no_repeat_is_refused(text: str) -> None:
    with pytest.raises(BadInput, match="such as 4n"):
        read_repeat(text)


@given(st.floats(5, 200), st.floats(8, 60))
def test_stitches_for_a_width_are_off_by_half_a_stitch_at_most(width_cm: float, per_10cm: float) -> None:
    gauge = Gauge(stitches_per_10cm=per_10cm)
    assert abs(gauge.stitches_in(width_cm) - stitches_for_width(width_cm, gauge)) <= 0.5 + 1e-9
