"""How much yarn a garment takes: by its sections where it can be drafted, else by the area of plain shapes."""

from __future__ import annotations

from collections.abc import Mapping

from loopwright.body import Body
from loopwright.colouring import ColourWork
from loopwright.fabric import Swatch
from loopwright.fit import SizeChoice, finished_at_gauge
from loopwright.garment import Garment, fabric_area_cm2
from loopwright.garment.draft import Draft
from loopwright.need import DraftsOfGarment, RoleNeed, SectionNeed, needs_by_sections, role_needs
from loopwright.pattern import PatternFacts
from loopwright.season.changed import changed_lengths
from loopwright.season.colour_work import draft_in_colours
from loopwright.season.drafted import OWN_RELATIVE_SD, PATTERN_RELATIVE_SD, as_wished, brief_for
from loopwright.units import BadInput
from loopwright.yarn import Yarn

__all__ = ["drafts_of", "needs_of"]


def drafts_of(
    garment: Garment,
    pattern: PatternFacts,
    choice: SizeChoice,
    swatch: Swatch | None,
    body: Body | None,
    work: ColourWork | None,
) -> DraftsOfGarment | None:
    """Give what a garment is drafted as, with her changes and without; None where it cannot be drafted.

    :param work: where she says that the colours go; it holds with her changes and without.
    """
    at_her_gauge = finished_at_gauge(pattern, choice, swatch.gauge if swatch else None)
    wanted = as_wished(changed_lengths(at_her_gauge, garment), garment.draft)
    own = _draft(garment, pattern, wanted, swatch, body, work)
    if own is None:
        return None
    if garment.pattern is None:
        return DraftsOfGarment(own, None, None, OWN_RELATIVE_SD)
    plain = garment.model_copy(update={"draft": None})
    return DraftsOfGarment(
        own,
        _draft(plain, pattern, as_wished(at_her_gauge, None), swatch, body, work),
        _draft(plain, pattern, as_wished(finished_at_gauge(pattern, choice, None), None), None, body, work),
        PATTERN_RELATIVE_SD,
    )


def _draft(
    garment: Garment,
    pattern: PatternFacts,
    finished_cm: Mapping[str, float],
    swatch: Swatch | None,
    body: Body | None,
    work: ColourWork | None,
) -> Draft | None:
    try:
        return draft_in_colours(brief_for(garment, pattern, finished_cm, swatch, body), work)
    except BadInput:
        return None


def needs_of(
    garment: Garment,
    pattern: PatternFacts,
    choice: SizeChoice,
    swatch: Swatch | None,
    body: Body | None,
    yarns: Mapping[str, Yarn],
    work: ColourWork | None,
) -> tuple[tuple[RoleNeed, ...], tuple[SectionNeed, ...]]:
    """Give the need of every role, and of every section where the garment can be drafted."""
    drafts = drafts_of(garment, pattern, choice, swatch, body, work)
    if drafts is not None:
        return needs_by_sections(garment, pattern, choice, swatch, yarns, drafts)
    measures = finished_at_gauge(pattern, choice, swatch.gauge if swatch else None)
    area = fabric_area_cm2(pattern.construction, measures)
    return role_needs(garment, pattern, choice, swatch, yarns, measures, area), ()
