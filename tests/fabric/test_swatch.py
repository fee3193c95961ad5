"""Gauge and swatch: reading, what washing did, mass per area."""

import pytest

from loopwright.fabric import Gauge, Swatch, gauge_sd


def swatch(**facts: object) -> Swatch:
    return Swatch.model_validate({"key": "s", "yarns": ["dk"], **facts})


WASHED = swatch(before="24 sts x 33 rows = 10 cm", after="20 sts x 30 rows = 10 cm")


def test_wash_factors_are_growth() -> None:
    """Fewer stitches to 10 cm mean wider stitches: 24/20 and 33/30."""
    assert WASHED.wash_factors == pytest.approx((1.2, 1.1))


def test_a_width_on_the_needles_times_the_factor_is_the_washed_width() -> None:
    assert WASHED.before is not None
    assert WASHED.after is not None
    assert WASHED.wash_factors is not None
    assert WASHED.before.width_cm(100) * WASHED.wash_factors[0] == pytest.approx(WASHED.after.width_cm(100))


def test_without_rows_there_is_a_factor_of_width_alone() -> None:
    assert swatch(before="22 sts = 10 cm", after="20 sts x 30 rows = 10 cm").wash_factors == (1.1, None)


@pytest.mark.parametrize("known", [{"before": "22 sts = 10 cm"}, {"after": "22 sts = 10 cm"}])
def test_one_gauge_alone_says_nothing_about_washing(known: dict[str, str]) -> None:
    assert swatch(**known).wash_factors is None


def test_planned_is_with_the_washed_gauge() -> None:
    assert WASHED.gauge == WASHED.after
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


def test_the_mean_of_four_counts_is_half_as_doubtful() -> None:
    assert gauge_sd(4) == gauge_sd(1) / 2


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
