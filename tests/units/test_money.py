"""Half-up values and the threshold example: our own tables of arithmetic (computed, prices invented)."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units import (
    BadInput,
    MixedCurrencies,
    Money,
    UnreadableQuantity,
    currency_decimals,
    read_money,
    write_money,
)

AMOUNTS = st.builds(Money, st.integers(), st.sampled_from(["NZD", "JPY", "KWD", "EUR"]))
MINORS = st.integers(-(10**12), 10**12)


@pytest.mark.parametrize(
    ("value", "half_up"), [("0.125", 13), ("2.675", 268), ("1.005", 101), ("10.345", 1035), ("-0.125", -13)]
)
def test_an_amount_is_rounded_half_up(value: str, half_up: int) -> None:
    assert Money.of(value, "EUR") == Money.of(Decimal(value), "EUR") == Money(half_up, "EUR")


@pytest.mark.parametrize(
    ("gross", "rate", "net"),
    [
        ("11.90", "0.19", "10.00"),
        ("12.50", "0.25", "10.00"),
        ("9.95", "0.20", "8.29"),
        ("6.45", "0.23", "5.24"),
        ("8.10", "0.081", "7.49"),
    ],
)
def test_home_tax_comes_off_half_up(gross: str, rate: str, net: str) -> None:
    assert Money.of(gross, "EUR").times(1 / (1 + Fraction(rate))) == Money.of(net, "EUR")


def test_tax_off_the_sum_differs_from_tax_off_each_ball() -> None:
    ball, off = Money.of("9.95", "GBP"), Fraction(100, 120)
    assert (ball * 7).times(off) == Money.of("58.04", "GBP")
    assert ball.times(off) * 7 == Money.of("58.03", "GBP")


@pytest.mark.parametrize(("rate", "minor"), [("0.86", 13450), ("0.87", 13607)])
def test_a_threshold_flips_on_the_rate_alone(rate: str, minor: int) -> None:
    assert Money.of("156.40", "EUR").converted(Decimal(rate), "GBP") == Money(minor, "GBP")


def test_conversion_minds_the_decimals_of_both_currencies() -> None:
    assert Money.of("10.00", "NZD").converted(Decimal("88.25"), "JPY") == Money(883, "JPY")
    assert Money.of(883, "JPY").converted(Decimal("0.002"), "KWD") == Money(1766, "KWD")


# ISO 4217, from memory.
@pytest.mark.parametrize(
    ("code", "decimals"), [("NZD", 2), ("JPY", 0), ("KRW", 0), ("ISK", 0), ("KWD", 3), ("BHD", 3), ("ZAR", 2)]
)
def test_decimals_of_a_currency(code: str, decimals: int) -> None:
    assert currency_decimals(code) == decimals


@pytest.mark.parametrize("code", ["", "nzd", "NZ", "NZDX", "$", "NZ1", "ÄÖÜ"])
def test_a_code_is_three_capital_letters(code: str) -> None:
    with pytest.raises(BadInput, match="three capital letters"):
        Money(1, code)


@given(MINORS, MINORS, MINORS)
def test_sums_obey_the_laws_of_whole_numbers(a: int, b: int, c: int) -> None:
    one, two, three = Money(a, "NZD"), Money(b, "NZD"), Money(c, "NZD")
    assert (one + two) + three == one + (two + three)
    assert (one + two) - two == one
    assert -one == one * -1
    assert (one < two) == (a < b)
    assert max(one, two).minor == max(a, b)


@pytest.mark.parametrize("operation", ["__add__", "__sub__", "__lt__", "__le__"])
def test_two_currencies_do_not_mix(operation: str) -> None:
    with pytest.raises(MixedCurrencies, match="NZD and EUR do not mix"):
        getattr(Money(1, "NZD"), operation)(Money(1, "EUR"))


def test_equal_numbers_of_two_currencies_are_not_equal() -> None:
    assert Money(1, "NZD") != Money(1, "EUR")


def test_a_float_is_refused_everywhere() -> None:
    price = Money(100, "NZD")
    for attempt in (
        lambda: Money.of(1.5, "NZD"),  # type: ignore[arg-type]
        lambda: Money(1.5, "NZD"),  # type: ignore[arg-type]
        lambda: price * 1.5,  # type: ignore[operator]
        lambda: price.times(1.5),  # type: ignore[arg-type]
        lambda: price + 1.5,  # type: ignore[operator]
    ):
        with pytest.raises(TypeError, match="not float"):
            attempt()


@pytest.mark.parametrize("amount", ["", "abc", "NaN", "Infinity", "1,5"])
def test_an_amount_that_is_no_decimal_is_refused(amount: str) -> None:
    with pytest.raises(BadInput, match=r"wanted an amount such as 12\.50"):
        Money.of(amount, "NZD")


@pytest.mark.parametrize("rate", [Decimal(0), Decimal(-1), Decimal("NaN")])
def test_a_rate_is_above_zero(rate: Decimal) -> None:
    with pytest.raises(BadInput, match="wanted a"):
        Money(1, "NZD").converted(rate, "EUR")


@pytest.mark.parametrize(
    ("text", "money"),
    [
        ("12.50 NZD", Money(1250, "NZD")),
        ("NZD 12.50", Money(1250, "NZD")),
        ("nzd12.5", Money(1250, "NZD")),
        ("12,50 EUR", Money(1250, "EUR")),
        ("1,234.50 NZD", Money(123450, "NZD")),
        ("1 234,50 EUR", Money(123450, "EUR")),
        ("JPY 1,234", Money(1234, "JPY")),
        ("1.234 KWD", Money(1234, "KWD")),
        ("0 NZD", Money(0, "NZD")),
    ],
)
def test_reads(text: str, money: Money) -> None:
    assert read_money(text) == money


BAD_PRICES = {
    "": "which currency",
    "12.50": "which currency",
    "$12.50": "a sign such as . is not enough",
    "12 €": "a sign such as . is not enough",
    "NZD": "wanted an amount with its currency code",
    "NZD 12.505": "NZD has 2 decimals",
    "12.5 JPY": "JPY has 0 decimals",
    "-5 NZD": "cannot be negative",
    "NZD 12 EUR": "wanted an amount",
    "1/0 NZD": "divided by 0",
}


@pytest.mark.parametrize(("text", "message"), BAD_PRICES.items())
def test_refuses_and_says_why(text: str, message: str) -> None:
    with pytest.raises(UnreadableQuantity, match=message):
        read_money(text)


@given(AMOUNTS)
def test_what_is_written_reads_back(money: Money) -> None:
    assert read_money(write_money(money), negative=True) == money
    assert Money.of(money.amount, money.currency) == money
