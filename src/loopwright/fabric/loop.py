"""Loop length: the yarn in one stitch, from gauge and grist."""

from __future__ import annotations

import math

from loopwright.fabric.gauge import Gauge
from loopwright.fabric.structure import STRUCTURES, StructureName
from loopwright.yarn import effective_diameter_mm

__all__ = ["LOOP_RELATIVE_SD", "loop_length_mm", "plain_loop_mm", "stitch_length_mm"]

LOOP_RELATIVE_SD = 0.06
"""Error of the combined estimate for one fabric, one standard deviation: judged from the spread of the models."""
MUNDEN_KS = {"unwashed": 19.0, "unknown": 20.4, "washed": 21.6}
"""Munden's constant by state of the fabric: dry-relaxed and wet-relaxed after Munden 1959 (from memory), between
them for a fabric of unknown state."""


def loop_length_mm(gauge: Gauge, grist_tex: float | None = None, state: str = "unknown") -> float:
    r"""Give the length in mm of yarn in one stocking stitch.

    .. math:: l = \tfrac12\left(\tfrac{\pi}{2}W + 2C + \pi d\right) + \tfrac12\sqrt{K_s W C}

    with W = 100/stitches and C = 100/rows in mm and d the effective diameter. Without a grist, Munden's half
    alone. Error about 6 % (judged).

    :param gauge: stitches and rows per 10 cm; missing rows are taken as 1.38 × stitches.
    :param grist_tex: grist of the yarn, or of the strands held together.
    :param state: ``unwashed``, ``washed`` or ``unknown``.
    :raises KeyError: unknown state.
    Source: Dalidovich (about 1933), Munden, J. Textile Institute 50 (1959), both from memory; their mean and the
    constants are our calibration.
    """
    wale_mm = 100 / gauge.stitches_per_10cm
    course_mm = 100 / gauge.rows_or_usual_per_10cm
    munden = math.sqrt(MUNDEN_KS[state] * wale_mm * course_mm)
    if grist_tex is None:
        return munden
    dalidovich = math.pi / 2 * wale_mm + 2 * course_mm + math.pi * effective_diameter_mm(grist_tex)
    return (dalidovich + munden) / 2


def plain_loop_mm(gauge: Gauge, fabric: StructureName, grist_tex: float | None = None, state: str = "unknown") -> float:
    """Give the stocking stitch's loop in mm of the yarn and needle that make this gauge in any fabric.

    The fabric's stitch width and row height are first brought to those of stocking stitch by its sizes
    (:data:`~loopwright.fabric.STRUCTURES`), since the equations hold for stocking stitch; then
    :func:`loop_length_mm`.
    """
    structure = STRUCTURES[fabric]
    plain = Gauge(
        stitches_per_10cm=gauge.stitches_per_10cm * structure.width_rel,
        rows_per_10cm=None if gauge.rows_per_10cm is None else gauge.rows_per_10cm * structure.length_rel,
    )
    return loop_length_mm(plain, grist_tex, state)


def stitch_length_mm(
    gauge: Gauge, fabric: StructureName, grist_tex: float | None = None, state: str = "unknown"
) -> float:
    """Give the yarn in one stitch of a fabric in mm, from the fabric's own gauge: its loop factor × the plain loop."""
    return STRUCTURES[fabric].yarn_per_stitch * plain_loop_mm(gauge, fabric, grist_tex, state)
