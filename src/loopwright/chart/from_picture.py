"""A picture turned into a chart on the yarns of a palette, at the proportions of the fabric."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from loopwright.chart.grid import MOST_ROLES, MOST_SIDE, Cells, Chart, ChartRole, named_roles
from loopwright.chart.quantise import despeckled, dithered, lab_of, nearest, palette_in, two_in_a_row
from loopwright.chart.sampling import area_means, proportion_error, rows_for
from loopwright.chart.symbols import KNIT
from loopwright.colour import Floats, delta_e_ciede2000, linear_from_srgb, read_hex, write_hex
from loopwright.colour.pixels import Pixels, read_picture
from loopwright.fabric import Gauge
from loopwright.units import BadInput

__all__ = ["PictureChart", "PictureWish", "chart_from_picture", "chart_from_pixels"]

FEWEST_STITCHES: Final = 2


@dataclass(frozen=True, slots=True)
class PictureWish:
    """How a picture is to become a chart.

    :ivar stitches: stitches across, from 2.
    :ivar gauge: of the fabric; it decides the rows.
    :ivar palette: the yarns; empty, ``colours`` are found in the picture.
    :ivar two_in_a_row: keep to two colours in every row, for stranded knitting.
    :ivar dither: hand each cell's error on to its neighbours.
    :ivar despeckle: repaint single cells where it costs little; not done to what was dithered.
    """

    stitches: int
    gauge: Gauge
    palette: tuple[ChartRole, ...] = ()
    colours: int = 4
    two_in_a_row: bool = False
    dither: bool = False
    despeckle: bool = True


@dataclass(frozen=True, slots=True)
class PictureChart:
    """A chart from a picture, and how far it is from it.

    :ivar delta_e: mean ΔE00 between the cells' light and their yarns; ``worst_delta_e`` the largest.
    :ivar proportion_error: how much too wide it comes out, as a share, since rows are whole.
    """

    chart: Chart
    delta_e: float
    worst_delta_e: float
    proportion_error: float


def chart_from_picture(content: bytes, wish: PictureWish) -> PictureChart:
    """Turn a JPEG, PNG or WebP into a chart; see :func:`chart_from_pixels`.

    :raises BadInput: it cannot be read, or the wish cannot be met.
    """
    return chart_from_pixels(read_picture(content), wish)


def chart_from_pixels(pixels: Pixels, wish: PictureWish) -> PictureChart:
    """Turn a picture into a chart: resample, bring to the palette, clean up.

    Cells are means of linear light over the part that each covers; yarns are chosen by ΔE*ab; the error told is ΔE00.

    :param pixels: sRGB; shape (height, width, 3), its first row at the top.
    :raises BadInput: too many or too few stitches, rows or colours; a yarn without a likeness; dithering
        to two in a row.
    Source: our chain of published steps, see :mod:`~loopwright.chart.sampling` and :mod:`~loopwright.chart.quantise`.
    """
    height, width, _ = pixels.shape
    rows = rows_for(wish.stitches, width, height, wish.gauge)
    _check(wish, rows)
    linear = area_means(pixels, wish.stitches, rows)
    roles = wish.palette or _roles_in(linear, wish.colours)
    palette = linear_from_srgb(np.array([read_hex(role.shade or "") for role in roles]))
    lab, palette_lab = lab_of(linear), lab_of(palette)
    if wish.dither:
        cells = dithered(linear, palette)
    else:
        cells = two_in_a_row(lab, palette_lab) if wish.two_in_a_row else nearest(lab, palette_lab)
        if wish.despeckle:
            clean = despeckled(cells, lab, palette_lab)
            cells = _kept_to_two(clean, cells) if wish.two_in_a_row else clean
    off = delta_e_ciede2000(lab, palette_lab[cells])
    chart = Chart(cells, np.full_like(cells, KNIT), roles)
    return PictureChart(
        chart,
        float(off.mean()),
        float(off.max()),
        proportion_error(wish.stitches, rows, width, height, wish.gauge),
    )


def _kept_to_two(clean: Cells, cells: Cells) -> Cells:
    """Take a cleaned row back where the cleaning brought a third colour into it."""
    broken = [len(np.unique(row)) > 2 for row in clean]
    return np.where(np.array(broken)[:, None], cells, clean)


def _roles_in(linear: Floats, colours: int) -> tuple[ChartRole, ...]:
    shades = [write_hex(srgb) for srgb in palette_in(linear, colours)]
    return named_roles(tuple(dict.fromkeys(shades)))


def _check(wish: PictureWish, rows: int) -> None:
    if not FEWEST_STITCHES <= wish.stitches <= MOST_SIDE:
        raise BadInput(
            found=f"{wish.stitches} stitches", wanted=f"from {FEWEST_STITCHES} to {MOST_SIDE}", place="stitches"
        )
    if rows > MOST_SIDE:
        raise BadInput(
            found=f"{rows} rows for this picture",
            wanted=f"at most {MOST_SIDE}",
            place="stitches",
            hint="fewer stitches",
        )
    if not wish.palette and not 2 <= wish.colours <= MOST_ROLES:
        raise BadInput(found=f"{wish.colours} colours", wanted=f"from 2 to {MOST_ROLES}", place="colours")
    for role in wish.palette:
        if role.shade is None:
            raise BadInput(found=f"{role.name} without a screen colour", wanted="one such as #8a4b2f", place="palette")
    if wish.dither and wish.two_in_a_row:
        raise BadInput(found="dithering to two colours in a row", wanted="one of the two", place="dither")
