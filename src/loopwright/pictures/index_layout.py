"""What the numbers of an index picture stand for: paper, body, lines, and for each role its shades."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.colour import lightness, linear_from_srgb, read_hex, read_hexes, srgb_from_linear
from loopwright.pictures.stitch_stamp import FACTORS, SHADES
from loopwright.pictures.svg import INK, NEUTRAL, PAPER
from loopwright.units import BadInput

__all__ = [
    "BODY",
    "COVERAGES",
    "EDGE",
    "FIRST_ROLE",
    "LINE_ON_BODY",
    "LINE_ON_PAPER",
    "MOST_ROLES",
    "PLIES",
    "ROLE_ENTRIES",
    "THROUGH",
    "colours_of_index",
]

Floats = NDArray[np.float64]

COVERAGES: Final = 4
"""Steps by which an edge covers a pixel."""
BODY: Final = 1
"""First of the body's entries: over the paper by so many quarters."""
LINE_ON_PAPER: Final = BODY + COVERAGES
LINE_ON_BODY: Final = LINE_ON_PAPER + COVERAGES
FIRST_ROLE: Final = 16
PLIES: Final = 2
"""A marl shows two of its strands side by side; other yarn has both alike."""
EDGE: Final = PLIES * SHADES
"""The outline of a part, over its role's first entry."""
THROUGH: Final = EDGE + 1
"""The line of the body behind."""
ROLE_ENTRIES: Final = PLIES * SHADES + 2
MOST_ROLES: Final = (256 - FIRST_ROLE) // ROLE_ENTRIES

BODY_COLOUR: Final = "#e4e5e4"
LINE_STRENGTH: Final = 0.62
EDGE_STRENGTH: Final = 0.5
THROUGH_STRENGTH: Final = 0.24
MARL_SPREAD: Final = 0.5
"""How far the plies of a marl stand apart, of the whole way between its strands: each is seen beside the other."""
DARK: Final = 38.0
"""Below this L* a line on the fabric is drawn lighter than it, not darker."""


def colours_of_index(roles: Sequence[str], colours: Mapping[str, Sequence[str]]) -> NDArray[np.uint8]:
    """Give the palette of an index picture, shape (256, 3): sRGB bytes.

    :param roles: in the order of the index picture.
    :param colours: the strands of each role as ``#rrggbb``; a role left out is neutral grey.
    :raises BadInput: more roles than a picture can tell apart.
    """
    if len(roles) > MOST_ROLES:
        raise BadInput(found=f"{len(roles)} roles", wanted=f"at most {MOST_ROLES} in one picture")
    paper, ink, body = (linear_from_srgb(read_hex(text)) for text in (PAPER, INK, BODY_COLOUR))
    light = np.tile(paper, (256, 1))
    for step in range(COVERAGES):
        share = (step + 1) / COVERAGES
        light[BODY + step] = _mixed(paper, body, share)
        light[LINE_ON_PAPER + step] = _mixed(paper, ink, share * LINE_STRENGTH)
        light[LINE_ON_BODY + step] = _mixed(body, ink, share * LINE_STRENGTH)
    for place, role in enumerate(roles):
        first = FIRST_ROLE + place * ROLE_ENTRIES
        light[first : first + ROLE_ENTRIES] = _of_role(colours.get(role) or (NEUTRAL,), ink)
    return np.rint(np.clip(srgb_from_linear(light), 0, 1) * 255).astype(np.uint8)


def _mixed(one: Floats, other: Floats, share: float) -> Floats:
    return one + (other - one) * share


def _of_role(strands: Sequence[str], ink: Floats) -> Floats:
    """Give the entries of one role as linear light: its plies in all shades, its outline, the line behind."""
    light = linear_from_srgb(read_hexes(strands))
    mean = light.mean(axis=0)
    plies = [light[: (len(light) + 1) // 2].mean(axis=0), light[len(light) // 2 :].mean(axis=0)]
    shown = [mean + MARL_SPREAD * (ply - (plies[0] + plies[1]) / 2) for ply in plies]
    shades = np.concatenate([_shaded(ply) for ply in shown])
    dark = float(lightness(srgb_from_linear(mean))) < DARK
    through = _mixed(mean, np.ones(3) if dark else ink, THROUGH_STRENGTH / (3 if dark else 1))
    edge = _mixed(mean, ink, EDGE_STRENGTH) if not dark else mean * (1 - EDGE_STRENGTH)
    return np.vstack((shades, edge, through))


def _shaded(light: Floats) -> Floats:
    """Give one colour in all shades; what would be brighter than white is as white as it gets."""
    return np.minimum(np.array(FACTORS)[:, None] * light, 1.0)
