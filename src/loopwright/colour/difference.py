"""Colour difference: CIE76 and CIEDE2000 over any number of pairs.

CIEDE2000 is fitted to small differences, under about 5. For larger ones it still ranks, but the figures are no more
than a scale. Evidence of what a figure means stands in ``data/colour/limits.csv``.
"""

from __future__ import annotations

from typing import Final

import numpy as np
import numpy.typing as npt

from loopwright.colour.spaces import Floats

__all__ = ["delta_e_cie76", "delta_e_ciede2000", "difference_matrix"]

_CHUNK: Final = 8192
"""Pairs that are worked on at a time: the intermediate values then stay in the processor's cache."""
_25_TO_7: Final = 25.0**7


def delta_e_cie76(first: npt.ArrayLike, second: npt.ArrayLike) -> Floats:
    """Give the CIE 1976 difference, the distance in CIELAB: ``ΔE*ab = sqrt(ΔL*² + Δa*² + Δb*²)``.

    :param first, second: CIELAB, shapes (..., 3) that broadcast.
    :returns: shape (...).
    """
    apart = np.asarray(first, dtype=np.float64) - np.asarray(second, dtype=np.float64)
    squared: Floats = np.einsum("...i,...i->...", apart, apart)
    return np.sqrt(squared)


def delta_e_ciede2000(first: npt.ArrayLike, second: npt.ArrayLike) -> Floats:
    """Give the CIEDE2000 difference with kL = kC = kH = 1.

    ``ΔE00 = sqrt((ΔL'/SL)² + (ΔC'/SC)² + (ΔH'/SH)² + RT (ΔC'/SC)(ΔH'/SH))``

    Memory beyond the result stays the same however many pairs there are. Where two hues lie exactly opposite the
    formula itself has a jump.

    :param first, second: CIELAB, shapes (..., 3) that broadcast; ``labs[:, None], labs`` gives every pair.
    :returns: shape (...), an array of no dimension for one pair.
    :raises ValueError: the shapes do not go together.
    Source: G. Sharma, W. Wu, E. N. Dalal, Color Research and Application 30(1), 2005, 21-30.
    """
    one, other = np.broadcast_arrays(np.asarray(first, dtype=np.float64), np.asarray(second, dtype=np.float64))
    if one.ndim == 0 or one.shape[-1] != 3:
        raise ValueError(f"found the shape {one.shape}; wanted (..., 3)")
    result = np.empty(one.shape[:-1])
    _fill(result, one, other)
    return result


def difference_matrix(labs: npt.ArrayLike) -> Floats:
    """Give CIEDE2000 between every two of n colours.

    :param labs: CIELAB, shape (n, 3).
    :returns: shape (n, n), symmetric, nought on the diagonal.
    """
    colours = np.asarray(labs, dtype=np.float64)
    matrix = delta_e_ciede2000(colours[:, None], colours[None, :])
    return np.asarray(np.maximum(matrix, matrix.T), dtype=np.float64)


def _fill(result: Floats, one: Floats, other: Floats) -> None:
    """Compute into ``result``, halving the longest axis until a part is small."""
    if result.size <= _CHUNK:
        result[...] = _ciede2000(one, other)
        return
    axis = int(np.argmax(result.shape))
    half = result.shape[axis] // 2
    for part in (slice(None, half), slice(half, None)):
        where = (slice(None),) * axis + (part,)
        _fill(result[where], one[where], other[where])


def _hue(a: Floats, b: Floats) -> Floats:
    """Give the hue angle in degrees, 0 to 360."""
    degrees: Floats = np.arctan2(b, a)
    degrees *= 180 / np.pi
    degrees += 360.0 * (degrees < 0)
    return degrees


def _share(chroma: Floats) -> Floats:
    """Give ``sqrt(C⁷ / (C⁷ + 25⁷))``."""
    square = chroma * chroma
    seventh = square * square * square * chroma
    return np.asarray(np.sqrt(seventh / (seventh + _25_TO_7)))


def _ciede2000(one: Floats, other: Floats) -> Floats:
    l1, a1, b1 = np.moveaxis(one, -1, 0).reshape(3, -1)
    l2, a2, b2 = np.moveaxis(other, -1, 0).reshape(3, -1)
    mean_c = (np.sqrt(a1 * a1 + b1 * b1) + np.sqrt(a2 * a2 + b2 * b2)) / 2
    stretch = 1.5 - 0.5 * _share(mean_c)
    a1, a2 = a1 * stretch, a2 * stretch
    c1, c2 = np.sqrt(a1 * a1 + b1 * b1), np.sqrt(a2 * a2 + b2 * b2)
    step, mean_h = _hue_step_and_mean(_hue(a1, b1), _hue(a2, b2))
    d_h = 2 * np.sqrt(c1 * c2) * np.sin(step * (np.pi / 360))
    mean_c = (c1 + c2) / 2
    squared_l = ((l1 + l2) / 2 - 50) ** 2
    in_l = (l2 - l1) / (1 + 0.015 * squared_l / np.sqrt(20 + squared_l))
    in_c = (c2 - c1) / (1 + 0.045 * mean_c)
    in_h = d_h / (1 + 0.015 * mean_c * _hue_weight(mean_h))
    blue = (mean_h - 275) / 25
    turn = -2 * _share(mean_c) * np.sin((np.pi / 3) * np.exp(-blue * blue))
    total = in_l * in_l + in_c * in_c + in_h * in_h + turn * in_c * in_h
    difference: Floats = np.sqrt(np.maximum(total, 0)).reshape(one.shape[:-1])
    return difference


def _hue_step_and_mean(h1: Floats, h2: Floats) -> tuple[Floats, Floats]:
    """Give the step from one hue to the other by the shorter way, and the hue halfway.

    The paper has its own rule where one colour is grey. It is not needed: ΔH' is then nought, and no other term of the
    sum depends on hue.
    """
    step = h2 - h1
    total = h1 + h2
    around = np.abs(step) > 180
    mean = total / 2
    mean += np.where(total < 360, 180.0, -180.0) * around
    step -= np.copysign(360.0, step) * around
    return step, mean


def _hue_weight(mean_h: Floats) -> Floats:
    """Give T: ``1 − 0.17 cos(h − 30°) + 0.24 cos 2h + 0.32 cos(3h + 6°) − 0.20 cos(4h − 63°)``."""
    angle = mean_h * (np.pi / 180)
    cos1, sin1 = np.cos(angle), np.sin(angle)
    cos2, sin2 = 2 * cos1 * cos1 - 1, 2 * sin1 * cos1
    cos3, sin3 = cos2 * cos1 - sin2 * sin1, sin2 * cos1 + cos2 * sin1
    cos4, sin4 = 2 * cos2 * cos2 - 1, 2 * sin2 * cos2
    weight = 1 - 0.17 * (_C30 * cos1 + _S30 * sin1) + 0.24 * cos2
    weight += 0.32 * (_C6 * cos3 - _S6 * sin3) - 0.20 * (_C63 * cos4 + _S63 * sin4)
    return np.asarray(weight)


_C30, _C6, _C63 = (float(np.cos(np.radians(angle))) for angle in (30, 6, 63))
_S30, _S6, _S63 = (float(np.sin(np.radians(angle))) for angle in (30, 6, 63))
