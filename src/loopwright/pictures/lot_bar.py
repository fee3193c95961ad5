"""How much of a lot is kept for garments, and how much is free."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.pictures.svg import INK, PAPER, band, element, picture

__all__ = ["lot_bar"]

WIDTH, HEIGHT = 1000.0, 16.0
UNKNOWN = "#c9c9c8"


def lot_bar(length_m: float, reserved_m: Sequence[float], most_m: float, shade: str | None, says: str) -> str:
    """Draw a lot as a bar in the yarn's colour: full where a garment has reserved it, pale where it is free.

    :param reserved_m: metres for each garment, parted by a thin line.
    :param most_m: metres that the whole width stands for, so that several bars can be compared.
    :param says: read aloud instead of the drawing.
    """
    most = max(most_m, length_m, 1e-9)

    def x(metres: float) -> float:
        return max(metres, 0.0) / most * (WIDTH - 2) + 1

    colour = shade or UNKNOWN
    width = x(length_m) - 1
    parts = [band(1, width, 2, 12, fill=PAPER), band(1, width, 2, 12, fill=colour, fill_opacity=0.3)]
    edge = 0.0
    for metres in reserved_m:
        parts.append(band(x(edge), x(edge + metres) - x(edge), 2, 12, fill=colour))
        edge += metres
        if edge < length_m:
            parts.append(band(x(edge) - 1, 2, 2, 12, fill=PAPER))
    parts.append(
        element(
            "rect",
            x=1,
            y=2,
            width=width,
            height=12,
            fill="none",
            stroke=INK,
            stroke_width=0.75,
            vector_effect="non-scaling-stroke",
        )
    )
    return picture("".join(parts), WIDTH, HEIGHT, says, class_="lot-bar")
