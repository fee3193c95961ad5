import unicodedata
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units import UnreadableQuantity, read_number, round_half_up, write_fraction

VULGAR = [chr(c) for c in range(0x110000) if "VULGAR FRACTION" in unicodedata.name(chr(c), "")]

READ = {
    "14": Fraction(14),
    "007": Fraction(7),
    "14.5": Fraction(29, 2),
    "14,5": Fraction(29, 2),
    ".5": Fraction(1, 2),
    "0,125": Fraction(1, 8),
    "1.200": Fraction(6, 5),
    "1234,567": Fraction(1234567, 1000),
    "1 200": Fraction(1200),
    "1\u202f200": Fraction(1200),
    "1 200,5": Fraction(2401, 2),
    "1,200": Fraction(1200),
    "1,200.5": Fraction(2401, 2),
    "1,234,567": Fraction(1234567),
    "5½": Fraction(11, 2),
    "5 ½": Fraction(11, 2),
    "1 200 1/2": Fraction(2401, 2),
    "3 1/2": Fraction(7, 2),
    "3\u00a01/2": Fraction(7, 2),
    "3-1/2": Fraction(7, 2),
    "3–½": Fraction(7, 2),
    "3 1⁄2": Fraction(7, 2),
    "1/2": Fraction(1, 2),
    "30/2": Fraction(15),
    "51/2": Fraction(51, 2),
    "⅟8": Fraction(1, 8),
    "-3": Fraction(-3),
    "−3½": Fraction(-7, 2),
    "+4": Fraction(4),
    "  12 ": Fraction(12),
}

REFUSED = [
    "", " ", "-", "--3", "- 3", "3-", "nan", "inf", "-inf", "1e5", "0x10", "½½", "3 4", "1 2000", "12 34",
    "1..2", "1.2.3", "1,200,5", "1.200,50", "1,2 1/2", "3.5 1/2", "1/2/3", "/2", "1/", "1/-2", "5 -½",
    "1_000", "\u0663", "²", "14 in", "9" * 401,
]  # fmt: skip


@pytest.mark.parametrize(("text", "value"), READ.items())
def test_reads(text: str, value: Fraction) -> None:
    assert read_number(text) == value


@pytest.mark.parametrize("text", REFUSED)
def test_refuses(text: str) -> None:
    with pytest.raises(UnreadableQuantity, match="wanted a number such as 14"):
        read_number(text)


@pytest.mark.parametrize("text", ["1/0", "3 1/0", "⅟0"])
def test_refuses_to_divide_by_zero(text: str) -> None:
    with pytest.raises(UnreadableQuantity, match="divided by 0"):
        read_number(text)


@pytest.mark.parametrize("text", ["3 5/4", "3 4/4", "1 200/3"])
def test_refuses_a_mixed_number_whose_fraction_is_not_below_one(text: str) -> None:
    with pytest.raises(UnreadableQuantity, match="must be below 1"):
        read_number(text)


@pytest.mark.parametrize("character", VULGAR)
def test_every_vulgar_fraction_has_the_value_that_unicode_states(character: str) -> None:
    assert float(read_number(character)) == pytest.approx(unicodedata.numeric(character), rel=1e-6)
    assert read_number(f"2 {character}") == 2 + read_number(character)


def test_unicode_has_nineteen_vulgar_fractions() -> None:
    assert len(VULGAR) == 19


@given(st.fractions())
def test_reads_what_a_fraction_prints(value: Fraction) -> None:
    assert read_number(str(value)) == value


@given(st.decimals(allow_nan=False, allow_infinity=False, places=4))
def test_reads_point_and_long_decimal_comma_alike(value: object) -> None:
    text = f"{value:f}"
    assert read_number(text) == read_number(text.replace(".", ",")) == Fraction(text)


@given(st.integers(min_value=0))
def test_thousands_marks_change_nothing(value: int) -> None:
    assert read_number(f"{value:,}") == read_number(f"{value:,}".replace(",", " ")) == value


@given(st.fractions(min_value=-10_000, max_value=10_000), st.integers(1, 64))
def test_writing_rounds_to_the_nearest_step_and_is_read_again(value: Fraction, denominator: int) -> None:
    again = read_number(write_fraction(value, denominator))
    assert abs(again - value) <= Fraction(1, 2 * denominator)
    assert (again * denominator).denominator == 1


@pytest.mark.parametrize(
    ("value", "denominator", "text"),
    [
        (Fraction(11, 2), 8, "5½"),
        (3.125, 8, "3⅛"),
        (3.0625, 8, "3⅛"),
        (-3.0625, 8, "−3⅛"),
        (Fraction(15, 16), 8, "1"),
        (Fraction(3, 16), 16, "3/16"),
        (Fraction(35, 16), 16, "2 3/16"),
        (Fraction(1, 3), 3, "⅓"),
        (-0.5, 8, "−½"),
        (-0.01, 8, "0"),
        (0, 8, "0"),
    ],
)
def test_writes(value: Fraction | float, denominator: int, text: str) -> None:
    assert write_fraction(value, denominator) == text


def test_refuses_a_denominator_below_one() -> None:
    with pytest.raises(ValueError, match="at least 1"):
        write_fraction(1, 0)


@given(st.fractions())
def test_half_up_is_nearest_and_symmetric(value: Fraction) -> None:
    assert abs(round_half_up(value) - value) <= Fraction(1, 2)
    assert round_half_up(-value) == -round_half_up(value)


@given(st.integers())
def test_a_half_goes_away_from_zero(whole: int) -> None:
    half = Fraction(2 * whole + 1, 2)
    assert abs(round_half_up(half)) > abs(half)
