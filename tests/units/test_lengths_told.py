"""Words with lengths in them."""

import copy
import pickle
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units import BadInput, Reader, Told, UnreadableQuantity, told, write_length

CUFF = told("a cuff of {} on a sleeve of {}", 5.08, 45)


def inches(length_cm: float) -> str:
    """2.54 cm to the inch, exactly (International Yard and Pound agreement, 1959)."""
    return f"{Fraction(str(length_cm)) / Fraction('2.54')} in"


def test_each_reader_has_them_in_her_own_measures() -> None:
    assert CUFF.written(lambda length_cm: write_length(length_cm, Reader())) == "a cuff of 5.1 cm on a sleeve of 45 cm"
    assert CUFF.written(lambda length_cm: write_length(length_cm, Reader("imperial"))).startswith("a cuff of 2 in on")
    assert told("{}", 12.7).written(inches) == "5 in"


def test_as_plain_text_they_are_in_cm() -> None:
    assert str(CUFF) == "a cuff of 5.08 cm on a sleeve of 45 cm"
    assert str(told("{} or {}", 2 / 3, 1234.5)) == "0.67 cm or 1234.5 cm"


@given(st.text())
def test_plain_text_stays_as_it_is(text: str) -> None:
    plain = Told.of(text)
    assert (str(plain), plain.lengths_cm, bool(plain)) == (text, (), bool(text))
    assert str(plain + CUFF) == text + str(CUFF)
    assert Told.of(plain) is plain


@pytest.mark.parametrize(
    ("words", "lengths_cm"),
    [("a cuff of {}", ()), ("a cuff", (5.0,)), ("{} and {}", (1.0,)), ("{0}", (1.0,)), ("{:.1f} x {cm}", (1.0, 2.0))],
)
def test_words_that_their_lengths_do_not_fill_are_refused(words: str, lengths_cm: tuple[float, ...]) -> None:
    with pytest.raises(ValueError, match="lengths for"):
        Told(words, lengths_cm)


def test_a_fault_keeps_its_lengths() -> None:
    fault = BadInput(CUFF, told("a sleeve of at least {}", 6.35), place="sleeve_length")
    assert str(fault) == (
        'sleeve_length: found "a cuff of 5.08 cm on a sleeve of 45 cm"; wanted a sleeve of at least 6.35 cm'
    )
    for one in (fault, fault.at("garments"), copy.copy(fault), pickle.loads(pickle.dumps(fault))):
        assert one.told.lengths_cm == (5.08, 45, 6.35)
        assert one.told.written(inches).endswith("; wanted a sleeve of at least 5/2 in")


def test_a_fault_of_plain_words_is_told_as_it_stands() -> None:
    assert str(UnreadableQuantity("{} cm", "a length").told) == "{} cm; wanted a length"
