"""The likeness of a yarn's colour."""

from __future__ import annotations

from loopwright.pictures.svg import INK, NEUTRAL, PAPER, band, element, picture

__all__ = ["colour_chip", "stitch_icon"]


def colour_chip(shade: str | None, name: str) -> str:
    """Draw a colour on neutral grey; a colour without a likeness is an empty field with a stroke through it.

    :param shade: ``#rrggbb`` in sRGB, or None.
    :param name: the colour's name, read aloud.
    """
    ground = band(0, 24, 0, 24, fill=NEUTRAL)
    if shade is None:
        inside = element("line", x1=4, y1=20, x2=20, y2=4, stroke=INK, stroke_width=1)
        return picture(ground + inside, 24, 24, f"{name}, no likeness given", class_="chip")
    return picture(ground + band(3, 18, 3, 18, fill=shade), 24, 24, name, class_="chip")


def stitch_icon() -> str:
    """Draw one knit stitch, the site's icon."""
    leg = "M2 3 C2 13 8 24 16 28 C16 19 9 7 2 3 Z"
    other = "M30 3 C30 13 24 24 16 28 C16 19 23 7 30 3 Z"
    inside = band(0, 32, 0, 32, fill=PAPER) + element("path", d=leg, fill=INK) + element("path", d=other, fill=INK)
    return picture(inside, 32, 32, "Loopwright", class_="icon")
