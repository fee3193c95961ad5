"""Raglan: body and sleeves grow out of one yoke along four slanting lines, in one piece.

Order of preference: bust, upper arm, depth of the yoke, neck; back and front are always alike (the weights stand in
:mod:`loopwright.garment.parts.raglan_counts`); then length, and the depth of the front neck. The armhole's depth is
measured straight down from the neck end of the shoulder, which lies in the middle of a sleeve's top: rows of the lines
and half the sleeve's top together. ``neck_width`` is the back neck between the lines.

Sources: *Knitting from the Top* (1972) for the set-up, the percentage system for the underarm, a designer's article of
2013 for the depth. Lines are pairs of neighbouring stitches; no stitch is set apart for them.
"""

from __future__ import annotations

from loopwright.garment.draft import Draft, lawful
from loopwright.garment.parts.back_neck import raise_rows
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.girth import head_passes, narrow_neck
from loopwright.garment.parts.raglan_counts import (
    RaglanCounts,
    RaglanTargets,
    is_joined_at_once,
    raglan_counts,
    sleeve_top,
)
from loopwright.garment.parts.raglan_neck import FrontNeck, front_neck
from loopwright.garment.parts.raglan_rows import RaglanPlan, neck_edges, raglan_yoke
from loopwright.garment.parts.yoke_body import refuse_options
from loopwright.garment.parts.yoke_counts import Meeting, bust_of_yoke, front_band
from loopwright.garment.parts.yoke_whole import garment_of_yoke
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, Told, told

__all__ = ["draft_raglan"]


def draft_raglan(brief: Brief) -> Draft:
    """Give the draft of a raglan, from the neck down or, if so chosen, from hem and cuffs up.

    A closed one is worked in the round but for the depth of its front neck and the short rows that raise its back; one
    that opens in front to and fro in one piece, its sleeves in the round.

    :param brief: every measure of a top stated (:func:`~loopwright.garment.wanted.usual_measures` fills in).
    :raises BadInput: measures that cannot make it, or options that it cannot honour: flat in pieces, no sleeves, short
        rows at the bust, a boat neck, which runs along shoulders that a raglan has not.
    """
    refuse_options(brief, ("round", "V", "high"))
    measured = Measured(brief.measures, brief.gauge)
    plan = _plan(brief, measured)
    yoke = raglan_yoke(brief, plan, up=brief.options.direction == "bottom up")
    depth_cm, edges = plan.counts.depth_cm(brief.gauge), neck_edges(brief, plan, yoke)
    return lawful(garment_of_yoke(brief, yoke, plan.meeting, depth_cm, edges, measured, _notes(plan)))


def _plan(brief: Brief, measured: Measured) -> RaglanPlan:
    """Solve the counts, with a neck made wider, a stitch at a time, until the head passes."""
    gauge, measures = brief.gauge, brief.measures
    bust, like = bust_of_yoke(brief, measured)
    wanted = gauge.stitches_in(measures.need("neck_width"))
    row_cm = 10 / gauge.rows_or_usual_per_10cm
    for more in range(max(bust // 2 - round(wanted), 1)):
        targets = RaglanTargets(
            bust=bust,
            like=like,
            upper_arm=gauge.stitches_in(measures.need("upper_arm_girth")),
            depth_cm=measures.need("armhole_depth"),
            neck=wanted + more,
            top=sleeve_top(wanted + more, gauge.stitches_in(measures.need("front_neck_depth"))),
            gauge=gauge,
            flat=brief.options.opens_in_front,
        )
        counts = raglan_counts(targets)
        meeting = Meeting(bust, front_band(brief, counts.back), counts.underarm, counts.upper_arm)
        neck = _front(brief, counts, targets, counts.neck - meeting.band)
        opening = neck.edge_cm(gauge) + gauge.width_cm(counts.neck + 2 * counts.top)
        if head_passes(opening, brief):
            break
    else:
        raise narrow_neck(opening, brief, "a deeper neck, a wider bust, or an opening in front")
    _note(brief, counts, neck, measured, widened=more > 0)
    raised = raise_rows(brief, _raise_cm(brief, counts), counts.neck + counts.top // 2 * 2)
    plan = RaglanPlan(counts, meeting, neck, raised)
    measured.length(
        "back_neck_depth",
        counts.half_top_cm(gauge) - raised.rows * row_cm,
        "half the top of a sleeve, less the short rows that raise it; these come in pairs",
    )
    return plan


def _front(brief: Brief, counts: RaglanCounts, targets: RaglanTargets, stitches: int) -> FrontNeck:
    """Give the front neck, as deep as wanted by whole pairs of rows.

    :raises BadInput: it would reach below the yoke.
    """
    gauge, depth_cm = brief.gauge, brief.measures.need("front_neck_depth")
    row_cm, half_top_cm = 10 / gauge.rows_or_usual_per_10cm, counts.half_top_cm(gauge)
    joined = is_joined_at_once(targets.neck, gauge.stitches_in(depth_cm))
    rows = 0 if joined else max(2 * round((depth_cm - half_top_cm) / row_cm / 2), 0)
    most = (counts.rows - 2) // 2 * 2
    if rows > most:
        raise BadInput(
            found=told("a front neck {} deep in a yoke {} deep", depth_cm, counts.depth_cm(gauge)),
            wanted=told("at most {}, or a deeper armhole", most * row_cm + half_top_cm),
            place="front_neck_depth",
        )
    return front_neck(brief.options.neckline or "round", stitches, rows)


def _raise_cm(brief: Brief, counts: RaglanCounts) -> float | None:
    """Give the raise of the back neck: as chosen, else what its depth asks for, if it is stated."""
    chosen, depth = brief.options.back_neck_raise_cm, brief.measures.back_neck_depth_cm
    if chosen is not None or depth is None:
        return chosen
    return max(counts.half_top_cm(brief.gauge) - depth, 0.0)


def _note(brief: Brief, counts: RaglanCounts, neck: FrontNeck, measured: Measured, *, widened: bool) -> None:
    gauge = brief.gauge
    depth = "worked to and fro, the yoke has whole pairs of rows"
    measured.length("armhole_depth", counts.depth_cm(gauge), depth)
    pairs = "the lines take stitches of the back in pairs, as many as the rows hold"
    measured.width("neck_width", counts.neck, "the head must pass" if widened else pairs)
    shallow = "joined at once, the front lies as low as half the top of a sleeve"
    measured.length(
        "front_neck_depth",
        neck.rows * 10 / gauge.rows_or_usual_per_10cm + counts.half_top_cm(gauge),
        "worked to and fro, the neck has whole pairs of rows" if neck.rows else shallow,
    )


def _notes(plan: RaglanPlan) -> list[Told]:
    counts = plan.counts
    notes = [
        told(
            f"The lines are shaped over {counts.rows} rows: body {counts.body_times} times, "
            f"sleeves {counts.sleeve_times} times; {counts.underarm} stitches lie under each arm."
        )
    ]
    if plan.raised.pairs:
        notes.append(
            told(
                f"Short rows raise the back neck by {plan.raised.rows} rows, over the back and the back half of "
                "each sleeve's top."
            )
        )
    return notes
