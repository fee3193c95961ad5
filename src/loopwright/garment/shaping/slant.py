"""Slanted edges: their true length, and the height that a length needs.

Source: Pythagoras, as magazine articles use it for sleeve caps and necks: a V of 8 in with 3.6 in of run is 8.77 in.
"""

from __future__ import annotations

import math

from loopwright.units import BadInput, told

__all__ = ["slant_rise_cm", "slanted_length_cm"]


def slanted_length_cm(run_cm: float, rise_cm: float) -> float:
    """Give the length of an edge: √(run² + rise²).

    :param run_cm, rise_cm: across and upwards; 0 or more.
    Source: Pythagoras.
    """
    return math.hypot(run_cm, rise_cm)


def slant_rise_cm(length_cm: float, run_cm: float) -> float:
    """Give the height of an edge of a given length: √(length² − run²).

    :raises BadInput: when the edge is shorter than its run.
    Source: Pythagoras; a cap's slope of 6.715 in over 4 in rises 5.39 in.
    """
    if length_cm < run_cm:
        raise BadInput(
            found=told("a slanted edge of {} over {}", length_cm, run_cm),
            wanted="an edge no shorter than the width that it crosses",
        )
    return math.sqrt((length_cm - run_cm) * (length_cm + run_cm))
