"""Reading drawings back: SVG text to elements, numbers and colours."""

from __future__ import annotations

import re
from xml.etree import ElementTree as ET

__all__ = ["HOSTILE", "colours_of", "drawn", "is_grey", "number_of", "rects", "spoken"]

_SPACE = "{http://www.w3.org/2000/svg}"
_COLOUR = re.compile(r"#[0-9a-f]{6}")
_NEUTRAL_SPREAD = 6
"""How far apart the channels of a neutral grey may lie, of 255; our judgement."""

HOSTILE = "</title><script>alert('1')</script> \"Tar\" & 'n'"


def drawn(svg: str) -> ET.Element:
    """The drawing as a tree; text that is not well-formed XML fails the test."""
    root = ET.fromstring(svg)
    assert root.tag == f"{_SPACE}svg"
    return root


def rects(root: ET.Element) -> list[ET.Element]:
    return root.findall(f"{_SPACE}rect")


def number_of(element: ET.Element, name: str) -> float:
    return float(element.attrib[name])


def spoken(root: ET.Element) -> tuple[str | None, str | None]:
    """What is read aloud: the title and the label."""
    return root.findtext(f"{_SPACE}title"), root.get("aria-label")


def colours_of(svg: str) -> set[str]:
    """Every colour of a drawing, which must all be written as ``#rrggbb``."""
    root = drawn(svg)
    used = {element.get(name) for element in root.iter() for name in ("fill", "stroke")} - {None, "none"}
    colours = {colour for colour in used if colour is not None}
    assert all(_COLOUR.fullmatch(colour) for colour in colours)
    return colours


def is_grey(colour: str) -> bool:
    channels = [int(colour[at : at + 2], 16) for at in (1, 3, 5)]
    return max(channels) - min(channels) <= _NEUTRAL_SPREAD
