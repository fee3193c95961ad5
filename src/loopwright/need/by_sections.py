"""Need of a drafted garment: every section counted, joined with the pattern's amounts, still to knit."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from loopwright.fabric import Swatch
from loopwright.fit import SizeChoice
from loopwright.garment import Garment, RolePlan
from loopwright.garment.draft import Draft
from loopwright.garment.stitches import ONE_COUNT_DENSITY_SD
from loopwright.need.loops import Loop, loop_by_gauge, loop_on_swatch
from loopwright.need.roles import (
    RoleNeed,
    none_below_nothing,
    role_shares,
    share_of,
    stated_of_role,
    still_to_knit,
    strand_grist_tex,
)
from loopwright.need.sections import StrandOfRole, counted_m, section_needs
from loopwright.need.shared_error import SectionNeed, adjusted, together
from loopwright.need.stated import amount_m
from loopwright.pattern import PatternFacts
from loopwright.uncertainty import Estimate, combine_by_precision, total
from loopwright.units import write_percent
from loopwright.yarn import Yarn, grist_held_together

__all__ = ["DraftsOfGarment", "needs_by_sections", "strands_of"]

SHARE_RELATIVE_SD: Final = 0.03
"""Doubt of a role's share of the rows, as a share: how far she keeps to them; our judgement."""
STATED_CORRELATION: Final = 0.5
"""Between the pattern's amounts of two roles: their knitter is one, their rounding is not; our judgement."""


@dataclass(frozen=True, slots=True)
class DraftsOfGarment:
    """What a garment is drafted as.

    :ivar own: what she knits, at her gauge, with all that she changes.
    :ivar unchanged: the pattern's size at her gauge without her changes; None for her own draft, and where the
        pattern's measures do not make it.
    :ivar as_stated: the pattern's size at the pattern's gauge; likewise.
    :ivar shape_relative_sd: how far the stitches knitted stray from the draft's, as a share.
    """

    own: Draft
    unchanged: Draft | None
    as_stated: Draft | None
    shape_relative_sd: float


@dataclass(frozen=True, slots=True)
class _Facts:
    """What the need of one garment is worked out from."""

    garment: Garment
    pattern: PatternFacts
    choice: SizeChoice
    swatch: Swatch | None
    drafts: DraftsOfGarment
    strands: Mapping[str, StrandOfRole]


def strands_of(
    garment: Garment, pattern: PatternFacts, swatch: Swatch | None, yarns: Mapping[str, Yarn]
) -> dict[str, StrandOfRole]:
    """Give what each role of a garment is knitted with; without a swatch at the pattern's gauge."""
    strands = {}
    for role in garment.yarns:
        grist = strand_grist_tex(role, yarns)
        strands[role.key] = StrandOfRole(_loop(pattern, swatch, grist, yarns), grist, yarns[role.yarn].length_m)
    return strands


def _loop(pattern: PatternFacts, swatch: Swatch | None, grist: float, yarns: Mapping[str, Yarn]) -> Loop:
    if swatch is None:
        return loop_by_gauge(pattern.gauge, pattern.fabric, grist)
    return loop_on_swatch(swatch, grist, grist_held_together(yarns[key].grist_tex for key in swatch.yarns))


def needs_by_sections(
    garment: Garment,
    pattern: PatternFacts,
    choice: SizeChoice,
    swatch: Swatch | None,
    yarns: Mapping[str, Yarn],
    drafts: DraftsOfGarment,
) -> tuple[tuple[RoleNeed, ...], tuple[SectionNeed, ...]]:
    """Give the need of every role and of every section in it; the sections of a role add up to the role.

    Every section of the draft is counted. Where the pattern states an amount, it is scaled by what the same size takes
    at her gauge against the pattern's, both drafted, and joined with the count by precision. What she changes is the
    difference of her draft and the unchanged one, once, in the role that takes it. Where she says which yarn knits
    which rows, that shares out the pattern's yarn; else its own amounts do. What is knitted is taken off in the order
    of knitting.

    :returns: roles and sections; a role of which nothing is known is left out.
    """
    facts = _Facts(garment, pattern, choice, swatch, drafts, strands_of(garment, pattern, swatch, yarns))
    told = _is_told(drafts.own)
    shares = _told_shares(facts) if told else role_shares(garment, pattern, choice)
    roles: list[RoleNeed] = []
    sections: list[SectionNeed] = []
    for role in garment.yarns:
        counted = _counted(facts, drafts.own, role)
        need = _need(facts, role, counted, shares.get(role.key), told=told)
        if need is None:
            continue
        grist = strand_grist_tex(role, yarns)
        left = still_to_knit(need, garment)
        roles.append(RoleNeed(role=role.key, strand_m=left, grist_tex=grist))
        own = [one for one in adjusted(counted, need, _why(role.key, counted, need)) if need.mean > 0]
        sections += adjusted(_after(own, garment.knitted or 0.0), left, "still to knit") if garment.knitted else own
    return tuple(roles), tuple(sections)


def _is_told(draft: Draft) -> bool:
    """Say whether a draft says whose yarn knits its rows."""
    return any(section.is_coloured for _, section in draft.sections())


def _told_shares(facts: _Facts) -> dict[str, float]:
    """Give each role's metres, as its rows say, over what the pattern's amounts cover, before what she changes.

    A pattern that is not stranded has no floats in its amounts: hers come on top.
    """
    draft = facts.drafts.unchanged or facts.drafts.own
    covered = facts.pattern.fabric == "stranded colourwork"
    whole = math.fsum(counted_m(draft, strand, role, floats=covered) for role, strand in facts.strands.items())
    return {role: counted_m(draft, strand, role) / whole for role, strand in facts.strands.items()}


def _counted(facts: _Facts, draft: Draft, role: RolePlan) -> tuple[SectionNeed, ...]:
    """Count a draft's sections in one role; where it says nothing of roles, all of them."""
    needs = section_needs(draft, facts.strands, shape_relative_sd=facts.drafts.shape_relative_sd, main=role.key)
    return tuple(need for need in needs if need.role == role.key)


def _changing_role(garment: Garment) -> str:
    """Give the role whose yarn takes what she changes: the one she names, else the first."""
    return garment.changes.role if garment.role(garment.changes.role) else garment.yarns[0].key


def _need(
    facts: _Facts, role: RolePlan, counted: Sequence[SectionNeed], share: float | None, *, told: bool
) -> Estimate | None:
    drafts = facts.drafts
    strand = facts.strands[role.key]
    if told and not counted:
        return None
    if facts.garment.pattern is None:
        mine = told or share == 1
        return _with_loop(together(counted, f"{role.key}, section by section"), strand) if mine else None
    unchanged = counted
    if drafts.unchanged is not None and drafts.unchanged is not drafts.own:
        unchanged = _counted(facts, drafts.unchanged, role)
    if told and not unchanged:  # what she changes alone brings it in
        return _with_loop(together(counted, f"{role.key}, section by section"), strand)
    parts = []
    stated = _told_stated(facts, role, share) if told else _stated(facts, role)
    if stated is not None:
        parts.append(stated)
    whole = _with_loop(together(unchanged, "the garment, section by section"), strand)
    if share is not None and facts.swatch is not None:
        parts.append(whole if told else share_of(whole, role.key, share))
    if not parts:
        return None
    need = combine_by_precision(parts, f"{role.key}, joined from {len(parts)} estimates")
    if drafts.unchanged is None or not (told or role.key == _changing_role(facts.garment)):
        return need
    return _changed(need, role.key, math.fsum(one.length_m for one in counted), whole.mean, strand)


def _with_loop(need: Estimate, strand: StrandOfRole) -> Estimate:
    """Put the working of the loop before that of the sections."""
    return need.model_copy(update={"steps": (*strand.loop.stitch_mm.steps, *need.steps)})


def _changed(need: Estimate, role: str, changed_m: float, unchanged_m: float, strand: StrandOfRole) -> Estimate:
    """Add what her own draft takes more, or less, than the unchanged one."""
    extra_m = changed_m - unchanged_m
    if abs(extra_m) < 0.05:
        return need
    extra = Estimate.worked(
        f"what you change, {'more' if extra_m > 0 else 'less'} than unchanged, section by section",
        f"{changed_m:.4g} m − {unchanged_m:.4g} m",
        extra_m,
        abs(extra_m) * strand.loop.stitch_mm.relative_sd,
        "m",
        source="rows of both drafts × loop length",
    )
    working = f"{need.mean:.4g} m {'+' if extra_m > 0 else '−'} {abs(extra_m):.4g} m"
    return none_below_nothing(need.plus(extra, f"{role} with what you change", working), role)


def _told_stated(facts: _Facts, role: RolePlan, share: float | None) -> Estimate | None:
    """Give a role's share, by its rows, of all the yarn that the pattern states; None where a role's is not stated."""
    amounts = [amount_m(facts.pattern, amount, facts.choice) for amount in facts.pattern.yarn]
    known = [amount for amount in amounts if amount is not None]
    if not share or not known or len(known) < len(amounts):
        return None
    whole = total(known, unit="m", correlation=STATED_CORRELATION)
    whole = whole.model_copy(update={"steps": (*(step for amount in known for step in amount.steps), *whole.steps)})
    without = "" if facts.pattern.fabric == "stranded colourwork" else ", without floats"
    part = Estimate.worked(
        f"metres of {role.key} in your rows, over those of all{without}",
        write_percent(share, digits=1),
        share,
        SHARE_RELATIVE_SD * share,
        "×",
        source="rows of the draft × loop length",
    )
    stated = whole.times(part, f"{role.key} by its rows", f"{whole.mean:.4g} m × {write_percent(share, digits=1)}")
    return _at_her_gauge(facts, role, stated)


def _stated(facts: _Facts, role: RolePlan) -> Estimate | None:
    """Give the pattern's amount scaled by what the same size takes at her gauge against the pattern's."""
    amount = facts.pattern.role(role.key)
    drafts, swatch = facts.drafts, facts.swatch
    if amount is None:
        return None
    if drafts.unchanged is None or drafts.as_stated is None or swatch is None:
        grist = facts.strands[role.key].grist_tex
        assert grist is not None  # a role has yarn
        return stated_of_role(role, facts.pattern, facts.choice, swatch, grist)
    stated = amount_m(facts.pattern, amount, facts.choice)
    return None if stated is None else _at_her_gauge(facts, role, stated)


def _at_her_gauge(facts: _Facts, role: RolePlan, stated: Estimate) -> Estimate:
    """Scale what the pattern takes by what the same rows take at her gauge against the pattern's, both drafted."""
    drafts, swatch = facts.drafts, facts.swatch
    if drafts.unchanged is None or drafts.as_stated is None or swatch is None:
        return stated
    grist = facts.strands[role.key].grist_tex
    assert grist is not None  # a role has yarn
    state = "washed" if swatch.is_washed else "unwashed"
    pattern_tex = facts.pattern.grist_tex or grist
    here = loop_by_gauge(swatch.gauge, swatch.fabric, grist, state=state, density_sd=ONE_COUNT_DENSITY_SD)
    there = loop_by_gauge(facts.pattern.gauge, facts.pattern.fabric, pattern_tex, state="washed")
    metres = [
        counted_m(draft, StrandOfRole(loop, grist), role.key, role.key)
        for draft, loop in ((drafts.unchanged, here), (drafts.as_stated, there))
    ]
    if not all(metres):
        return stated
    factor = metres[0] / metres[1]
    loops = here.stitch_mm.mean / there.stitch_mm.mean
    scaled = Estimate.worked(
        "your swatch against the pattern's, both drafted",
        f"{metres[0]:.4g} m / {metres[1]:.4g} m",
        factor,
        factor * math.hypot(swatch.density_relative_sd / 2, abs(loops - 1) / 2),
        "×",
        source="rows of both drafts × loop length after Dalidovich and Munden",
    )
    return stated.times(scaled, f"{role.key} as you knit it", f"{stated.mean:.4g} m × {factor:.3f}")


def _why(role: str, counted: Sequence[SectionNeed], need: Estimate) -> str:
    whole = math.fsum(one.length_m for one in counted)
    return f"brought to {need.mean:.4g} m of {role} in all, from {whole:.4g} m counted"


def _after(sections: Sequence[SectionNeed], knitted: float) -> list[SectionNeed]:
    """Give what is left of the sections once a share of their yarn is knitted, in the order of knitting."""
    done_m = knitted * math.fsum(one.length_m for one in sections)
    left = []
    for one in sections:
        taken = min(one.length_m, done_m)
        done_m -= taken
        if one.length_m - taken > 1e-9:
            share = 1 - taken / one.length_m
            left.append(one.scaled(share, one.own_sd_m * share, one.shared_sd_m * share))
    return left
