"""Frozen records, keys, and tables of keyed records."""

from typing import Annotated

import pytest

from loopwright.records import Keyed, LengthCm, Record, keyed_table


class Peg(Keyed):
    width: LengthCm


class Rack(Record):
    pegs: Annotated[tuple[Peg, ...], *keyed_table] = ()


RACK = Rack.model_validate({"pegs": {"left": {"width": "3 cm"}, "right": {"width": "1 in"}}})


def test_a_table_of_a_file_keeps_its_order_and_keys() -> None:
    assert [(peg.key, peg.width) for peg in RACK.pegs] == [("left", 3.0), ("right", 2.54)]


def test_written_it_is_a_table_again_that_reads_back() -> None:
    written = RACK.model_dump(mode="json")
    assert list(written["pegs"]) == ["left", "right"]
    assert Rack.model_validate(written) == RACK


def test_a_key_stands_once() -> None:
    with pytest.raises(ValueError, match="'left' twice"):
        Rack(pegs=(Peg(key="left", width=1), Peg(key="left", width=2)))


def test_a_row_that_is_no_table() -> None:
    with pytest.raises(ValueError, match="a table of fields under 'left'"):
        Rack.model_validate({"pegs": {"left": 3}})


@pytest.mark.parametrize("key", ["", "Left", "left peg", "-left", "left--peg", "l\u00e9ft", "x" * 61])
def test_keys_are_plain(key: str) -> None:
    with pytest.raises(ValueError, match="key"):
        Peg(key=key, width=1)


def test_an_unknown_field_is_a_fault() -> None:
    with pytest.raises(ValueError, match="widht"):
        Rack.model_validate({"pegs": {"left": {"widht": "3 cm"}}})


def test_a_record_cannot_be_changed() -> None:
    with pytest.raises(ValueError, match="frozen"):
        RACK.pegs = ()  # type: ignore[misc]
