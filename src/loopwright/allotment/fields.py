"""Sections that must be knitted from one lot, taken as one: a smaller programme with the same answer."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from loopwright.allotment.formulation import Group, may_change, part_key
from loopwright.allotment.model import VISIBLE, Meeting, SectionDemand
from loopwright.allotment.reading import Sharing

__all__ = ["apart", "as_fields"]


def as_fields(group: Group) -> tuple[Group, dict[str, tuple[str, ...]]]:
    """Give a group in which every plain field of one part is one section, and which sections each is.

    Such sections are covered or left together and no lot changes in them or between them, so that their own doubts may
    be added in square, their shared ones in full, once and for all. Meetings of the same two fields stand as often as
    they were.
    """
    field_of = _fields(group)
    members: dict[str, list[SectionDemand]] = {}
    for section in group.sections:
        members.setdefault(field_of[section.key], []).append(section)
    sections = tuple(_as_one(sections) for sections in members.values())
    whole = {one.key for one in sections if not may_change(group, one)}
    meetings = tuple(
        _canonical(replace(one, one=field_of[one.one], other=field_of[one.other]), whole)
        for one in group.meetings
        if field_of[one.one] != field_of[one.other]
    )
    by_key = {key: tuple(one.key for one in sections) for key, sections in members.items()}
    return replace(group, sections=sections, meetings=meetings), by_key


def apart(sharing: Sharing, members: Mapping[str, tuple[str, ...]]) -> Sharing:
    """Give the sharing of fields as that of their sections."""
    return Sharing(
        lots_of={key: lots for field, lots in sharing.lots_of.items() for key in members[field]},
        share={(key, lot): share for (field, lot), share in sharing.share.items() for key in members[field]},
        opened=sharing.opened,
    )


def _fields(group: Group) -> dict[str, str]:
    """Give the first section of its field for each section."""
    by_key = {one.key: one for one in group.sections}
    field_of = {key: key for key in by_key}
    for meeting in group.meetings:
        one, other = by_key[meeting.one], by_key[meeting.other]
        bound = meeting.place in VISIBLE and not group.alternate and part_key(one) == part_key(other)
        if bound and len({lot.shade for lot in group.suiting(one)}) == len(group.suiting(one)):
            if may_change(group, one) or may_change(group, other):
                continue
            kept, gone = sorted((field_of[one.key], field_of[other.key]))
            field_of = {key: kept if field == gone else field for key, field in field_of.items()}
    return field_of


def _as_one(sections: list[SectionDemand]) -> SectionDemand:
    if len(sections) == 1:
        return sections[0]
    length_m = math.fsum(one.length_m for one in sections)
    return replace(
        min(sections, key=lambda one: one.key),
        length_m=length_m,
        own_sd_m=math.hypot(*(one.own_sd_m for one in sections)),
        shared_sd_m=math.fsum(one.shared_sd_m for one in sections),
        visibility=min(math.fsum(one.visibility * one.length_m for one in sections) / length_m, 1.0),
    )


def _canonical(meeting: Meeting, whole: set[str]) -> Meeting:
    """Give a meeting so that equal ones are alike: of a section in which no lot changes, one edge is as good as any."""
    if meeting.one in whole:
        meeting = replace(meeting, one_at="begin")
    if meeting.other in whole:
        meeting = replace(meeting, other_at="begin")
    if meeting.other < meeting.one:
        return Meeting(meeting.other, meeting.one, meeting.place, meeting.other_at, meeting.one_at)
    return meeting
