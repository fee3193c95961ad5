"""A chart inside the drawing that we make of it, so that the drawing can be read again."""

from __future__ import annotations

import re
from html import escape, unescape
from typing import Final

from loopwright.chart.csv_form import chart_csv, read_chart_csv
from loopwright.chart.grid import Chart
from loopwright.units import BadInput

__all__ = ["carried", "read_chart_svg"]

_CARRIED: Final = re.compile(r'<metadata data-chart="csv">(.*?)</metadata>', re.DOTALL)


def carried(chart: Chart) -> str:
    """Give the element that carries a chart in a drawing: its CSV as text."""
    return f'<metadata data-chart="csv">{escape(chart_csv(chart), quote=False)}</metadata>'


def read_chart_svg(text: str) -> Chart:
    """Read a chart from a drawing that :func:`~loopwright.pictures.chart_view.chart_drawing` made.

    :raises BadInput: the drawing carries no chart.
    """
    found = _CARRIED.search(text)
    if found is None:
        raise BadInput(found="a drawing that carries no chart", wanted="an SVG that was written here, or CSV or PNG")
    return read_chart_csv(unescape(found[1]))
