"""Gauge and swatch: reading, what washing did, mass per area."""

import math

import pytest

from loopwright.fabric import COUNT_RELATIVE_SD, Gauge, Swatch


def swatch(**facts: object) -> Swatch:
    return Swatch.model_validate({"key": "s", "yarns": ["dk"], **facts})


WASHED = swatch(before="24 sts x 33 rows = 10 cm", after="20 sts x 30 rows = 10 cm")


def test_wash_factors_are_growth() -> None:
    """Fewer stitches to 10 cm mean wider stitches: 24/20 and 33/30."""
    assert WASHED.wash_factors == pytest.approx((1.2, 1.1))


def test_a_width_on_the_needles_times_the_factor_is_the_washed_width() -> None:
    before, after = Gauge(stitches_per_10cm=24), Gauge(stitches_per_10cm=20)
    assert WASHED.wash_factors is not None
    assert before.width_cm(100) * WASHED.wash_factors[0] == pytest.approx(after.width_cm(100))


def test_without_rows_there_is_a_factor_of_width_alone() -> None:
    assert swatch(before="22 sts = 10 cm", after="20 sts x 30 rows = 10 cm").wash_factors == (1.1, None)


@pytest.mark.parametrize("known", [{"before": "22 sts = 10 cm"}, {"after": "22 sts = 10 cm"}])
def test_one_gauge_alone_says_nothing_about_washing(known: dict[str, str]) -> None:
    assert swatch(**known).wash_factors is None


def test_planned_is_with_the_washed_gauge() -> None:
    assert WASHED.gauge == Gauge(stitches_per_10cm=20, rows_per_10cm=30)
    assert not swatch(before="22 sts = 10 cm").is_washed


def test_a_swatch_has_a_gauge() -> None:
    with pytest.raises(ValueError, match="without a gauge"):
        swatch(mass="9 g")


def test_mass_per_area() -> None:
    """11.4 g of 15 × 14 cm: 11.4 / 0.021 m²."""
    weighed = swatch(after="18 sts = 10 cm", mass="11.4 g", width="15 cm", height="14 cm")
    assert weighed.mass_per_area_g_m2 == pytest.approx(11.4 / 0.021)


@pytest.mark.parametrize("missing", ["mass", "width", "height"])
def test_mass_per_area_needs_all_three(missing: str) -> None:
    facts = {"mass": "11.4 g", "width": "15 cm", "height": "14 cm"}
    del facts[missing]
    assert swatch(after="18 sts = 10 cm", **facts).mass_per_area_g_m2 is None


def test_a_mean_of_four_places_is_half_as_doubtful() -> None:
    one, four = swatch(after="22 sts = 10 cm"), swatch(after="22 sts = 10 cm", places=4)
    assert one.stitches.relative_se == pytest.approx(COUNT_RELATIVE_SD)
    assert four.stitches.relative_se == pytest.approx(COUNT_RELATIVE_SD / 2)


def test_several_counts_become_their_mean() -> None:
    """Stitches of three places, rows of two: each has its own mean."""
    several = swatch(after=["22 sts x 30 rows = 10 cm", "21 sts = 10 cm", "23 sts x 31 rows = 10 cm"])
    assert several.gauge == Gauge(stitches_per_10cm=22, rows_per_10cm=30.5)
    assert several.rows is not None
    assert (several.stitches.counts, several.rows.counts) == (3, 2)


def test_a_short_window_weighs_less() -> None:
    """22 over 10 cm and 12 over 5 cm, that is 24 with half the weight: (22 + 12) / 1.5."""
    assert swatch(after=["22 sts = 10 cm", "12 sts = 5 cm"]).gauge.stitches_per_10cm == pytest.approx(34 / 1.5)


def test_a_count_added_to_a_mean_of_three_places_weighs_a_third_of_it() -> None:
    added = swatch(after=["22 sts = 10 cm", "24 sts = 10 cm"], places=3)
    assert added.gauge.stitches_per_10cm == pytest.approx((3 * 22 + 24) / 4)
    assert added.places_counted == 4


def test_four_inches_and_ten_centimetres_are_one_window() -> None:
    """The trade takes them for one field: gauge_and_care.md, cross-read."""
    assert swatch(after="22 sts = 4 in").stitches.weight == swatch(after="22 sts = 10 cm").stitches.weight


@pytest.mark.parametrize(
    "written", ["22 sts x 30 rows = 10 cm", ["11 sts / 2 in", "22 sts = 10 cm"], ["22 sts = 10 cm", "15 rows = 5 cm"]]
)
def test_counts_are_written_as_they_were(written: str | list[str]) -> None:
    one = swatch(after=written)
    assert one.model_dump(mode="json")["after"] == written
    assert Swatch.model_validate(one.model_dump(mode="json")) == one


@pytest.mark.parametrize(
    ("after", "message"),
    [
        ("22 sts x 0 rows = 10 cm", "above zero"),
        ("0 sts x 30 rows = 10 cm", "above zero"),
        ("30 rows = 10 cm", "rows alone"),
        (["22 sts = 10 cm", "about right"], "about right"),
        (["22 sts = 10 cm", 22], "a count such as"),
        (22, "several in a list"),
        (["22 sts = 10 cm"] * 51, "at most 50"),
    ],
)
def test_nonsense_gets_a_clear_answer(after: object, message: str) -> None:
    with pytest.raises(ValueError, match=message):
        swatch(after=after)


def test_inches_and_centimetres_give_one_gauge() -> None:
    """28 stitches to 4 in are 27.559 to 10 cm."""
    gauge = swatch(after="28 sts x 36 rows = 4 in").gauge
    assert gauge.stitches_per_10cm == pytest.approx(28 / 1.016)
    assert gauge.rows_per_10cm == pytest.approx(36 / 1.016)


def test_a_count_over_one_inch_read_as_ten_centimetres_is_refused() -> None:
    with pytest.raises(ValueError, match="from 3 to 150"):
        swatch(after="2.5 sts = 10 cm")


def test_width_and_stitches_are_inverse() -> None:
    gauge = Gauge(stitches_per_10cm=21.3)
    assert gauge.width_cm(gauge.stitches_in(97.4)) == pytest.approx(97.4)


def test_a_written_gauge_reads_back() -> None:
    assert Swatch.model_validate(WASHED.model_dump(mode="json")) == WASHED


@pytest.mark.parametrize(
    ("american", "british"),
    [("stockinette", "stocking stitch"), ("rib and seed stitch", "rib and moss stitch")],
)
def test_american_names_are_understood(american: str, british: str) -> None:
    assert swatch(after="20 sts = 10 cm", fabric=american).fabric == british


def test_an_unknown_fabric_has_a_hint() -> None:
    with pytest.raises(ValueError, match=r"did you mean 'garter stitch'\?"):
        swatch(after="20 sts = 10 cm", fabric="garter")


def test_rows_that_were_not_counted_are_more_doubtful_than_counted_ones() -> None:
    """Taken from the stitches: their error twice, 4 %, and the ratio's 5 % (judged), against 2 % and 2 %."""
    counted, guessed = swatch(after="22 sts x 30 rows = 10 cm"), swatch(after="22 sts = 10 cm")
    assert counted.density_relative_sd == pytest.approx(math.hypot(0.02, 0.02))
    assert guessed.density_relative_sd == pytest.approx(math.hypot(0.04, 0.05))
