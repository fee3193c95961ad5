"""Colour spaces: sRGB, linear light, XYZ, CIELAB and OKLab, each over whole arrays at once.

Every function takes anything that numpy reads as an array of shape (..., 3) and gives a new array of that shape. The
white is D65 for the 2° observer throughout, so a grey has ``a* = b* = 0``. Nothing is clipped: a colour that no screen
can show comes out with sRGB values outside 0 to 1.

Sources: IEC 61966-2-1:1999 (sRGB); CIE 15 (CIELAB 1976); Björn Ottosson, "A perceptual color space for image
processing", 2020 (OKLab).
"""

from __future__ import annotations

from typing import Final, TypeAlias

import numpy as np
import numpy.typing as npt

__all__ = [
    "WHITE_XYZ",
    "Floats",
    "lab_from_lch",
    "lab_from_srgb",
    "lab_from_xyz",
    "lch_from_lab",
    "lightness",
    "linear_from_oklab",
    "linear_from_srgb",
    "linear_from_xyz",
    "luminance",
    "oklab_from_linear",
    "oklab_from_srgb",
    "srgb_from_lab",
    "srgb_from_linear",
    "srgb_from_oklab",
    "xyz_from_lab",
    "xyz_from_linear",
]

Floats: TypeAlias = npt.NDArray[np.float64]
"""An array of 64-bit floats; the shape stands in the docstring."""

_PRIMARIES_XY: Final = ((0.64, 0.33), (0.30, 0.60), (0.15, 0.06))
"""Red, green and blue of sRGB as CIE x, y (IEC 61966-2-1)."""
_WHITE_XY: Final = (0.3127, 0.3290)
"""D65 as the same standard prints it."""


def _xyz_of_xy(x: float, y: float) -> Floats:
    """Give X, Y, Z of a chromaticity at Y = 1."""
    return np.array([x / y, 1.0, (1 - x - y) / y])


WHITE_XYZ: Final = _xyz_of_xy(*_WHITE_XY)
"""X, Y, Z of white, Y = 1."""


def _xyz_matrix() -> Floats:
    """Derive linear sRGB → XYZ from the primaries, so that (1, 1, 1) becomes the white exactly."""
    primaries = np.stack([_xyz_of_xy(*xy) for xy in _PRIMARIES_XY], axis=1)
    scaled: Floats = primaries * np.linalg.solve(primaries, WHITE_XYZ)
    return scaled


_XYZ_OF_LINEAR: Final = _xyz_matrix()
_LINEAR_OF_XYZ: Final = np.linalg.inv(_XYZ_OF_LINEAR)

_CONES_OF_LINEAR: Final = np.array(
    [
        [0.4122214708, 0.5363325363, 0.0514459929],
        [0.2119034982, 0.6806995451, 0.1073969566],
        [0.0883024619, 0.2817188376, 0.6299787005],
    ]
)
_OKLAB_OF_CONES: Final = np.array(
    [
        [0.2104542553, 0.7936177850, -0.0040720468],
        [1.9779984951, -2.4285922050, 0.4505937099],
        [0.0259040371, 0.7827717662, -0.8086757660],
    ]
)
_LINEAR_OF_CONES: Final = np.linalg.inv(_CONES_OF_LINEAR)
_CONES_OF_OKLAB: Final = np.linalg.inv(_OKLAB_OF_CONES)

_LAB_E: Final = 216 / 24389
_LAB_K: Final = 24389 / 27


def _triples(values: npt.ArrayLike) -> Floats:
    """Give the values as an array.

    :raises ValueError: the last axis does not hold three.
    """
    array = np.asarray(values, dtype=np.float64)
    if array.ndim == 0 or array.shape[-1] != 3:
        raise ValueError(f"found the shape {array.shape}; wanted (..., 3)")
    return array


def _times(matrix: npt.NDArray[np.floating], values: npt.NDArray[np.floating]) -> Floats:
    """Apply a 3 × 3 matrix to each triple."""
    return np.asarray(values @ matrix.T, dtype=np.float64)


def linear_from_srgb(srgb: npt.ArrayLike) -> Floats:
    """Decode sRGB to linear light.

    ``L = V / 12.92`` up to V = 0.04045, else ``((V + 0.055) / 1.055) ** 2.4``.

    :param srgb: shape (..., 3), 0 to 1, a stored byte over 255.
    :returns: the share of each primary's full light, 0 to 1.
    :raises ValueError: the last axis does not hold three.
    """
    stored = _triples(srgb)
    curved = ((np.maximum(stored, 0.04045) + 0.055) / 1.055) ** 2.4
    return np.where(stored <= 0.04045, stored / 12.92, curved)


def srgb_from_linear(linear: npt.ArrayLike) -> Floats:
    """Encode linear light as sRGB.

    ``V = 12.92 L`` up to L = 0.0031308, else ``1.055 L ** (1/2.4) − 0.055``.

    :param linear: shape (..., 3), 0 to 1.
    :returns: sRGB 0 to 1, not clipped.
    :raises ValueError: the last axis does not hold three.
    """
    light = _triples(linear)
    curved = 1.055 * np.maximum(light, 0.0031308) ** (1 / 2.4) - 0.055
    return np.where(light <= 0.0031308, 12.92 * light, curved)


def xyz_from_linear(linear: npt.ArrayLike) -> Floats:
    """Give XYZ of linear sRGB, shape (..., 3); white is (0.9505, 1, 1.0891).

    The matrix is derived from the primaries, not the four decimals that the standard prints.
    """
    return _times(_XYZ_OF_LINEAR, _triples(linear))


def linear_from_xyz(xyz: npt.ArrayLike) -> Floats:
    """Give linear sRGB of XYZ, shape (..., 3), Y of white = 1; not clipped."""
    return _times(_LINEAR_OF_XYZ, _triples(xyz))


def luminance(srgb: npt.ArrayLike) -> Floats:
    """Give the relative luminance Y of sRGB.

    :param srgb: shape (..., 3), 0 to 1.
    :returns: shape (...), 0 for black to 1 for white.
    """
    light: Floats = linear_from_srgb(srgb) @ _XYZ_OF_LINEAR[1]
    return light


def lab_from_xyz(xyz: npt.ArrayLike) -> Floats:
    """Give CIELAB (L*, a*, b*) of XYZ.

    ``L* = 116 f(Y/Yn) − 16``, ``a* = 500 (f(X/Xn) − f(Y/Yn))``, ``b* = 200 (f(Y/Yn) − f(Z/Zn))``, where ``f`` is the
    cube root above 216/24389 and ``(24389/27 t + 16) / 116`` below.

    :param xyz: shape (..., 3), Y of white = 1.
    """
    relative = _triples(xyz) / WHITE_XYZ
    f = np.where(relative > _LAB_E, np.cbrt(relative), (_LAB_K * relative + 16) / 116)
    x, y, z = np.moveaxis(f, -1, 0)
    return np.stack([116 * y - 16, 500 * (x - y), 200 * (y - z)], axis=-1)


def xyz_from_lab(lab: npt.ArrayLike) -> Floats:
    """Give XYZ of CIELAB, shape (..., 3): the inverse of :func:`lab_from_xyz`."""
    light, a, b = np.moveaxis(_triples(lab), -1, 0)
    y = (light + 16) / 116
    f = np.stack([y + a / 500, y, y - b / 200], axis=-1)
    cubed = f**3
    relative: Floats = np.where(cubed > _LAB_E, cubed, (116 * f - 16) / _LAB_K) * WHITE_XYZ
    return relative


def lch_from_lab(lab: npt.ArrayLike) -> Floats:
    """Give lightness, chroma and hue angle of CIELAB (CIELCh) or of OKLab (OKLCh).

    ``C = hypot(a, b)``, ``h = atan2(b, a)`` in degrees, 0 to 360.

    :param lab: shape (..., 3).
    """
    light, a, b = np.moveaxis(_triples(lab), -1, 0)
    return np.stack([light, np.hypot(a, b), np.degrees(np.arctan2(b, a)) % 360], axis=-1)


def lab_from_lch(lch: npt.ArrayLike) -> Floats:
    """Give L, a, b of lightness, chroma and hue angle in degrees: the inverse of :func:`lch_from_lab`."""
    light, chroma, hue = np.moveaxis(_triples(lch), -1, 0)
    angle = np.radians(hue)
    return np.stack([light, chroma * np.cos(angle), chroma * np.sin(angle)], axis=-1)


def oklab_from_linear(linear: npt.ArrayLike) -> Floats:
    """Give OKLab (L, a, b) of linear sRGB: ``M2 · cbrt(M1 · rgb)``.

    :param linear: shape (..., 3).
    :returns: L from 0 to 1, a and b within about ±0.4.
    """
    return _times(_OKLAB_OF_CONES, np.cbrt(_times(_CONES_OF_LINEAR, _triples(linear))))


def linear_from_oklab(oklab: npt.ArrayLike) -> Floats:
    """Give linear sRGB of OKLab, shape (..., 3): the inverse of :func:`oklab_from_linear`; not clipped."""
    return _times(_LINEAR_OF_CONES, _times(_CONES_OF_OKLAB, _triples(oklab)) ** 3)


def lab_from_srgb(srgb: npt.ArrayLike) -> Floats:
    """Give CIELAB of sRGB, shape (..., 3), 0 to 1."""
    return lab_from_xyz(xyz_from_linear(linear_from_srgb(srgb)))


def srgb_from_lab(lab: npt.ArrayLike) -> Floats:
    """Give sRGB of CIELAB, shape (..., 3); outside 0 to 1 where no screen can show it."""
    return srgb_from_linear(linear_from_xyz(xyz_from_lab(lab)))


def lightness(srgb: npt.ArrayLike) -> Floats:
    """Give L* of sRGB, shape (...), 0 for black to 100 for white; 50 is 18 % of the light."""
    light: Floats = lab_from_srgb(srgb)[..., 0]
    return light


def oklab_from_srgb(srgb: npt.ArrayLike) -> Floats:
    """Give OKLab of sRGB, shape (..., 3), 0 to 1."""
    return oklab_from_linear(linear_from_srgb(srgb))


def srgb_from_oklab(oklab: npt.ArrayLike) -> Floats:
    """Give sRGB of OKLab, shape (..., 3); outside 0 to 1 where no screen can show it."""
    return srgb_from_linear(linear_from_oklab(oklab))
