"""What a chart of 300 by 300 costs: floats, catches, reading and writing, drawing, a picture brought to it."""

from collections.abc import Callable

import numpy as np

from loopwright.chart import (
    Chart,
    ChartRole,
    NamedChart,
    areas_per_role,
    chart_csv,
    chart_fields,
    find_floats,
    long_floats,
    mirror_axes,
    read_chart_csv,
)
from loopwright.chart.from_picture import PictureWish, chart_from_pixels
from loopwright.fabric import Gauge
from loopwright.pictures.chart_view import chart_drawing

SIDE = 300


def charts(seconds: Callable[[Callable[[], object]], float], line: Callable[[str, float, str, float], None]) -> None:
    print(f"Charts of {SIDE} by {SIDE}, every cell at random, beside finding their floats")
    random = np.random.default_rng(0)
    cells = random.integers(0, 4, (SIDE, SIDE)).astype(np.uint8)
    chart = Chart(cells, np.zeros_like(cells), tuple(ChartRole(f"r{at}") for at in range(4)))
    text = chart_csv(chart)
    fields = {name: value for name, value in chart_fields(chart).items() if value is not None}
    pixels = random.integers(0, 256, (1500, 2000, 3)).astype(np.uint8)
    wish = PictureWish(SIDE, Gauge(stitches_per_10cm=22, rows_per_10cm=30), colours=5, two_in_a_row=True)
    unit = seconds(lambda: find_floats(chart))
    line("floats", unit, "itself", 1)
    for name, work in (
        ("long floats with their catches", lambda: long_floats(chart, 5, 4.5)),
        ("axes of the repeat", lambda: mirror_axes(chart)),
        ("areas of one colour", lambda: areas_per_role(chart)),
        (
            "reading its lines from a season file",
            lambda: NamedChart.model_validate({"key": "a", "name": "A", **fields}),
        ),
        ("writing it as CSV", lambda: chart_csv(chart)),
        ("reading it from CSV", lambda: read_chart_csv(text)),
        ("drawing it as SVG", lambda: chart_drawing(chart, "a field")),
        ("a photo of 3 million points brought to it", lambda: chart_from_pixels(pixels, wish)),
    ):
        took = seconds(work)
        line(name, took, "the floats", took / unit)
