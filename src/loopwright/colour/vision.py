"""How colours look to other eyes: the three kinds of colour-vision deficiency, and in grey.

The simulation is a model of an average eye. It shows where two colours may fall together, not what one person sees;
for tritan sight it is an approximation by its authors' own word.
"""

from __future__ import annotations

from typing import Final, Literal, TypeAlias

import numpy as np
import numpy.typing as npt

from loopwright.colour.spaces import Floats, linear_from_srgb, luminance, srgb_from_linear
from loopwright.data import table
from loopwright.units import BadInput

__all__ = ["SEVERITIES", "VISIONS", "Vision", "as_seen", "grey_view", "vision_matrix"]

Vision: TypeAlias = Literal["protan", "deutan", "tritan"]
"""Whose cones differ: those for long (protan), middle (deutan) or short (tritan) wavelengths."""

VISIONS: Final[tuple[Vision, ...]] = ("protan", "deutan", "tritan")

_MATRICES: Final = {
    (row["kind"], float(row["severity"])): np.array(
        [[float(row[f"m{line}{column}"]) for column in (1, 2, 3)] for line in (1, 2, 3)]
    )
    for row in table("colour/vision_matrices.csv")
}
SEVERITIES: Final = tuple(sorted({severity for _, severity in _MATRICES}))
"""The severities of the packaged table, 1 for a cone that is missing."""


def vision_matrix(kind: Vision, severity: float = 1.0) -> Floats:
    """Give the matrix that turns linear sRGB into what is seen; its rows add up to 1 within 1e-6.

    :raises BadInput: the table has no such kind or severity. Values between two severities are not made up.
    """
    if (kind, severity) not in _MATRICES:
        known = ", ".join(f"{value:g}" for value in SEVERITIES)
        raise BadInput(f"{kind} {severity:g}", f"{', '.join(VISIONS)} at the severity {known}")
    return _MATRICES[kind, severity].copy()


def as_seen(srgb: npt.ArrayLike, kind: Vision, severity: float = 1.0) -> Floats:
    """Give colours as an eye with a colour-vision deficiency sees them.

    The matrix is applied to linear light, then what no screen can show is clipped.

    :param srgb: shape (..., 3), 0 to 1.
    :param severity: one of :data:`SEVERITIES`.
    :returns: sRGB, shape (..., 3), 0 to 1.
    :raises BadInput: the table has no such kind or severity.
    Source: Machado, Oliveira and Fernandes 2009; ``data/colour/vision_matrices.csv``.
    """
    light = linear_from_srgb(srgb) @ vision_matrix(kind, severity).T
    return srgb_from_linear(np.clip(light, 0, 1))


def grey_view(srgb: npt.ArrayLike) -> Floats:
    """Give the grey with the same luminance, which has the same L*.

    A camera's or an image program's grey goes by other formulas, so it may order two colours the other way round.

    :param srgb: shape (..., 3), 0 to 1.
    :returns: sRGB, shape (..., 3), three equal values.
    """
    light = luminance(srgb)[..., np.newaxis]
    return srgb_from_linear(np.repeat(light, 3, axis=-1))
