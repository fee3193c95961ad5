"""A chart as a picture of one point a cell, and read from one."""

from __future__ import annotations

import io
from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from loopwright.chart.grid import MOST_ROLES, MOST_SIDE, Cells, Chart, ChartRole, named_roles
from loopwright.chart.symbols import KNIT
from loopwright.colour import read_hex, write_hex
from loopwright.colour.pixels import read_picture
from loopwright.units import BadInput

__all__ = ["chart_png", "read_chart_png"]

_PICTURE: Final = "a picture of one point a cell, of few colours; to turn a photo into a chart, say so"


def chart_png(chart: Chart, scale: int = 1, ratio: float = 1.0) -> bytes:
    """Write the colours of a chart as PNG: one point a cell, or larger.

    :param scale: points across a cell.
    :param ratio: height of a cell over its width; a cell is at least one point high.
    :raises BadInput: a role has no screen colour, or the picture would grow too large.
    """
    colours = np.zeros((len(chart.roles), 3), dtype=np.uint8)
    for at, role in enumerate(chart.roles):
        if role.shade is None:
            raise BadInput(found=f"the role '{role.name}' without a screen colour", wanted="one such as #8a4b2f")
        colours[at] = np.rint(read_hex(role.shade) * 255)
    high = max(1, round(scale * ratio))
    if scale < 1 or chart.columns * scale * chart.rows * high > 40_000_000:
        raise BadInput(found=f"{scale} points a cell", wanted="a picture of at most 40 million points", place="scale")
    grid = np.repeat(np.repeat(chart.cells[::-1], high, axis=0), scale, axis=1)
    picture = Image.frombytes("P", (grid.shape[1], grid.shape[0]), np.ascontiguousarray(grid).tobytes())
    picture.putpalette(colours.ravel().tolist())
    file = io.BytesIO()
    picture.save(file, "PNG", optimize=False)
    return file.getvalue()


def read_chart_png(content: bytes, palette: Sequence[ChartRole] = ()) -> Chart:
    """Read a chart from a picture in which each point is a cell.

    :param palette: roles with their screen colours, which the picture has to keep to; empty, each colour of the picture
        becomes a role, the most frequent one the main.
    :raises BadInput: it is no such picture, or a point has a colour that no role has, by row and stitch.
    """
    pixels = read_picture(content)[::-1]
    rows, columns, _ = pixels.shape
    if max(rows, columns) > MOST_SIDE:
        raise BadInput(found=f"{columns} × {rows} points", wanted=f"at most {MOST_SIDE} of each: {_PICTURE}")
    whole = pixels.astype(np.int64) @ np.array([65536, 256, 1])
    values, place, count = np.unique(whole, return_inverse=True, return_counts=True)
    place = place.reshape(whole.shape)
    if palette:
        cells = _by_palette(whole, palette)
        return Chart(cells, np.full_like(cells, KNIT), tuple(palette))
    if values.size > MOST_ROLES:
        raise BadInput(found=f"{values.size} colours", wanted=f"at most {MOST_ROLES}: {_PICTURE}")
    order = np.lexsort((values, -count))
    cells = np.argsort(order)[place].astype(np.uint8)
    return Chart(cells, np.full_like(cells, KNIT), named_roles([f"#{values[at]:06x}" for at in order]))


def _by_palette(whole: NDArray[np.int64], palette: Sequence[ChartRole]) -> Cells:
    cells = np.full(whole.shape, len(palette), dtype=np.int64)
    for at, role in reversed(list(enumerate(palette))):
        cells[whole == int(write_hex(read_hex(role.shade or ""))[1:], 16)] = at
    missing = np.argwhere(cells == len(palette))
    if missing.size:
        row, column = missing[0]
        raise BadInput(
            found=f"#{int(whole[row, column]):06x}",
            wanted=f"a colour of the palette ({', '.join(role.shade or '' for role in palette)})",
            place=f"row {row + 1}, stitch {whole.shape[1] - column}",
        )
    return cells.astype(np.uint8)
