"""A garment as SVG: well-formed, its colours and no others, its areas as true as the picture's."""

from __future__ import annotations

import re

import numpy as np
import pytest
from shapely.geometry import Polygon

from loopwright.pattern import Construction
from loopwright.pictures.garment_svg import MOST_CELLS, garment_svg
from loopwright.units import BadInput
from tests.pictures.drawings import HOSTILE, colours_of, drawn, is_grey, spoken
from tests.pictures.garment_samples import sample, samples
from tests.pictures.test_front_back import BODY, charted, piece_of

PATH = "{http://www.w3.org/2000/svg}path"


@pytest.mark.parametrize("name", samples())
def test_every_construction_is_drawn_in_its_colours_alone(name: str) -> None:
    for face in ("front", "back"):
        svg = garment_svg(samples()[name], {"main": ("#4f7583",)}, face, body_cm=BODY)
        coloured = {colour for colour in colours_of(svg) if not is_grey(colour)}
        assert "#4f7583" in coloured
        assert len(coloured) <= 2  # and the same in the shade of the inside


def test_a_rectangle_has_the_area_of_its_stitches() -> None:
    # By hand: 60 stitches of 10/22 cm by 90 rows of 1/3 cm; the longer side, 30 cm, and its margins fill 800 units.
    root = drawn(garment_svg(piece_of(60, 90), {"main": ("#4f7583",)}))
    (path,) = [one for one in root.iter(PATH) if one.get("fill") == "#4f7583"]
    points = [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", path.attrib["d"])]
    scale = 800 / (30 + 2 * 0.025 * 30)
    assert Polygon(points).area == pytest.approx(60 * 10 / 22 * 30 * scale**2, rel=1e-3)


def test_a_small_piece_shows_every_stitch_and_a_large_one_does_not() -> None:
    def legs(svg: str) -> int:
        return sum(one.attrib["d"].count("M") for one in drawn(svg).iter(PATH) if "stroke-opacity" in one.attrib)

    assert legs(garment_svg(piece_of(10, 12), {})) == 120
    assert legs(garment_svg(sample(), {})) == 0


def test_a_chart_is_drawn_stitch_by_stitch() -> None:
    chart = np.indices((12, 10)).sum(axis=0) % 2
    made = charted(piece_of(10, 12), ("field", "field"), ("a", "b"), chart)
    svg = garment_svg(made, {"a": ("#4f7583",), "b": ("#a2502f",)})
    for colour in ("#4f7583", "#a2502f"):
        paths = [one.attrib["d"].count("M") for one in drawn(svg).iter(PATH) if one.get("fill") == colour]
        assert max(paths) == 60


def test_a_large_chart_is_refused() -> None:
    made = charted(piece_of(200, 200), ("field", "field"), ("a",), np.zeros((200, 200), dtype=int))
    with pytest.raises(BadInput, match=f"a chart on 40,000 stitches.*at most {MOST_CELLS:,}"):
        garment_svg(made, {})


def test_it_says_what_it_is() -> None:
    assert spoken(
        drawn(garment_svg(sample(Construction.HAT, {"head_girth": 52.0, "length": 22.0}), {}, says=HOSTILE))
    ) == (
        HOSTILE,
        HOSTILE,
    )
