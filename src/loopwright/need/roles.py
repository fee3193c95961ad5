"""Need per role by area: what the pattern states and what the fabric says, joined by their precision.

For garments that cannot be drafted; of the others every section is counted (:mod:`loopwright.need.by_sections`).
"""

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
from loopwright.units import write_percent
from loopwright.yarn import Yarn, grist_held_together

__all__ = [
    "RoleNeed",
    "none_below_nothing",
    "role_needs",
    "role_shares",
    "share_of",
    "stated_of_role",
    "still_to_knit",
    "strand_grist_tex",
]


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
    measures_cm: Mapping[str, float],
    area_cm2: Estimate | None,
) -> tuple[RoleNeed, ...]:
    """Give the need of every role of a garment that can be worked out.

    :param measures_cm: finished measures in cm at her gauge, before changes of length.
    :param area_cm2: fabric area before changes of length, or None when the measures do not give it.
    :returns: one need per role; a role of which nothing is known is left out.
    """
    shares = role_shares(garment, pattern, choice)
    needs = []
    for role in garment.yarns:
        grist = strand_grist_tex(role, yarns)
        stated = stated_of_role(role, pattern, choice, swatch, grist)
        parts = [] if stated is None else [stated]
        if area_cm2 is not None and swatch is not None and role.key in shares:
            own_tex = grist_held_together(yarns[key].grist_tex for key in swatch.yarns)
            whole = modelled_need(area_cm2, yarn_density(swatch, grist, own_tex), allowance(pattern))
            parts.append(share_of(whole, role.key, shares[role.key]))
        if not parts:
            continue
        need = combine_by_precision(parts, f"{role.key}, joined from {len(parts)} estimates")
        need = _with_changes(need, role, garment, pattern, swatch, grist, measures_cm)
        needs.append(RoleNeed(role=role.key, strand_m=still_to_knit(need, garment), grist_tex=grist))
    return tuple(needs)


def role_shares(garment: Garment, pattern: PatternFacts, choice: SizeChoice) -> dict[str, float]:
    """Give each role's share of the pattern's yarn; all of it for the only role."""
    if len(garment.yarns) == 1:
        return {garment.yarns[0].key: 1.0}
    stated = {amount.key: amount_m(pattern, amount, choice) for amount in pattern.yarn}
    if not stated or any(estimate is None for estimate in stated.values()):
        return {}
    metres = {key: estimate.mean for key, estimate in stated.items() if estimate is not None}
    return {key: mean / sum(metres.values()) for key, mean in metres.items()}


def stated_of_role(
    role: RolePlan, pattern: PatternFacts, choice: SizeChoice, swatch: Swatch | None, grist: float
) -> Estimate | None:
    """Give the metres of a role by the pattern's amounts at her gauge; None where it states none."""
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


def share_of(whole: Estimate, role: str, share: float) -> Estimate:
    """Give the part of a garment's yarn that a role takes by its share of the pattern's.

    The share errs by 3 % of itself (our judgement).
    """
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
    return whole.times(factor, f"{role} by its fabric", f"{whole.mean:.4g} m × {write_percent(share, digits=1)}")


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
    return none_below_nothing(need, role.key)


def none_below_nothing(need: Estimate, role: str) -> Estimate:
    """Give the need, or none where a shorter garment takes away more than the role knits."""
    if need.mean >= 0:
        return need
    none_left = Step(says=f"no {role} is left to knit", value=0.0, sd=need.sd, unit="m", origin=Origin.COMPUTED)
    return Estimate(mean=0.0, sd=need.sd, unit="m", origin=Origin.COMPUTED, steps=(*need.steps, none_left))


def still_to_knit(need: Estimate, garment: Garment) -> Estimate:
    """Take off what is on the needles already."""
    if not garment.knitted:
        return need
    left = 1 - garment.knitted
    return Estimate.worked(
        f"still to knit: {write_percent(left)}",
        f"{need.mean:.4g} m × {left:.3g}",
        need.mean * left,
        need.sd * left,
        "m",
        after=need.steps,
    )
