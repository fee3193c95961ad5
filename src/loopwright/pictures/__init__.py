"""Small drawings of figures, as SVG text: a need against a stock, and a garment's weeks.

* :func:`yarn_bar`: what there is of a yarn against what is needed, with its doubt.
* :func:`time_bar`, :func:`month_bar`: when a garment is knitted and done, on the season's own line of time.
* :func:`colour_chip`: the likeness of a colour on neutral grey; :func:`stitch_icon`: one knit stitch.

Every drawing stretches to the width of its place; words stand beside it in the page, never inside.
"""

from loopwright.pictures.chip import colour_chip, stitch_icon
from loopwright.pictures.time_bar import TimeLine, month_bar, time_bar
from loopwright.pictures.yarn_bar import yarn_bar

__all__ = ["TimeLine", "colour_chip", "month_bar", "stitch_icon", "time_bar", "yarn_bar"]
