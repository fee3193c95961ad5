from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units import (
    UNITS,
    Unit,
    UnreadableQuantity,
    read_length_cm,
    read_mass_g,
    read_minutes,
    read_quantity,
    read_share,
    read_yarn_length_m,
)

LENGTHS_CM = {
    "36 cm": 36.0,
    "36cm": 36.0,
    "36,5 cm": 36.5,
    "365 mm": 36.5,
    "1.2 m": 120.0,
    "14 in": 35.56,
    '14"': 35.56,
    "14″": 35.56,
    "14”": 35.56,
    "14''": 35.56,
    "14 Inches": 35.56,
    "14½ in.": 36.83,
    "1/2 in": 1.27,
    "5 ft 6 in": 167.64,
    "5'6\"": 167.64,
    "5′ 6½″": 168.91,
    "1 m 20 cm": 120.0,
    "1 yd": 91.44,
    "0 cm": 0.0,
}


@pytest.mark.parametrize(("text", "length_cm"), LENGTHS_CM.items())
def test_reads_a_length(text: str, length_cm: float) -> None:
    assert read_length_cm(text) == length_cm


@pytest.mark.parametrize(
    ("text", "length_m"), [("470 yd", 429.768), ("1,200 m", 1200.0), ("1 200 m", 1200.0), ("1.2 km", 1200.0)]
)
def test_reads_a_yarn_length(text: str, length_m: float) -> None:
    assert read_yarn_length_m(text) == length_m


@pytest.mark.parametrize(
    ("text", "mass_g"),
    [
        ("50 g", 50.0),
        ("3½ oz", 99.2233309375),
        ("3 1/2 oz", 99.2233309375),
        ("1 lb", 453.59237),
        ("0.5 kg", 500.0),
        ("1 lb 4 oz", 566.9904625),
        ("2 lbs.", 907.18474),
    ],
)
def test_reads_a_mass(text: str, mass_g: float) -> None:
    assert read_mass_g(text) == mass_g


@pytest.mark.parametrize(
    ("text", "minutes"),
    [("1 h 30 min", 90.0), ("1h30min", 90.0), ("2½ hours", 150.0), ("45 min", 45.0), ("1 hr", 60.0)],
)
def test_reads_minutes(text: str, minutes: float) -> None:
    assert read_minutes(text) == minutes


@pytest.mark.parametrize(
    ("text", "share"),
    [
        ("95 %", 0.95),
        ("95%", 0.95),
        ("12,5 %", 0.125),
        ("95 per cent", 0.95),
        ("7 percent", 0.07),
        ("0 %", 0.0),
        ("100 %", 1.0),
    ],
)
def test_reads_a_share(text: str, share: float) -> None:
    assert read_share(text) == share


@pytest.mark.parametrize("text", ["", "95", "0.95", "101 %", "-5 %", "% 95", "95 % of it", "1/0 %", "half"])
def test_refuses_a_share(text: str) -> None:
    with pytest.raises(UnreadableQuantity, match="wanted a share from 0 % to 100 %"):
        read_share(text)


def test_a_bare_share_is_asked_for_its_sign() -> None:
    with pytest.raises(UnreadableQuantity, match="add the % sign"):
        read_share("0.95")


BAD_LENGTHS = {
    "": "found nothing; wanted a length with its unit",
    "14": "which unit. write 14 cm or 14 in",
    "14 inchs": 'did you mean "in"',
    "14 furlongs": 'found "14 furlongs"; wanted a length',
    "50 g": '"g" is a unit of mass',
    "cm": 'found "cm"; wanted a length',
    "-3 cm": "cannot be negative",
    "−3 cm": "cannot be negative",
    "1/0 cm": "divided by 0",
    "3 5/4 in": "must be below 1",
    "14 in 15 in": "from the large unit to the small one",
    "6 in 5 ft": "from the large unit to the small one",
    "5 ft -6 in": "from the large unit to the small one",
    "5 ft 6": "which unit",
    "14-16 in": 'found "14-16 in"',
    "14 in x 3": "wanted a length",
    "14 in (36 cm)": "wanted a length",
    "nan cm": "wanted a length",
    "1e3 cm": "wanted a length",
    "9" * 400 + " cm": "too large",
}


@pytest.mark.parametrize(("text", "message"), BAD_LENGTHS.items())
def test_refuses_a_length_and_says_why(text: str, message: str) -> None:
    with pytest.raises(UnreadableQuantity, match=message):
        read_length_cm(text)


def test_a_bare_yarn_length_is_asked_for_its_unit() -> None:
    with pytest.raises(UnreadableQuantity, match=r"430 m or 470 yd \(which unit\? write 400 m or 400 yd"):
        read_yarn_length_m("400")


def test_a_bare_mass_is_asked_for_its_unit() -> None:
    with pytest.raises(UnreadableQuantity, match=r"which unit\? write 50 g or 50 oz"):
        read_mass_g("50")


def test_a_minute_is_no_metre() -> None:
    with pytest.raises(UnreadableQuantity, match='"m" is a unit of length'):
        read_minutes("30 m")


@pytest.mark.parametrize(("text", "length_cm"), [("-2 in", -5.08), ("−4 cm", -4.0), ("-1 ft 6 in", -45.72)])
def test_reads_a_negative_length_where_one_is_allowed(text: str, length_cm: float) -> None:
    assert read_length_cm(text, negative=True) == length_cm


def test_a_quantity_keeps_its_unit_and_is_exact() -> None:
    quantity = read_quantity("3 1/3 oz", "mass")
    assert (quantity.value, quantity.unit.symbol) == (Fraction(10, 3), "oz")
    assert quantity.in_base == Fraction(10, 3) * Fraction("28.349523125")


@given(st.fractions(min_value=0), st.sampled_from(UNITS))
def test_a_written_quantity_reads_back_exactly(value: Fraction, unit: Unit) -> None:
    assert read_quantity(f"{value} {unit.symbol}", unit.kind).in_base == value * unit.factor


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused_but_never_breaks(text: str) -> None:
    for read in (read_length_cm, read_yarn_length_m, read_mass_g, read_minutes, read_share):
        with suppress(UnreadableQuantity):
            assert read(text) >= 0
