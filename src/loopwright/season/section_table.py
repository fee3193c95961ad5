"""The need of a garment section by section as one reader sees it: metres by role, grams, and tails to cast on with."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from loopwright.need import SectionNeed, Tail
from loopwright.season.result import GarmentPlan
from loopwright.season.wording import Wording
from loopwright.uncertainty import Estimate, Origin

__all__ = ["SectionRow", "SectionTable", "section_table"]

SHARED_OUT = "Which rows each role knits is not known: shared out as the pattern's amounts are."


@dataclass(frozen=True, slots=True)
class SectionRow:
    """One section.

    :ivar key: its piece and its own key, as :func:`loopwright.season.remnant_report.remnant_report` finds it.
    :ivar metres: by role, in the order of the table; empty where the role does not knit it.
    :ivar mass: of all roles together.
    :ivar share: its length as a share of the longest section's, for a bar.
    """

    key: str
    name: str
    metres: tuple[str, ...]
    mass: str
    share: float


@dataclass(frozen=True, slots=True)
class SectionTable:
    """The whole table.

    :ivar rows: none where the need is not known by section.
    :ivar note: what is to be known about the roles' shares; empty where there is nothing.
    :ivar tails: a sentence for each long-tail cast-on.
    """

    roles: tuple[str, ...]
    rows: tuple[SectionRow, ...]
    note: str
    tails: tuple[str, ...]


def section_table(planned: GarmentPlan, tails: Iterable[Tail], wording: Wording) -> SectionTable:
    """Lay out what every section of a garment takes, in the order of knitting.

    :param tails: as :func:`loopwright.season.remnant_report.tails_of` gives them.
    """
    roles = tuple(dict.fromkeys(one.role for one in planned.sections))
    by_place: dict[tuple[str, str], dict[str, SectionNeed]] = {}
    for one in planned.sections:
        by_place.setdefault((one.piece, one.section), {})[one.role] = one
    length_m = {place: math.fsum(one.length_m for one in needs.values()) for place, needs in by_place.items()}
    is_placed = any(one.key == "colour-places" for one in planned.answers)
    most_m = max(length_m.values(), default=0.0) or 1.0
    return SectionTable(
        roles=roles,
        rows=tuple(_row(needs, roles, length_m[place] / most_m, wording) for place, needs in by_place.items()),
        note=SHARED_OUT if len(roles) > 1 and not is_placed else "",
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
        f"a long tail of {wording.cm(_rounded_up_cm(tail.tail_cm, wording))}."
    )


def _rounded_up_cm(length_cm: float, wording: Wording) -> float:
    """Give a length as it is drawn off a ball: up to whole steps of 5 cm, or of 2 in; never less than it takes."""
    step_cm = 2 * 2.54 if wording.reader.measures == "imperial" else 5.0
    return math.ceil(length_cm / step_cm - 1e-9) * step_cm
