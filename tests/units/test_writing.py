import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units import (
    Money,
    Reader,
    read_length_cm,
    read_mass_g,
    read_minutes,
    read_yarn_length_m,
    write_gauge,
    write_hours,
    write_length,
    write_mass,
    write_money,
    write_share,
    write_yarn_length,
)

METRIC, IMPERIAL = Reader(), Reader("imperial")
READERS = st.sampled_from([METRIC, IMPERIAL])


@pytest.mark.parametrize(
    ("length_cm", "reader", "digits", "text"),
    [
        (36, METRIC, 1, "36 cm"),
        (36.54, METRIC, 1, "36.5 cm"),
        (36.5, METRIC, 0, "37 cm"),
        (100, METRIC, 0, "100 cm"),
        (1234.5, METRIC, 1, "1,234.5 cm"),
        (-4, METRIC, 1, "−4 cm"),
        (0, METRIC, 1, "0 cm"),
        (0.01, METRIC, 1, "under 0.1 cm"),
        (0.2, METRIC, 0, "under 1 cm"),
        (-0.01, METRIC, 1, "0 cm"),
        (36, IMPERIAL, 1, "14¼ in"),
        (36, IMPERIAL, 2, "14⅛ in"),
        (36, IMPERIAL, 0, "14 in"),
        (-5.08, IMPERIAL, 1, "−2 in"),
        (0.3, IMPERIAL, 1, "⅛ in"),
        (0.05, IMPERIAL, 1, "under 1/16 in"),
    ],
)
def test_writes_a_length(length_cm: float, reader: Reader, digits: int, text: str) -> None:
    assert write_length(length_cm, reader, digits) == text


@pytest.mark.parametrize(
    ("length_m", "reader", "text"),
    [
        (430, METRIC, "430 m"),
        (430, IMPERIAL, "470 yd"),
        (1234.5, METRIC, "1,235 m"),
        (3.46, METRIC, "3.5 m"),
        (9.97, METRIC, "10 m"),
        (0.02, METRIC, "under 0.1 m"),
        (0, METRIC, "0 m"),
    ],
)
def test_writes_a_yarn_length(length_m: float, reader: Reader, text: str) -> None:
    assert write_yarn_length(length_m, reader) == text


@pytest.mark.parametrize(
    ("mass_g", "reader", "text"),
    [
        (50, METRIC, "50 g"),
        (50, IMPERIAL, "1¾ oz"),
        (100, IMPERIAL, "3½ oz"),
        (2.34, METRIC, "2.3 g"),
        (1, IMPERIAL, "1/16 oz"),
    ],
)
def test_writes_a_mass(mass_g: float, reader: Reader, text: str) -> None:
    assert write_mass(mass_g, reader) == text


@pytest.mark.parametrize(
    ("stitches", "rows", "reader", "text"),
    [
        (22, 30, METRIC, "22 sts × 30 rows to 10 cm"),
        (22, None, METRIC, "22 sts to 10 cm"),
        (19.685, 30, IMPERIAL, "20 sts × 30.5 rows to 4 in"),
    ],
)
def test_writes_a_gauge(stitches: float, rows: float | None, reader: Reader, text: str) -> None:
    assert write_gauge(stitches, rows, reader) == text


@pytest.mark.parametrize(
    ("hours", "text"),
    [
        (41.2, "41 h"),
        (2.5, "2 h 30 min"),
        (9, "9 h"),
        (9.999, "10 h"),
        (0.75, "45 min"),
        (0.999, "1 h"),
        (0, "0 min"),
        (0.001, "under 1 min"),
        (1234, "1,234 h"),
    ],
)
def test_writes_hours(hours: float, text: str) -> None:
    assert write_hours(hours) == text


@pytest.mark.parametrize(
    ("share", "text"),
    [
        (0.953, "95 %"),
        (0.5, "50 %"),
        (0, "0 %"),
        (1, "100 %"),
        (0.9999, "over 99 %"),
        (0.995, "over 99 %"),
        (0.994, "99 %"),
        (1e-9, "under 1 %"),
        (0.0049, "under 1 %"),
        (0.005, "1 %"),
    ],
)
def test_writes_a_share(share: float, text: str) -> None:
    assert write_share(share) == text


@given(st.floats(0, 1, exclude_min=True, exclude_max=True))
def test_a_share_never_claims_certainty(share: float) -> None:
    assert write_share(share) not in ("0 %", "100 %")


@pytest.mark.parametrize("share", [-0.01, 1.01, float("nan")])
def test_what_is_no_share_is_not_written(share: float) -> None:
    with pytest.raises(ValueError, match="between 0 and 1"):
        write_share(share)


@pytest.mark.parametrize(
    ("money", "text"),
    [
        (Money(123450, "NZD"), "NZD 1,234.50"),
        (Money(5, "EUR"), "EUR 0.05"),
        (Money(1234, "JPY"), "JPY 1,234"),
        (Money(-1234567, "KWD"), "KWD −1,234.567"),
    ],
)
def test_writes_money(money: Money, text: str) -> None:
    assert write_money(money) == text


@pytest.mark.parametrize("bad", [float("nan"), float("inf")])
def test_what_is_not_finite_is_not_written(bad: float) -> None:
    with pytest.raises(ValueError, match="length_cm must be finite"):
        write_length(bad, METRIC)
    with pytest.raises(ValueError, match="hours must be finite"):
        write_hours(bad)


def test_hours_are_not_negative() -> None:
    with pytest.raises(ValueError, match="must not be negative"):
        write_hours(-1)


@given(st.floats(1, 1e5), READERS)
def test_a_written_length_reads_back_within_its_rounding(length_cm: float, reader: Reader) -> None:
    assert read_length_cm(write_length(length_cm, reader)) == pytest.approx(length_cm, abs=0.3176)


@given(st.floats(1, 1e5), READERS)
def test_a_written_yarn_length_reads_back_within_its_rounding(length_m: float, reader: Reader) -> None:
    assert read_yarn_length_m(write_yarn_length(length_m, reader)) == pytest.approx(length_m, abs=0.5001)


@given(st.floats(5, 1e5), READERS)
def test_a_written_mass_reads_back_within_its_rounding(mass_g: float, reader: Reader) -> None:
    assert read_mass_g(write_mass(mass_g, reader)) == pytest.approx(mass_g, abs=3.5437)


@given(st.floats(0.01, 1e4))
def test_written_hours_read_back_within_their_rounding(hours: float) -> None:
    assert read_minutes(write_hours(hours)) == pytest.approx(hours * 60, abs=30.001)
