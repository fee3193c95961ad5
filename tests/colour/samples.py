"""Colours for properties."""

import numpy as np
from hypothesis import strategies as st

from loopwright.colour import Floats

__all__ = ["bytes_srgb", "labs", "srgbs", "table_of"]

_share = st.floats(0, 1, allow_subnormal=False)
_axis = st.floats(-120, 120, allow_subnormal=False)

srgbs = st.tuples(_share, _share, _share).map(np.array)
"""Any sRGB colour, shape (3,)."""
labs = st.tuples(st.floats(0, 100, allow_subnormal=False), _axis, _axis).map(np.array)
"""Any CIELAB colour, shape (3,), also such as no screen can show."""
bytes_srgb = st.tuples(*[st.integers(0, 255)] * 3)
"""Three bytes."""


def table_of(number: int, seed: int) -> Floats:
    """So many colours of sRGB, the same for the same seed."""
    return np.random.default_rng(seed).random((number, 3))
