"""A garment over a range of sizes: its pattern's own, or those of a table of bodies."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from loopwright.body import SizeTable, Wearer, size_table
from loopwright.fit import finished_at_gauge, size_named
from loopwright.garment import Garment
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import measures_for_body
from loopwright.season.changed import changed_lengths
from loopwright.season.drafted import as_wished, brief_for, draft_for
from loopwright.season.own_draft import facts_of, own_ease_cm
from loopwright.season.season import Season
from loopwright.units import BadInput, Told

__all__ = ["Graded", "graded"]


@dataclass(frozen=True, slots=True)
class Graded:
    """Drafts by size, and why a size has none.

    :ivar finished_cm: finished measures wanted, by size.
    """

    drafts: Mapping[str, Draft]
    faults: Mapping[str, Told]
    finished_cm: Mapping[str, Mapping[str, float]]


def graded(season: Season, garment: Garment, bodies: SizeTable | None = None) -> Graded:
    """Draft a garment in every size at her own gauge, with all that she changes.

    :param bodies: sizes of this table of bodies, with the garment's ease; left out, the pattern's own sizes.
    """
    pattern = facts_of(season, garment)
    swatch = season.swatch_by_key[garment.swatch] if garment.swatch else None
    drafts: dict[str, Draft] = {}
    faults: dict[str, Told] = {}
    wanted: dict[str, dict[str, float]] = {}
    for size, finished in _sizes(season, garment, bodies):
        wanted[size] = as_wished(changed_lengths(finished, garment), garment.draft)
        try:
            drafts[size] = draft_for(brief_for(garment, pattern, wanted[size], swatch, None))
        except BadInput as fault:
            faults[size] = fault.told
    return Graded(drafts, faults, wanted)


def _sizes(season: Season, garment: Garment, bodies: SizeTable | None) -> Iterator[tuple[str, dict[str, float]]]:
    pattern = facts_of(season, garment)
    if bodies is None:
        gauge = season.swatch_by_key[garment.swatch].gauge if garment.swatch else None
        for name in pattern.sizes:
            yield name, finished_at_gauge(pattern, size_named(pattern, name), gauge)
        return
    wearer = Wearer.CHILD if bodies == "children" else Wearer.WOMAN
    construction = garment.draft.construction if garment.draft and garment.draft.construction else pattern.construction
    for name, body_cm in size_table(bodies).items():
        yield name, dict(measures_for_body(body_cm, own_ease_cm(garment, construction, wearer), construction).known())
