"""Sleeves: from the cuff up or from the upper arm down, flat or in the round."""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.garment.draft import Needle, Section
from loopwright.garment.draft.section import Begins, Ends
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.edge import edge_after, edge_before
from loopwright.garment.parts.taper import like_count, taper
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, told

__all__ = ["SleevePlan", "sleeve_down", "sleeve_plan", "sleeve_up"]

SLEEVE_STEP = 2
"""Stitches per shaping: one at each edge, or one on each side of the line under the arm."""


@dataclass(frozen=True, slots=True)
class SleevePlan:
    """Counts and rows of a sleeve below the underarm.

    :ivar top, wrist: stitches, seam stitches included.
    :ivar rows: from the top of the cuff to the underarm.
    """

    top: int
    wrist: int
    rows: int
    in_the_round: bool


def sleeve_plan(
    brief: Brief, top: int, measured: Measured, *, in_the_round: bool, seam: int = 0, reason: str = ""
) -> SleevePlan:
    """Give the plan of a sleeve that ends with ``top`` stitches at the underarm, seam stitches included.

    The wrist follows the upper arm in being odd or even, since the shaping comes in pairs.

    :param reason: why the upper arm is not as wide as wanted, should it not be.

    :raises BadInput: a cuff deeper than the sleeve is long, or a wrist wider than the upper arm by more than rows hold.
    """
    measures, gauge = brief.measures, brief.gauge
    wrist = like_count(gauge.stitches_in(measures.need("wrist_girth")) + seam, top, SLEEVE_STEP)
    length = measures.need("sleeve_length")
    cuff = brief.options.cuff
    row_cm = 10 / gauge.rows_or_usual_per_10cm
    cuff_rows = cuff.rows(gauge, even=not in_the_round)
    cuff_cm = cuff_rows * 10 / cuff.gauge(gauge).rows_or_usual_per_10cm
    rows = round((length - cuff_cm) / row_cm)
    if not in_the_round:
        rows = 2 * round((length - cuff_cm) / row_cm / 2)
    if rows < 2:
        raise BadInput(
            found=told("a cuff of {} on a sleeve of {}", cuff_cm, length),
            wanted=told("a sleeve of at least {}, or a shallower cuff", cuff_cm + 2 * row_cm),
            place="sleeve_length",
        )
    measured.width("upper_arm_girth", top - seam, reason)
    measured.width("wrist_girth", wrist - seam, "the sleeve is shaped in pairs, two stitches at a time")
    measured.length("sleeve_length", rows * row_cm + cuff_cm, "worked flat, cuff and sleeve have whole pairs of rows")
    return SleevePlan(top, wrist, rows, in_the_round)


def sleeve_up(plan: SleevePlan, brief: Brief, *, ends: Ends = "carried on", closed: int = 0) -> tuple[Section, Section]:
    """Give cuff and sleeve, from the cast-on edge to the underarm."""
    cuff = edge_before(brief.options.cuff, plan.wrist, brief.gauge, "cuff", in_the_round=plan.in_the_round)
    needle = Needle(plan.wrist, in_the_round=plan.in_the_round)
    taper(needle, plan.top, plan.rows, step=SLEEVE_STEP, place="sleeve_length")
    sleeve = needle.section(
        "sleeve", "sleeve", brief.fabric, brief.gauge, begins="carried on", after="cuff", ends=ends, closed=closed
    )
    return cuff, sleeve


def sleeve_down(
    plan: SleevePlan, brief: Brief, needle: Needle, *, begins: Begins, after: str | None = None
) -> tuple[Section, Section]:
    """Give sleeve and cuff, from the upper arm to the cast-off edge.

    :param needle: holds the stitches of the upper arm, with what its first rows have done; ``plan.top`` of them.
    """
    taper(needle, plan.wrist, plan.rows - needle.rows, step=SLEEVE_STEP, quick_first=False, place="sleeve_length")
    sleeve = needle.section("sleeve", "sleeve", brief.fabric, brief.gauge, begins=begins, after=after)
    cuff = edge_after(
        brief.options.cuff, needle.now, brief.gauge, "cuff", in_the_round=plan.in_the_round, after="sleeve"
    )
    return sleeve, cuff
