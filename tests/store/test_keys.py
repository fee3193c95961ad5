"""Keys of seasons."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.store.keys import LONGEST_KEY, check_key, free_key, key_from_name
from loopwright.units import BadInput


@pytest.mark.parametrize(
    ("name", "key"),
    [
        ("Winter at Hút!", "winter-at-hut"),
        ("  Für Oma & Opa  ", "fur-oma-opa"),
        ("Straße", "strasse"),
        ("冬", "season"),
        ("", "season"),
        ("a" * 80, "a" * 60),
    ],
)
def test_a_key_is_made_from_a_name(name: str, key: str) -> None:
    assert key_from_name(name) == key


@given(st.text())
def test_what_is_made_is_a_key(name: str) -> None:
    assert check_key(key_from_name(name)) == key_from_name(name)


def test_a_key_that_is_taken_gets_a_number() -> None:
    assert free_key("winter", {"winter", "winter-2"}) == "winter-3"


@given(st.from_regex(r"[a-z0-9]{1,30}(-[a-z0-9]{1,29})?", fullmatch=True))
def test_a_numbered_key_is_a_key(key: str) -> None:
    assert check_key(free_key(key[:LONGEST_KEY], {key[:LONGEST_KEY]})) != key


@pytest.mark.parametrize("key", ["Winter", "winter ", "winter--2", "-winter", "", "a" * 61, "winter\n"])
def test_what_is_no_key_is_refused(key: str) -> None:
    with pytest.raises(BadInput, match=r"^key: found .*; wanted a key of small letters"):
        check_key(key)
