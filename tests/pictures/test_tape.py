"""Where the tape lies: a drawing for every measure, one figure for all, the tape in ink, the figure light."""

import re

import pytest

from loopwright.body import MEASURES
from loopwright.pictures.svg import INK
from loopwright.pictures.tape import TAPES, tape_drawing, tape_words
from loopwright.pictures.tape_figure import LINE, curve, figure
from tests.pictures.drawings import colours_of, drawn, is_grey, spoken


def test_every_measure_has_a_drawing() -> None:
    assert set(TAPES) == set(MEASURES)


def test_no_two_measures_look_the_same() -> None:
    inside = [re.sub(r"<title>.*?</title>|aria-label=\"[^\"]*\"", "", tape_drawing(key)) for key in TAPES]
    assert len(set(inside)) == len(inside)


@pytest.mark.parametrize("key", TAPES)
def test_it_is_read_aloud(key: str) -> None:
    words = tape_words(key)
    assert spoken(drawn(tape_drawing(key))) == (words, words)
    assert words.startswith(f"{MEASURES[key].name}: tape ")


@pytest.mark.parametrize("key", TAPES)
def test_only_the_tape_is_in_ink(key: str) -> None:
    root = drawn(tape_drawing(key))
    assert colours_of(tape_drawing(key)) == {INK, LINE}
    assert is_grey(LINE)
    widths = {line.attrib["stroke"]: float(line.attrib["stroke-width"]) for line in root if "stroke" in line.attrib}
    assert widths[INK] > widths[LINE]


@pytest.mark.parametrize("key", TAPES)
def test_the_tape_lies_inside_the_picture(key: str) -> None:
    left, top, width, height = map(float, drawn(tape_drawing(key)).attrib["viewBox"].split())
    for line in (*TAPES[key].lines, *TAPES[key].hidden):
        for x, y in line:
            assert left < x < left + width
            assert top < y < top + height


def test_the_natural_waist_lies_above_the_navel_and_the_hip_below() -> None:
    heights = [
        TAPES[f"{place}_girth"].lines[0][0][1] for place in ("bust", "under_bust", "waist_natural", "waist_navel")
    ]
    assert heights == sorted(heights)


def test_a_curve_goes_through_its_points() -> None:
    path = curve(((0, 0), (3, 1), (6, 0)))
    assert path.startswith("M0 0C")
    assert re.findall(r"([-\d.]+ [-\d.]+)(?=C|$)", path) == ["0 0", "3 1", "6 0"]


def test_front_back_and_side_differ() -> None:
    assert len({figure("front"), figure("back"), figure("side"), figure("front", with_bust=True)}) == 4


def test_what_is_no_measure_has_no_drawing() -> None:
    with pytest.raises(KeyError):
        tape_drawing("inseam")
