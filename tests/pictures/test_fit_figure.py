"""The drawing of a garment on a body: to scale, legible, well-formed."""

import math
import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import special

from loopwright.pictures import EaseLine, fit_figure
from loopwright.pictures.fit_figure import half_width_cm
from tests.pictures.drawings import HOSTILE, colours_of, drawn, is_grey, spoken

BODY = {"bust_girth": 96.0, "hip_girth": 103.0, "shoulder_width": 37.5, "upper_arm_girth": 31.0}
GARMENT = {"bust_girth": 103.0, "upper_arm_girth": 35.0, "length": 64.0, "sleeve_length": 46.0}
LINES = [
    EaseLine("bust_girth", "bust +7 cm", "96 cm → 103 cm"),
    EaseLine("upper_arm_girth", "arm +4 cm", "31 → 35", True),
]


def outlines(svg: str) -> list[list[tuple[float, float]]]:
    return [
        [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", path)]
        for path in re.findall(r' d="([^"]*Z)"', svg)
    ]


@given(st.floats(10, 250), st.floats(0.3, 1))
def test_the_ellipse_has_the_girth(girth: float, ratio: float) -> None:
    """Perimeter of an ellipse by the complete elliptic integral (scipy); Ramanujan's form is close to 1e-4 here."""
    half = half_width_cm(girth, ratio)
    perimeter = 4 * half * float(special.ellipe(1 - ratio**2))
    assert perimeter == pytest.approx(girth, rel=2e-4)


def test_a_round_arm() -> None:
    assert half_width_cm(2 * math.pi * 5, 1.0) == pytest.approx(5)


def test_a_wider_garment_is_drawn_wider_by_its_ellipse() -> None:
    sleeveless = {"length": 60.0}
    widths = []
    for bust in (100.0, 120.0):
        garment = outlines(fit_figure(BODY, sleeveless | {"bust_girth": bust}, [], "x"))[-1]
        hem = [x for x, y in garment if y > 50]
        widths.append(max(hem) - min(hem))
    assert widths[1] - widths[0] == pytest.approx(2 * (half_width_cm(120) - half_width_cm(100)), abs=0.05)


def test_a_longer_garment_reaches_lower_by_just_that() -> None:
    hems = [max(y for _, y in outlines(fit_figure(BODY, GARMENT | {"length": cm}, [], "x"))[-1]) for cm in (70.0, 78.0)]
    assert hems[1] - hems[0] == pytest.approx(8, abs=0.05)


def test_every_ease_is_written_and_what_is_off_is_heavy() -> None:
    root = drawn(fit_figure(BODY, GARMENT, LINES, "x"))
    texts = {text.text: text.attrib["font-weight"] for text in root.iter() if text.tag.endswith("text")}
    assert texts == {"bust +7 cm": "400", "96 cm → 103 cm": "400", "arm +4 cm": "700", "31 → 35": "400"}


def test_words_do_not_overlap() -> None:
    root = drawn(fit_figure(BODY, GARMENT | {"waist_girth": 90.0}, [*LINES, EaseLine("shoulder_width", "a", "b")], "x"))
    heights = sorted(float(text.attrib["y"]) for text in root.iter() if text.tag.endswith("text"))
    assert all(below - above >= 5 for above, below in pairwise(heights))


def test_it_is_grey_and_says_what_it_is() -> None:
    svg = fit_figure(BODY, GARMENT, LINES, HOSTILE)
    root = drawn(svg)
    assert spoken(root) == (HOSTILE, HOSTILE)
    assert all(is_grey(colour) for colour in colours_of(svg))


@given(st.floats(35, 200), st.floats(35, 220))
def test_any_body_and_garment_can_be_drawn(body: float, garment: float) -> None:
    drawn(fit_figure({"bust_girth": body}, {"bust_girth": garment}, LINES, "x"))
