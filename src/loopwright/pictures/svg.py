"""SVG elements as text."""

from __future__ import annotations

from html import escape

__all__ = ["INK", "NEUTRAL", "PAPER", "band", "element", "number", "picture", "upright"]

INK = "#1f2021"
PAPER = "#fbfbfa"
NEUTRAL = "#a3a3a2"
"""Middle grey, on which yarn colours are judged."""


def number(value: float) -> str:
    """Write a coordinate with at most two decimals, so that equal drawings are equal text."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def element(name: str, inside: str = "", **attributes: str | float) -> str:
    """Give one element; underscores in attribute names become hyphens, every value is escaped."""
    written = "".join(
        f' {key.rstrip("_").replace("_", "-")}="{escape(number(value) if isinstance(value, int | float) else value)}"'
        for key, value in attributes.items()
    )
    return f"<{name}{written}>{inside}</{name}>" if inside else f"<{name}{written}/>"


def band(x: float, width: float, y: float, height: float, *, fill: str, fill_opacity: float = 1) -> str:
    """Give a rectangle; a negative width is drawn as none."""
    return element("rect", x=x, y=y, width=max(width, 0.0), height=height, fill=fill, fill_opacity=fill_opacity)


def upright(x: float, height: float, *, stroke: str, stroke_width: float, **attributes: str | float) -> str:
    """Give a line from top to bottom that keeps its width when the drawing is stretched."""
    return element(
        "line",
        "",
        x1=x,
        x2=x,
        y1=0,
        y2=height,
        stroke=stroke,
        **attributes,
        stroke_width=stroke_width,
        vector_effect="non-scaling-stroke",
    )


def picture(inside: str, width: float, height: float, says: str, *, class_: str, keep_shape: bool = False) -> str:
    """Give a whole drawing; ``says`` is read aloud instead of it.

    :param keep_shape: whether it keeps its proportions; else it stretches sideways to its place.
    """
    return element(
        "svg",
        element("title", escape(says)) + inside,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {number(width)} {number(height)}",
        preserveAspectRatio="xMidYMin meet" if keep_shape else "none",
        role="img",
        aria_label=says,
        class_=class_,
    )
