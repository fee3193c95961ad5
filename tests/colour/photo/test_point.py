"""A place in a picture."""

import pytest

from loopwright.colour.photo import Point, read_point
from loopwright.units import BadInput


@pytest.mark.parametrize("text", ["640,120", "80%,20%", " 80 % , 20 % ", "640.0,20%"])
def test_pixels_and_shares_are_read(text: str) -> None:
    assert read_point(text, 800, 600) == Point(0.8, 0.2)


@pytest.mark.parametrize("text", ["", "1", "1,2,3", "-1,2", "801,2", "2,101%", "a,b", "1e3,2", "٣,2"])
def test_what_lies_outside_or_is_no_place_is_refused(text: str) -> None:
    with pytest.raises(BadInput, match="wanted"):
        read_point(text, 800, 600)


def test_the_last_pixel_holds_the_far_corner() -> None:
    assert Point(1.0, 1.0).place(600, 800) == (599, 799)


def test_no_place_lies_outside() -> None:
    with pytest.raises(BadInput, match="0 to 100 %"):
        Point(float("nan"), 0)
