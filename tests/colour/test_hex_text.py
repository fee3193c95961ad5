"""Colours as text: reading undoes writing, and mistakes are met with the way out."""

import numpy as np
import pytest
from hypothesis import given

from loopwright.colour import read_hex, read_hexes, write_hex
from loopwright.units import BadInput
from tests.colour.samples import bytes_srgb


@given(bytes_srgb)
def test_reading_undoes_writing(triple: tuple[int, int, int]) -> None:
    text = write_hex(np.array(triple) / 255)
    assert text == "#{:02x}{:02x}{:02x}".format(*triple)
    assert read_hex(text).tolist() == [value / 255 for value in triple]
    assert read_hex(f" {text.upper()} ").tolist() == read_hex(text).tolist()


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("a43c2b", 'did you mean "#a43c2b"?'),
        ("#abc", 'did you mean "#aabbcc"?'),
        ("#a43c2", "it has 5 digits, not six"),
        ("#a43c2bff", "it has 8 digits, not six"),
        ("#a43c2g", '"g" is no digit of 0 to 9 and a to f'),
        ("rust", '"r" is no digit of 0 to 9 and a to f'),
        ("", None),
        ("#", None),
    ],
)
def test_another_writing_is_refused(text: str, hint: str | None) -> None:
    with pytest.raises(BadInput) as caught:
        read_hex(text)
    assert (caught.value.found, caught.value.wanted, caught.value.hint) == (text, "a colour as #rrggbb", hint)


def test_what_no_screen_shows_is_clipped() -> None:
    assert write_hex([-0.2, 0.5, 1.3]) == "#0080ff"


@pytest.mark.parametrize("wrong", [[0.1, 0.2], [[0.1, 0.2, 0.3]], [0.1, 0.2, float("nan")]])
def test_three_numbers_are_wanted(wrong: object) -> None:
    with pytest.raises(ValueError, match="three finite numbers"):
        write_hex(wrong)  # type: ignore[arg-type]


def test_several_at_once() -> None:
    assert read_hexes(["#000000", "#ffffff"]).tolist() == [[0, 0, 0], [1, 1, 1]]
    assert read_hexes([]).shape == (0, 3)
