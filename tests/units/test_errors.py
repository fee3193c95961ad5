import pickle

import pytest

from loopwright.units import BadInput, LoopwrightError, MixedCurrencies, UnreadableQuantity, read_length_cm


def test_the_message_names_place_found_wanted_and_hint() -> None:
    with pytest.raises(UnreadableQuantity) as caught:
        read_length_cm("14 inchs")
    assert str(caught.value.at("bust_girth")) == (
        'bust_girth: found "14 inchs"; wanted a length with its unit, such as 36 cm or 14 in (did you mean "in"?)'
    )


def test_place_goes_in_front_and_the_kind_of_fault_stays() -> None:
    fault = UnreadableQuantity("x", "a number", place="row 3", hint="try 1")
    placed = fault.at("yarns.csv")
    assert type(placed) is UnreadableQuantity
    assert (placed.found, placed.wanted, placed.place, placed.hint) == (
        "x",
        "a number",
        "yarns.csv: row 3",
        "try 1",
    )
    assert fault.place == "row 3"


@pytest.mark.parametrize("kind", [LoopwrightError, ValueError, BadInput])
def test_an_unreadable_quantity_is_caught_as(kind: type[Exception]) -> None:
    with pytest.raises(kind):
        read_length_cm("")


def test_nothing_found_is_said_in_words() -> None:
    assert str(BadInput(" \n", "a number")) == "found nothing; wanted a number"


def test_what_was_found_is_shown_on_one_line_and_cut() -> None:
    shown = str(BadInput("a\nb" + "c" * 200, "a number"))
    assert shown.startswith('found "a bccc')
    assert len(shown) < 120


def test_a_fault_survives_pickling_with_all_it_knows() -> None:
    fault = BadInput("x", "a number", place="row 3", hint="try 1")
    assert str(pickle.loads(pickle.dumps(fault))) == str(fault)


def test_mixed_currencies_names_both() -> None:
    assert "NZD and EUR do not mix" in str(MixedCurrencies("NZD", "EUR"))
