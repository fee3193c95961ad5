"""Body and sleeves below a yoke, raglan or round, knitted on from it or up to it in one piece."""

from __future__ import annotations

from dataclasses import replace

from loopwright.garment.draft import Direction, Edge, Join, Kind, Landmark, Needle, Piece, Section
from loopwright.garment.draft.piece import EdgeName
from loopwright.garment.draft.section import Side
from loopwright.garment.parts.band import Stretch
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.edge import edge_after, edge_before
from loopwright.garment.parts.parted import on_lines
from loopwright.garment.parts.sleeve import SleevePlan, sleeve_down, sleeve_plan, sleeve_up
from loopwright.garment.parts.suited import refuse_unsuited
from loopwright.garment.parts.taper import taper
from loopwright.garment.parts.torso import PLAIN_CM, TorsoPlan, torso_plan, torso_up
from loopwright.garment.parts.yoke_counts import Meeting
from loopwright.garment.wanted import Brief, Neckline
from loopwright.units import BadInput

__all__ = ["meeting_joins", "refuse_options", "sleeves_of_yoke", "straight_edge", "yoke_body"]

SIDES: tuple[Side, ...] = ("lines",) * 4
"""A body in one flat piece is shaped along its two side lines: a stitch on either side of each."""
SLEEVES = ("left sleeve", "right sleeve")


def refuse_options(brief: Brief, necklines: tuple[Neckline, ...]) -> None:
    """Refuse the options that a garment knitted in one piece cannot honour, saying which it can.

    :raises BadInput: worked flat in pieces, without sleeves, with bust short rows, or with another neckline.
    """
    refuse_unsuited(
        brief,
        direction=(),
        worked=("in the round",),
        opens_in_front=(),
        band=(),
        buttons=(),
        neckline=necklines,
        neckband=(),
        sleeves=("short", "three-quarter", "long"),
        hem=(),
        cuff=(),
        waist_above_hem_cm=(),
        back_neck_raise_cm=(),
        repeat=(),
    )


def yoke_body(brief: Brief, meeting: Meeting, rows: int, measured: Measured, *, up: bool) -> Piece:
    """Give the body, hem edge included, from the hem to the underarm or from the underarm to the hem."""
    flat = brief.options.opens_in_front
    plan = torso_plan(brief, meeting.body, rows, measured, share=1, edges=SIDES if flat else None, seam=-meeting.band)
    if flat:
        plan = _on_right_side_rows(plan)
    if up:
        hem = edge_before(brief.options.hem, plan.hip, brief.gauge, "hem", in_the_round=not flat)
        needle = torso_up(Needle(plan.hip, in_the_round=not flat), plan, brief)
        body = needle.section("body", "body", brief.fabric, brief.gauge, begins="carried on", after="hem")
        sections, at = (hem, on_lines(body, 2)), (0, plan.below, rows)
    else:
        needle = _from_the_underarm(meeting, plan, brief)
        body = needle.section("body", "body", brief.fabric, brief.gauge, begins="carried on")
        hem = edge_after(brief.options.hem, needle.now, brief.gauge, "hem", in_the_round=not flat, after="body")
        sections, at = (on_lines(body, 2), hem), (hem.rows, rows - plan.below, 0)
    waist = () if plan.waist is None else (Landmark("waist", "body", at[1]),)
    marks = (Landmark("hem", "hem", at[0]), *waist, Landmark("underarm", "body", at[2]))
    return Piece("body", "body", _way(up), sections, marks)


def _on_right_side_rows(plan: TorsoPlan) -> TorsoPlan:
    """Give a plan whose waist lies whole pairs of rows above the hem edge.

    :raises BadInput: too few rows for a waist.
    """
    if plan.waist is None:
        return plan
    if plan.rows < 4:
        raise BadInput(
            found=f"a waist in a body of {plan.rows} rows", wanted="at least 4, or no waist", place="waist_girth"
        )
    return replace(plan, below=max(plan.below // 2 * 2, 2))


def _way(up: bool) -> Direction:
    return "bottom up" if up else "top down"


def _from_the_underarm(meeting: Meeting, plan: TorsoPlan, brief: Brief) -> Needle:
    """Cast on at both underarms in the first row and work down to the top of the hem edge."""
    flat = plan.edges is not None
    needle = Needle(meeting.back + meeting.front, in_the_round=not flat)
    needle.row((Kind.CAST_ON, "middle", 2 * meeting.underarm), places=2)
    plain = round(PLAIN_CM * brief.gauge.rows_or_usual_per_10cm / 10)
    stages = [(plan.hip, plan.rows, "hip_girth")]
    if plan.waist is not None:
        stages = [(plan.waist, plan.rows - plan.below, "waist_girth"), (plan.hip, plan.rows, "waist_girth")]
    for to, last, place in stages:
        rest = min(plain, (last - needle.rows) // 3)
        if flat and (needle.rows + rest) % 2:
            rest += 1
        needle.plain(rest)
        taper(needle, to, last - needle.rows, step=4, edges=SIDES, place=place)
    return needle


def sleeves_of_yoke(brief: Brief, meeting: Meeting, measured: Measured, *, up: bool) -> tuple[Piece, Piece]:
    """Give both sleeves, alike, in the round: up to the underarm, or down from it with the underarm picked up."""
    plan = sleeve_plan(brief, meeting.upper_arm, measured, in_the_round=True)
    sections = sleeve_up(plan, brief) if up else _sleeve_from_the_yoke(brief, meeting, plan)
    return (
        Piece(SLEEVES[0], SLEEVES[0], _way(up), sections),
        Piece(SLEEVES[1], SLEEVES[1], _way(up), sections, mirrored=True),
    )


def _sleeve_from_the_yoke(brief: Brief, meeting: Meeting, plan: SleevePlan) -> tuple[Section, Section]:
    needle = Needle(meeting.sleeve, in_the_round=True).row((Kind.CAST_ON, "middle", meeting.underarm))
    return sleeve_down(plan, brief, needle, begins="carried on")


def meeting_joins(brief: Brief, meeting: Meeting, yoke: str, *, up: bool) -> list[Join]:
    """Join body and sleeves to the yoke, by parts, and each sleeve to the body under the arm.

    :param yoke: key of the yoke's section that meets them.
    """
    on_yoke: EdgeName = "begin" if up else "end"
    below: EdgeName = "end" if up else "begin"
    joins = []
    for piece, stitches in (
        ("body", meeting.back + meeting.front),
        *((sleeve, meeting.sleeve) for sleeve in SLEEVES),
    ):
        section = "body" if piece == "body" else "sleeve"
        edges = (Edge("yoke", yoke, on_yoke, stitches), Edge(piece, section, below, stitches))
        joins.append(Join("carried on", *(edges[::-1] if up else edges)))
    length = brief.gauge.width_cm(meeting.underarm)
    for sleeve in SLEEVES:
        edges = (
            Edge("body", "body", below, meeting.underarm),
            Edge(sleeve, "sleeve", below, meeting.underarm),
        )
        joins.append(Join("grafted", *edges) if up else Join("picked up", *edges, (length, length)))
    return joins


def straight_edge(piece: str, section: Section, side: Side) -> Stretch:
    """Give the whole left or right edge of a section whose shaping lies along lines, so that its edges are upright."""
    assert side in ("left", "right")
    return Stretch(Edge(piece, section.key, side, section.rows), section.height_cm)
