"""Need per role: what the pattern states and what the fabric says, joined by their precision."""

from __future__ import annotations

from collections.abc import Mapping

from loopwright.fabric import STRUCTURES, Swatch
from loopwright.fit import SizeChoice
from loopwright.garment import Garment, RolePlan
from loopwright.garment.area import WRIST_SHARE_OF_ARM
from loopwright.garment.stitches import ONE_COUNT_DENSITY_SD
from loopwright.need.model import allowance, modelled_need, yarn_density
from loopwright.need.stated import amount_m, extra_length_m, stated_need
from loopwright.pattern import PatternFacts
from loopwright.records import Record
from loopwright.uncertainty import Estimate, Origin, Step, combine_by_precision
from loopwright.yarn import Yarn, grist_held_together

__all__ = ["RoleNeed", "role_needs", "strand_grist_tex"]


class RoleNeed(Record):
    """Yarn that one role takes: metres of the whole strand, from which each yarn in it takes its share.

    :ivar strand_m: metres of strand, with its working.
    :ivar grist_tex: grist of the strand.
    """

    role: str
    strand_m: Estimate
    grist_tex: float

    @property
    def mass_g(self) -> float:
        """Give the mass of that length in grams."""
        return self.strand_m.mean * self.grist_tex / 1000


def strand_grist_tex(role: RolePlan, yarns: Mapping[str, Yarn]) -> float:
    """Give the grist of a role's strand, all yarns held together, in tex."""
    own = [yarns[role.yarn].grist_tex] * role.strands
    return grist_held_together([*own, *(yarns[strand.yarn].grist_tex for strand in role.held_with)])


def role_needs(
    garment: Garment,
    pattern: PatternFacts,
    choice: SizeChoice,
    swatch: Swatch | None,
    yarns: Mapping[str, Yarn],
    measures: Mapping[str, float],
    area_cm2: Estimate | None,
) -> tuple[RoleNeed, ...]:
    """Give the need of every role of a garment that can be worked out.

    :param measures: finished measures in cm at her gauge, before changes of length.
    :param area_cm2: fabric area before changes of length, or None when the measures do not give it.
    :returns: one need per role; a role of which nothing is known is left out.
    """
    shares = _shares(garment, pattern, choice)
    needs = []
    for role in garment.yarns:
        grist = strand_grist_tex(role, yarns)
        parts = [_stated(role, pattern, choice, swatch, grist)]
        if area_cm2 is not None and swatch is not None and role.key in shares:
            own_tex = grist_held_together(yarns[key].grist_tex for key in swatch.yarns)
            whole = modelled_need(area_cm2, yarn_density(swatch, grist, own_tex), allowance(pattern))
            parts.append(_share_of(whole, role.key, shares[role.key]))
        known = [part for part in parts if part is not None]
        if not known:
            continue
        need = combine_by_precision(known, f"{role.key}, joined from {len(known)} estimates")
        need = _with_changes(need, role, garment, pattern, swatch, grist, measures)
        needs.append(RoleNeed(role=role.key, strand_m=_still_to_knit(need, garment), grist_tex=grist))
    return tuple(needs)


def _shares(garment: Garment, pattern: PatternFacts, choice: SizeChoice) -> dict[str, float]:
    """Give each role's share of the pattern's yarn; all of it for the only role."""
    if len(garment.yarns) == 1:
        return {garment.yarns[0].key: 1.0}
    stated = {amount.key: amount_m(pattern, amount, choice) for amount in pattern.yarn}
    if not stated or any(estimate is None for estimate in stated.values()):
        return {}
    metres = {key: estimate.mean for key, estimate in stated.items() if estimate is not None}
    return {key: mean / sum(metres.values()) for key, mean in metres.items()}


def _stated(
    role: RolePlan, pattern: PatternFacts, choice: SizeChoice, swatch: Swatch | None, grist: float
) -> Estimate | None:
    amount = pattern.role(role.key)
    if amount is None:
        return None
    return stated_need(
        pattern,
        amount,
        choice,
        swatch.gauge if swatch else None,
        grist,
        density_sd=swatch.density_relative_sd if swatch else ONE_COUNT_DENSITY_SD,
        washed=swatch.is_washed if swatch else True,
    )


def _share_of(whole: Estimate, role: str, share: float) -> Estimate:
    if share == 1:
        return whole
    factor = Estimate.known(
        f"share of {role} in the pattern's yarn",
        share,
        "×",
        Origin.STATED,
        sd=0.03 * share,
        source="the pattern",
    )
    return whole.times(factor, f"{role} by its fabric", f"{whole.mean:.4g} m × {share:.1%}")


def _with_changes(
    need: Estimate,
    role: RolePlan,
    garment: Garment,
    pattern: PatternFacts,
    swatch: Swatch | None,
    grist: float,
    measures: Mapping[str, float],
) -> Estimate:
    """Add what a longer body or longer sleeves take, to the role that takes it."""
    changes = garment.changes
    if role.key != changes.role:
        return need
    gauge = swatch.gauge if swatch else pattern.gauge
    washed = swatch.is_washed if swatch else True
    per_stitch = STRUCTURES[swatch.fabric if swatch else pattern.fabric].yarn_per_stitch
    upper_arm = measures.get("upper_arm_girth", 0.0)
    sleeve_girth = upper_arm + measures.get("wrist_girth", WRIST_SHARE_OF_ARM * upper_arm)
    body_girth = measures.get("bust_girth") or measures.get("head_girth") or measures.get("width", 0.0)
    for longer, girth, part in (
        (changes.body_longer_cm, body_girth, "body"),
        (changes.sleeves_longer_cm, sleeve_girth, "sleeves"),
    ):
        if longer and girth:
            word = "longer" if longer > 0 else "shorter"
            says = f"{part} {abs(longer):g} cm {word}"
            extra = extra_length_m(longer, girth, gauge, grist, per_stitch, says=says, washed=washed)
            sign = "+" if longer > 0 else "−"
            working = f"{need.mean:.4g} m {sign} {abs(extra.mean):.4g} m"
            need = need.plus(extra, f"{role.key} with the {part} {word}", working)
    if need.mean >= 0:
        return need
    none_left = Step(says=f"no {role.key} is left to knit", value=0.0, sd=need.sd, unit="m", origin=Origin.COMPUTED)
    return Estimate(mean=0.0, sd=need.sd, unit="m", origin=Origin.COMPUTED, steps=(*need.steps, none_left))


def _still_to_knit(need: Estimate, garment: Garment) -> Estimate:
    """Take off what is on the needles already."""
    if not garment.knitted:
        return need
    left = 1 - garment.knitted
    return Estimate.worked(
        f"still to knit: {left:.0%}",
        f"{need.mean:.4g} m × {left:.3g}",
        need.mean * left,
        need.sd * left,
        "m",
        after=need.steps,
    )
