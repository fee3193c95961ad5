"""Need of a drafted garment: every section counted, joined with the pattern's amounts, still to knit."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

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
from loopwright.uncertainty import Estimate, combine_by_precision
from loopwright.yarn import Yarn, grist_held_together

__all__ = ["DraftsOfGarment", "needs_by_sections", "strands_of"]


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
    difference of her draft and the unchanged one, once, in the role that takes it. Rows of which the draft does not say
    whose yarn knits them are shared out as the pattern's amounts are. What is knitted is taken off in the order of
    knitting.

    :returns: roles and sections; a role of which nothing is known is left out.
    """
    facts = _Facts(garment, pattern, choice, swatch, drafts, strands_of(garment, pattern, swatch, yarns))
    told = any(section.roles for _, section in drafts.own.sections())
    shares = {role.key: 1.0 for role in garment.yarns} if told else role_shares(garment, pattern, choice)
    roles: list[RoleNeed] = []
    sections: list[SectionNeed] = []
    for role in garment.yarns:
        counted = _counted(facts, drafts.own, role, told=told)
        need = _need(facts, role, counted, shares.get(role.key), told=told)
        if need is None:
            continue
        grist = strand_grist_tex(role, yarns)
        left = still_to_knit(need, garment)
        roles.append(RoleNeed(role=role.key, strand_m=left, grist_tex=grist))
        own = [one for one in adjusted(counted, need, _why(role.key, counted, need)) if need.mean > 0]
        sections += adjusted(_after(own, garment.knitted or 0.0), left, "still to knit") if garment.knitted else own
    return tuple(roles), tuple(sections)


def _counted(facts: _Facts, draft: Draft, role: RolePlan, *, told: bool) -> tuple[SectionNeed, ...]:
    """Count a draft's sections in one role; where it says nothing of roles, all of them."""
    needs = section_needs(
        draft, facts.strands, shape_relative_sd=facts.drafts.shape_relative_sd, main=_main(facts, role, told=told)
    )
    return tuple(need for need in needs if need.role == role.key)


def _main(facts: _Facts, role: RolePlan, *, told: bool) -> str:
    return _changing_role(facts.garment) if told else role.key


def _changing_role(garment: Garment) -> str:
    """Give the role whose yarn takes what she changes: the one she names, else the first."""
    return garment.changes.role if garment.role(garment.changes.role) else garment.yarns[0].key


def _need(
    facts: _Facts, role: RolePlan, counted: Sequence[SectionNeed], share: float | None, *, told: bool
) -> Estimate | None:
    drafts = facts.drafts
    strand = facts.strands[role.key]
    if facts.garment.pattern is None:
        return _with_loop(together(counted, f"{role.key}, section by section"), strand) if share == 1 else None
    unchanged = counted
    if drafts.unchanged is not None and drafts.unchanged is not drafts.own:
        unchanged = _counted(facts, drafts.unchanged, role, told=told)
    parts = []
    stated = _stated(facts, role, told=told)
    if stated is not None:
        parts.append(stated)
    whole = _with_loop(together(unchanged, "the garment, section by section"), strand)
    if share is not None and facts.swatch is not None:
        parts.append(share_of(whole, role.key, share))
    if not parts:
        return None
    need = combine_by_precision(parts, f"{role.key}, joined from {len(parts)} estimates")
    if drafts.unchanged is None or role.key != _changing_role(facts.garment):
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


def _stated(facts: _Facts, role: RolePlan, *, told: bool) -> Estimate | None:
    """Give the pattern's amount scaled by what the same size takes at her gauge against the pattern's."""
    amount = facts.pattern.role(role.key)
    drafts, swatch = facts.drafts, facts.swatch
    if amount is None:
        return None
    grist = facts.strands[role.key].grist_tex
    assert grist is not None  # a role has yarn
    if drafts.unchanged is None or drafts.as_stated is None or swatch is None:
        return stated_of_role(role, facts.pattern, facts.choice, swatch, grist)
    stated = amount_m(facts.pattern, amount, facts.choice)
    if stated is None:
        return None
    state = "washed" if swatch.is_washed else "unwashed"
    pattern_tex = facts.pattern.grist_tex or grist
    here = loop_by_gauge(swatch.gauge, swatch.fabric, grist, state=state, density_sd=ONE_COUNT_DENSITY_SD)
    there = loop_by_gauge(facts.pattern.gauge, facts.pattern.fabric, pattern_tex, state="washed")
    metres = [
        counted_m(draft, StrandOfRole(loop, grist), role.key, _main(facts, role, told=told))
        for draft, loop in ((drafts.unchanged, here), (drafts.as_stated, there))
    ]
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
