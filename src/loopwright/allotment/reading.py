"""What a solution says: portions, where dye lots meet, how good it is, and what each lot gives."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from loopwright.allotment.formulation import INSIDE, Formulation, ends, level_of, part_key
from loopwright.allotment.lots import DyeLot, alike, chance_of
from loopwright.allotment.model import Change, Levels, LotUse, Meeting, Portion, SectionDemand

__all__ = ["Sharing", "changes_of", "given_of", "levels_of", "portions_of", "read", "uses_of"]


@dataclass(frozen=True, slots=True)
class Sharing:
    """Which dye lots knit which sections, by key.

    :ivar lots_of: the lot of the first rows and that of the last, the same where the section is whole; an uncovered
        section is not in it.
    :ivar share: of a section's stitches, by section and lot.
    :ivar opened: metres of each put-up that is opened, by lot.
    """

    lots_of: Mapping[str, tuple[str, str]] = field(default_factory=dict)
    share: Mapping[tuple[str, str], float] = field(default_factory=dict)
    opened: Mapping[str, tuple[float, ...]] = field(default_factory=dict)

    @classmethod
    def joined(cls, parts: Iterable[Sharing]) -> Sharing:
        """Give the sharing of several groups as one."""
        lots_of: dict[str, tuple[str, str]] = {}
        share: dict[tuple[str, str], float] = {}
        opened: dict[str, tuple[float, ...]] = {}
        for part in parts:
            lots_of |= part.lots_of
            share |= part.share
            opened |= part.opened
        return cls(lots_of, share, opened)


def read(made: Formulation, values: NDArray[np.float64]) -> Sharing:
    """Give the sharing that the values of a programme's variables mean."""
    lots_of: dict[str, tuple[str, str]] = {}
    share: dict[tuple[str, str], float] = {}
    for section in made.group.sections:
        if values[made.bare[part_key(section)]] > 0.5:
            continue
        keys = [lot.key for lot in made.group.suiting(section)]
        first = max(keys, key=lambda key, one=section.key: values[made.first[one, key]])  # type: ignore[misc]
        last = max(keys, key=lambda key, one=section.key: values[made.last[one, key]])  # type: ignore[misc]
        lots_of[section.key] = first, last
        if first == last:
            share[section.key, first] = 1.0
        else:
            begun = min(max(float(values[made.share[section.key, first]]), 0.0), 1.0)
            share[section.key, first], share[section.key, last] = begun, 1 - begun
    opened: dict[str, list[float]] = {lot: [] for _, lot in share}
    for (lot, length_m), variable in made.opened.items():
        if lot in opened:
            opened[lot] += [length_m] * round(values[variable])
    return Sharing(lots_of, share, {lot: tuple(metres) for lot, metres in opened.items()})


def given_of(sharing: Sharing, lot: DyeLot, sections: Mapping[str, SectionDemand]) -> list[tuple[SectionDemand, float]]:
    """Give the sections that a lot knits, each with its share."""
    return [(sections[key], share) for (key, own), share in sharing.share.items() if own == lot.key]


def portions_of(
    sharing: Sharing, sections: Mapping[str, SectionDemand], lots: Mapping[str, DyeLot]
) -> tuple[Portion, ...]:
    """Give the portions, by section, each section's in the order of knitting."""
    portions = []
    for key, knitted in sorted(sharing.lots_of.items()):
        for lot in dict.fromkeys(knitted):
            share = sharing.share[key, lot]
            portions.append(Portion(key, lots[lot].keys, share, share * sections[key].length_m))
    return tuple(portions)


def changes_of(
    sharing: Sharing,
    sections: Mapping[str, SectionDemand],
    meetings: Sequence[Meeting],
    lots: Mapping[str, DyeLot],
) -> tuple[Change, ...]:
    """Give every place where two dye lots meet, or a covered section meets an uncovered one of its role."""
    changes = []
    for key, (first, last) in sorted(sharing.lots_of.items()):
        if lots[first].shade != lots[last].shade:
            changes.append(Change(key, key, sections[key].within, (lots[first].keys, lots[last].keys)))
    for meeting in meetings:
        if not alike(sections[meeting.one], sections[meeting.other]):
            continue
        met = next(_differing(sharing, meeting, lots), None)
        if met is not None:
            changes.append(Change(meeting.one, meeting.other, meeting.place, met))
    return tuple(changes)


def _differing(
    sharing: Sharing, meeting: Meeting, lots: Mapping[str, DyeLot]
) -> Iterator[tuple[tuple[str, ...], tuple[str, ...]]]:
    one, other = sharing.lots_of.get(meeting.one), sharing.lots_of.get(meeting.other)
    for near, far in ends(meeting):
        here = None if one is None else lots[one[near == "last"]]
        there = None if other is None else lots[other[far == "last"]]
        if (here and here.shade) != (there and there.shade):
            yield (here.keys if here else (), there.keys if there else ())


def levels_of(sharing: Sharing, sections: Sequence[SectionDemand], changes: Sequence[Change]) -> Levels:
    """Give how good a sharing of some sections is, counted from what it says and not from the solver's cost."""
    bare = [one for one in sections if one.key not in sharing.lots_of]
    counted = [0.0, 0.0, 0.0, 0.0]
    for change in changes:
        level, weight = level_of(change.place)
        counted[level] += INSIDE * weight if level == 3 and change.one == change.other else weight
    covered = {one.key: one.length_m for one in sections}
    used = math.fsum(share * covered[key] for (key, _), share in sharing.share.items())
    return Levels(
        uncovered_m=math.fsum(one.visibility * one.length_m for one in bare),
        plain=counted[1],
        beside=counted[2],
        expected=counted[3],
        lots=float(len({lot for _, lot in sharing.share})),
        left_m=max(math.fsum(metres for put_ups in sharing.opened.values() for metres in put_ups) - used, 0.0),
    )


def uses_of(sharing: Sharing, sections: Mapping[str, SectionDemand], lots: Mapping[str, DyeLot]) -> tuple[LotUse, ...]:
    """Give what each opened lot gives, and how surely it suffices."""
    uses = []
    for key in sorted(sharing.opened):
        given = given_of(sharing, lots[key], sections)
        used = math.fsum(share * section.length_m for section, share in given)
        uses.append(LotUse(lots[key].keys, used, sharing.opened[key], chance_of(lots[key], given)))
    return tuple(uses)
