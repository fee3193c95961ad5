"""What the page of sections shows: metres and grams of each by role, tails to cast on with, and a remnant's reach."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from loopwright.need import SectionNeed, Tail
from loopwright.season import GarmentPlan
from loopwright.season.wording import Wording
from loopwright.uncertainty import Estimate, Origin

__all__ = ["SectionRow", "SectionsView", "sections_view"]


@dataclass(frozen=True, slots=True)
class SectionRow:
    """One section: metres by role, grams of all, and its share of the largest for a bar."""

    key: str
    name: str
    metres: tuple[str, ...]
    mass: str
    share: float


@dataclass(frozen=True, slots=True)
class SectionsView:
    """The whole table."""

    roles: tuple[str, ...]
    rows: tuple[SectionRow, ...]
    shared_out: bool
    tails: tuple[str, ...]


def sections_view(planned: GarmentPlan, tails: tuple[Tail, ...], wording: Wording) -> SectionsView:
    """Lay out the need of every section of a garment."""
    roles = tuple(dict.fromkeys(one.role for one in planned.sections))
    by_place: dict[tuple[str, str], dict[str, SectionNeed]] = {}
    for one in planned.sections:
        by_place.setdefault((one.piece, one.section), {})[one.role] = one
    metres = {place: math.fsum(one.length_m for one in needs.values()) for place, needs in by_place.items()}
    most = max(metres.values(), default=1.0)
    return SectionsView(
        roles=roles,
        rows=tuple(_row(needs, roles, metres[place] / most, wording) for place, needs in by_place.items()),
        shared_out=len(roles) > 1,
        tails=tuple(_tail(tail, wording) for tail in tails),
    )


def _row(needs: Mapping[str, SectionNeed], roles: tuple[str, ...], share: float, wording: Wording) -> SectionRow:
    first = next(iter(needs.values()))
    return SectionRow(
        key=f"{first.piece} {first.section}",
        name=first.name + (f" × {first.made}" if first.made > 1 else ""),
        metres=tuple(_metres(needs[role], wording) if role in needs else "" for role in roles),
        mass=wording.mass(math.fsum(one.mass_g or 0.0 for one in needs.values())),
        share=share,
    )


def _metres(need: SectionNeed, wording: Wording) -> str:
    return wording.estimate(Estimate(mean=need.length_m, sd=need.sd_m, unit="m", origin=Origin.COMPUTED))


def _tail(tail: Tail, wording: Wording) -> str:
    of = tail.section if tail.piece in tail.section else f"{tail.piece}, {tail.section}"
    each = f", {tail.made} times" if tail.made > 1 else ""
    return (
        f"{wording.word('cast on').capitalize()} {tail.stitches:,} stitches for {of}{each}: "
        f"a long tail of {wording.cm(tail.tail_cm)}."
    )
