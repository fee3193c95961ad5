"""The rows of a raglan yoke, down from the neck or up from the underarm; its parts are back, front and sleeves."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from loopwright.garment.draft import Edge, Kind, Landmark, Part, Piece, Section
from loopwright.garment.draft.piece import EdgeName
from loopwright.garment.draft.section import Ends
from loopwright.garment.parts.back_neck import raise_widths, raised_back
from loopwright.garment.parts.band import Stretch
from loopwright.garment.parts.parted import PARTS, PartChange, PartedNeedle
from loopwright.garment.parts.raglan_counts import RaglanCounts, shaping_rows
from loopwright.garment.parts.raglan_neck import FrontNeck, NeckChange
from loopwright.garment.parts.yoke_counts import Meeting
from loopwright.garment.shaping import ShortRows
from loopwright.garment.wanted import Brief

__all__ = ["RaglanPlan", "neck_edges", "raglan_yoke"]


@dataclass(frozen=True, slots=True)
class RaglanPlan:
    """All counts of a raglan.

    :ivar raised: short rows of the back neck, over :attr:`raised_over` stitches.
    """

    counts: RaglanCounts
    meeting: Meeting
    neck: FrontNeck
    raised: ShortRows

    @property
    def at_neck(self) -> dict[str, int]:
        """Give the stitches of each part at the neck."""
        top = self.counts.top
        return dict(zip(PARTS, (self.counts.neck, self.neck.top, top, top), strict=True))

    @property
    def raised_over(self) -> int:
        """Give the stitches of the back and of the half of each sleeve's top that lies towards it."""
        return self.counts.neck + self.counts.top // 2 * 2

    @property
    def at_underarm(self) -> dict[str, int]:
        """Give the stitches of each part at the underarm."""
        meeting = self.meeting
        return dict(zip(PARTS, (meeting.back, meeting.front, meeting.sleeve, meeting.sleeve), strict=True))


def _line_changes(plan: RaglanPlan, *, up: bool) -> dict[int, list[PartChange]]:
    """Give what is done along the four lines, by rows of the whole yoke."""
    counts, kind = plan.counts, Kind.DECREASE if up else Kind.INCREASE
    by_row: dict[int, list[PartChange]] = {}
    for times, parts in ((counts.body_times, PARTS[:2]), (counts.sleeve_times, PARTS[2:])):
        for row in shaping_rows(counts.rows, times, up=up):
            by_row.setdefault(row, []).append((kind, "lines", dict.fromkeys(parts, 2)))
    return by_row


def _on_front(changes: list[NeckChange], from_row: int) -> dict[int, list[PartChange]]:
    by_row: dict[int, list[PartChange]] = {}
    for row, kind, side, stitches in changes:
        by_row.setdefault(from_row + row, []).append((kind, side, {"front": stitches}))
    return by_row


def _work(needle: PartedNeedle, rows: range, *changes: dict[int, list[PartChange]]) -> PartedNeedle:
    for row in rows:
        needle.row(*(one for by_row in changes for one in by_row.get(row, ())))
    return needle


def raglan_yoke(brief: Brief, plan: RaglanPlan, *, up: bool) -> Piece:
    """Give the yoke: worked to and fro as deep as the front neck, in the round below it unless it opens in front."""
    sections = _upwards(brief, plan) if up else _downwards(brief, plan)
    ends = (sections[0].key, 0), (sections[-1].key, sections[-1].rows)
    neck, underarm = reversed(ends) if up else ends
    marks = (Landmark("neck", *neck), Landmark("underarm", *underarm))
    return Piece("yoke", "yoke", "bottom up" if up else "top down", sections, marks)


def _wedge(brief: Brief, plan: RaglanPlan, first: int, *, up: bool, after: str | None) -> Section:
    widths = np.array(raise_widths(plan.raised, plan.raised_over, up=up), dtype=np.int64)
    back = np.minimum(widths, plan.counts.neck)
    sleeve = (widths - back) // 2
    parts = tuple(Part(*one) for one in zip(PARTS, (back, 0 * back, sleeve, sleeve), strict=True))
    if up:
        return raised_back(
            brief, first, tuple(widths.tolist()), parts=parts, begins="carried on", ends="cast off", after=after
        )
    return raised_back(brief, first, tuple(widths.tolist()), parts=parts)


def _downwards(brief: Brief, plan: RaglanPlan) -> tuple[Section, ...]:
    neck, rows, is_open = plan.neck, plan.counts.rows, brief.options.opens_in_front
    lines = _line_changes(plan, up=False)
    sections: list[Section] = []
    if plan.raised.pairs:
        sections.append(_wedge(brief, plan, sum(plan.at_neck.values()), up=False, after=None))
    now = plan.at_neck
    if neck.rows:
        needle = _work(PartedNeedle(now, in_the_round=False), range(neck.rows), lines, _on_front(neck.downwards(), 0))
        sections.append(_carried(needle, "upper yoke", brief, sections))
        now = needle.now
    half = neck.centre // 2
    joined: list[NeckChange] = [(0, Kind.CAST_ON, "middle", neck.centre)]
    if is_open:
        joined = [(0, Kind.CAST_ON, "right", half), (1, Kind.CAST_ON, "left", half)]
    needle = PartedNeedle(now, in_the_round=not is_open)
    _work(needle, range(neck.rows, rows), _on_front(joined, neck.rows), lines)
    sections.append(_carried(needle, "yoke", brief, sections))
    return tuple(sections)


def _carried(needle: PartedNeedle, key: str, brief: Brief, before: list[Section]) -> Section:
    """Give what was knitted as a section that carries on the last one, or is cast on if it is the first."""
    if not before:
        return needle.section(key, key, brief.fabric, brief.gauge)
    return needle.section(key, key, brief.fabric, brief.gauge, begins="carried on", after=before[-1].key)


def _upwards(brief: Brief, plan: RaglanPlan) -> tuple[Section, ...]:
    neck, rows = plan.neck, plan.counts.rows
    lines, raised = _line_changes(plan, up=True), plan.raised.pairs > 0
    apart = rows - neck.rows
    needle = PartedNeedle(plan.at_underarm, in_the_round=not brief.options.opens_in_front)
    _work(needle, range(apart), lines)
    last: Ends = "carried on" if raised else "cast off"
    ends: Ends = "carried on" if neck.rows else last
    fabric = (brief.fabric, brief.gauge)
    sections = [needle.section("yoke", "yoke", *fabric, begins="carried on", ends=ends, closed=neck.centre)]
    if neck.rows:
        now = {**needle.now, "front": needle.now["front"] - neck.centre}
        needle = PartedNeedle(now, in_the_round=False)
        _work(needle, range(apart, rows), lines, _on_front(neck.upwards(), apart))
        sections.append(
            needle.section("upper yoke", "upper yoke", *fabric, begins="carried on", ends=last, after="yoke")
        )
    if raised:
        sections.append(_wedge(brief, plan, sum(plan.at_neck.values()), up=True, after=sections[-1].key))
    return tuple(sections)


def neck_edges(brief: Brief, plan: RaglanPlan, yoke: Piece) -> list[Stretch]:
    """Give the neck edge all round, from the middle of the front over the back to the middle of the front."""
    up, gauge = yoke.direction == "bottom up", brief.gauge
    top = yoke.sections[-1 if up else 0]
    stitches = sum(plan.at_neck.values())
    across = Stretch(Edge("yoke", top.key, "end" if up else "begin", stitches), gauge.width_cm(stitches))
    if not plan.neck.rows:
        return [across]
    side = plan.neck.side_cm(gauge)
    right, left = (Stretch(Edge("yoke", "upper yoke", name, plan.neck.rows), side) for name in ("right", "left"))
    middle: EdgeName = "closed" if up else "begin"
    centre = plan.neck.centre // 2 if brief.options.opens_in_front else plan.neck.centre
    bottom = [Stretch(Edge("yoke", "yoke", middle, centre), gauge.width_cm(centre))] if centre else []
    return [*bottom, right, across, left, *(bottom if brief.options.opens_in_front else ())]
