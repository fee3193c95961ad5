"""The drawing of a swatch: windows to scale, at most six, read aloud."""

import re
from xml.etree import ElementTree

from loopwright.pictures.swatch import CountedWindow, swatch_figure

SVG = "{http://www.w3.org/2000/svg}"
GAUGE = (22.0, 30.0)


def drawn(*windows: CountedWindow, width: float | None = 15, height: float | None = 14) -> ElementTree.Element:
    return ElementTree.fromstring(swatch_figure(windows, width, height, GAUGE, "22 × 30 & washed"))


def sizes(figure: ElementTree.Element) -> list[tuple[float, float]]:
    return [(float(rect.attrib["width"]), float(rect.attrib["height"])) for rect in figure.iter(f"{SVG}rect")]


def test_windows_are_to_scale_with_the_swatch() -> None:
    (fabric, ten, five) = sizes(drawn(CountedWindow("22 × 30"), CountedWindow("11 × 15", 5, 5)))
    assert round(fabric[0] / ten[0], 2) == 1.5
    assert round(ten[0] / five[0], 2) == 2


def test_nothing_lies_outside_even_when_the_window_is_larger_than_the_swatch() -> None:
    figure = drawn(CountedWindow("44 × 60", 20, 20), width=15, height=None)
    right = float(figure.attrib["viewBox"].split()[2])
    assert all(float(rect.attrib["x"]) + float(rect.attrib["width"]) <= right for rect in figure.iter(f"{SVG}rect"))


def test_six_windows_are_drawn_of_many() -> None:
    figure = drawn(*[CountedWindow("22 × 30")] * 9)
    assert len([*figure.iter(f"{SVG}text")]) == 6


def test_stitches_have_their_own_proportion() -> None:
    """At 22 × 30 a stitch is 30/22 as wide as high; the legs of a V span 0.84 of its width and 0.87 of its height."""
    path = next(drawn(CountedWindow("22 × 30")).iter(f"{SVG}path")).attrib["d"]
    x0, y0, _, y1, x2, _ = (float(one) for one in re.findall(r"[\d.]+", path)[:6])
    assert abs((x2 - x0) / 0.84 / ((y1 - y0) / 0.87) - 30 / 22) < 0.02


def test_it_is_read_aloud() -> None:
    assert drawn(CountedWindow("22 × 30")).attrib["aria-label"] == "22 × 30 & washed"
