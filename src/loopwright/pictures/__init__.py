"""Small drawings of figures, as SVG text: a need against a stock, and a garment's weeks.

* :func:`yarn_bar`: what there is of a yarn against what is needed, with its doubt.
* :func:`time_bar`, :func:`month_bar`: when a garment is knitted and done, on the season's own line of time.
* :func:`colour_chip`: the likeness of a colour on neutral grey; :func:`stitch_icon`: one knit stitch.
* :func:`fit_figure`: body and garment to one scale, with the ease at each point.
* :func:`schematic`: every piece of a drafted garment in its true shape, with its measures and counts.
* :func:`tape_drawing`: where the tape lies for a measure of the body; :func:`tape_words`: the same in words.

Bars stretch to the width of their place, and words stand beside them in the page.
"""

from loopwright.pictures.chip import colour_chip, stitch_icon
from loopwright.pictures.fit_figure import EaseLine, fit_figure
from loopwright.pictures.schematic import schematic
from loopwright.pictures.tape import tape_drawing, tape_words
from loopwright.pictures.time_bar import TimeLine, month_bar, time_bar
from loopwright.pictures.yarn_bar import yarn_bar

__all__ = [
    "EaseLine",
    "TimeLine",
    "colour_chip",
    "fit_figure",
    "month_bar",
    "schematic",
    "stitch_icon",
    "tape_drawing",
    "tape_words",
    "time_bar",
    "yarn_bar",
]
