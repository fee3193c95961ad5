"""The likeness of a colour, and the site's icon."""

from loopwright.pictures import colour_chip, stitch_icon
from tests.pictures.drawings import HOSTILE, colours_of, drawn, is_grey, rects, spoken

RUST = "#a2502f"


def test_a_colour_lies_on_neutral_grey() -> None:
    ground, field = rects(drawn(colour_chip(RUST, "Rust")))
    assert is_grey(ground.attrib["fill"])
    assert field.get("fill") == RUST


def test_a_colour_without_a_likeness_is_struck_through_and_says_so() -> None:
    root = drawn(colour_chip(None, "Rust"))
    assert len(root.findall("{*}line")) == 1
    assert spoken(root) == ("Rust, no likeness given", "Rust, no likeness given")


def test_a_hostile_name_stays_text() -> None:
    svg = colour_chip(RUST, HOSTILE)
    assert spoken(drawn(svg)) == (HOSTILE, HOSTILE)
    assert "<script" not in svg


def test_the_icon_is_one_grey_stitch_of_two_legs() -> None:
    svg = stitch_icon()
    assert len(drawn(svg).findall("{*}path")) == 2
    assert all(is_grey(colour) for colour in colours_of(svg))
