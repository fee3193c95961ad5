"""What there is of a yarn against what is needed."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.pictures.svg import INK, NEUTRAL, PAPER, band, element, picture, upright
from loopwright.uncertainty import Estimate

__all__ = ["yarn_bar"]

WIDTH, HEIGHT = 1000.0, 28.0
NINETY_IN_A_HUNDRED = 1.645
"""Standard deviations either side that hold nine in ten of a normal spread."""
UNKNOWN = "#c9c9c8"


def yarn_bar(need: Estimate, have: Estimate, shade: str | None, says: str, lots: Sequence[float] = ()) -> str:
    """Draw the stock as a bar in the yarn's colour and the need as a mark with its doubt.

    The mark stands at the mean; the light band about it holds nine in ten of what the need may turn out to be.

    :param need, have: in one unit.
    :param lots: lengths of the lots that make up the stock, parted by a thin line.
    :param says: read aloud instead of the drawing.
    """
    spread = NINETY_IN_A_HUNDRED * need.sd
    most = max(have.mean, need.mean + spread, 1e-9) * 1.04

    def x(value: float) -> float:
        return max(value, 0.0) / most * WIDTH

    parts = [
        band(0, WIDTH, 6, 16, fill=NEUTRAL, fill_opacity=0.35),
        band(0, x(have.mean), 6, 16, fill=shade or UNKNOWN),
    ]
    edge = 0.0
    for metres in lots[:-1]:
        edge += metres
        parts.append(band(x(edge) - 1, 2, 6, 16, fill=PAPER))
    parts += [
        band(
            x(need.mean - spread), x(need.mean + spread) - x(need.mean - spread), 2, 24, fill=PAPER, fill_opacity=0.55
        ),
        element(
            "rect",
            x=x(need.mean - spread),
            y=2,
            width=max(x(need.mean + spread) - x(need.mean - spread), 0.0),
            height=24,
            fill="none",
            stroke=INK,
            stroke_width=1,
            vector_effect="non-scaling-stroke",
        ),
        upright(x(need.mean), HEIGHT, stroke=INK, stroke_width=2),
    ]
    return picture("".join(parts), WIDTH, HEIGHT, says, class_="bar")
