"""One side of the comparison: a strand and the fabric that it makes at the original's gauge."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Final

from loopwright.fabric import WashRange, expected_wash
from loopwright.fabric.loop import LOOP_RELATIVE_SD
from loopwright.fabric.tightness import tightness_word
from loopwright.need.substitution.fibre_traits import CARE_NOT_STATED, CARE_STEPS, FIBRE_TRAITS, CareClass
from loopwright.need.substitution.original import Original, wish_of
from loopwright.need.substitution.score import predicted
from loopwright.need.substitution.strands import strand_of
from loopwright.records import Record
from loopwright.uncertainty import Estimate
from loopwright.yarn import Yarn
from loopwright.yarn.lot import LABEL_RELATIVE_SD

__all__ = ["RANK_BASIS", "Side", "blend_by_mass", "care_of", "side_of", "strand_name", "unlike_share"]

BULK_RELATIVE_SD: Final = 0.125
"""Doubt of a diameter from that of the bulk density, ± 25 %, which is judged; it cancels between fibres alike in it."""
SPINNING_RELATIVE_SD: Final = 0.04
"""How far two yarns of one grist and fibre differ in diameter, by twist and ply. Woollen against worsted spinning is
about three times that (0.32 against 0.40 g/cm³); our judgement."""
RANK_BASIS: Final = "rank of the fibres, our judgement, good to one or two"


class Side(Record):
    """A strand as a fabric. Ranks run from 1 to 10, higher is more.

    :ivar fibres: percent by mass; empty where nothing is stated.
    :ivar thickness_mm: effective diameter within the fabric; the fabric is about twice that thick.
    :ivar loop_mm: yarn in one stitch.
    :ivar tightness: √tex / l, l in mm.
    :ivar tightness_word: for stocking stitch, as of a smooth wool of that thickness; else None.
    :ivar cover: area of yarn over area of fabric, ``stitches · loop · diameter``, no overlap taken off.
    :ivar own_stitches_per_10cm: gauge at which this strand covers as the original does.
    :ivar garment_m, garment_g: the whole role in this strand; None where the need is not known.
    :ivar wash: what the first gentle hand wash usually does; None where no fibre is known.
    :ivar drape, warmth, elasticity: None where no fibre is known; drape is of the fabric, the others of the fibres.
    """

    name: str
    fibres: Mapping[str, float]
    grist_tex: float
    thickness_mm: Estimate
    loop_mm: Estimate
    tightness: Estimate
    tightness_word: str | None
    cover: Estimate
    own_stitches_per_10cm: Estimate
    mass_g_m2: Estimate
    garment_m: Estimate | None
    garment_g: Estimate | None
    wash: WashRange | None
    drape: float | None
    warmth: float | None
    elasticity: float | None
    care: CareClass


def strand_name(yarns: Sequence[Yarn]) -> str:
    """Name a strand by its yarns: ``2 × Fell Sock + Mist``."""
    counted = Counter(yarn.key for yarn in yarns)
    names = {yarn.key: yarn.name for yarn in yarns}
    return " + ".join(f"{number} × {names[key]}" if number > 1 else names[key] for key, number in counted.items())


def blend_by_mass(yarns: Sequence[Yarn]) -> dict[str, float]:
    """Give the fibres of yarns held together in percent by mass; what no band states counts as ``other``.

    Empty where none states anything. Source: shares by mass are weighted by mass, definition.
    """
    if not any(yarn.fibres for yarn in yarns):
        return {}
    whole = math.fsum(yarn.grist_tex for yarn in yarns)
    blend: dict[str, float] = {}
    for yarn in yarns:
        named = {share.fibre: share.percent for share in yarn.fibres} or {"other": 100.0}
        for fibre, percent in named.items():
            blend[fibre] = blend.get(fibre, 0.0) + percent * yarn.grist_tex / whole
    return blend


def care_of(blend: Mapping[str, float]) -> CareClass:
    """Give the care that the most delicate fibre wants; where something is not stated, that of the unknown."""
    if not blend or "other" in blend:
        return CARE_STEPS[CARE_NOT_STATED]
    return max((CARE_STEPS[FIBRE_TRAITS[fibre].care] for fibre in blend), key=lambda care: care.step)


def unlike_share(one: Mapping[str, float], other: Mapping[str, float]) -> float:
    """Give the share by mass in which two blends differ in bulk density, 0 to 1; 1 where one of them is not stated.

    Half the sum of the differences, over fibres grouped by their bulk density; what is not stated is alike to nothing.
    """
    if not one or not other:
        return 1.0
    ours, theirs = _by_density(one, "original"), _by_density(other, "substitute")
    return math.fsum(abs(ours.get(key, 0.0) - theirs.get(key, 0.0)) for key in {*ours, *theirs}) / 200


def _by_density(blend: Mapping[str, float], whose: str) -> dict[str, float]:
    groups: dict[str, float] = {}
    for fibre, percent in blend.items():
        key = f"{FIBRE_TRAITS[fibre].bulk_density_g_cm3:g}" if fibre in FIBRE_TRAITS else f"unknown of the {whose}"
        groups[key] = groups.get(key, 0.0) + percent
    return groups


def thickness_relative_sd(unlike: float) -> float:
    """Give the doubt of a ratio of two diameters.

    Both bands' grist, the spinning, and the bulk density of what is unlike, added in square.
    """
    return math.hypot(LABEL_RELATIVE_SD / math.sqrt(2), SPINNING_RELATIVE_SD, BULK_RELATIVE_SD * unlike)


def side_of(original: Original, yarns: Sequence[Yarn]) -> Side:
    """Predict the fabric of a strand at the original's gauge; the original's own strand gives the original's side.

    Lengths and masses go with the loop lengths' ratio, whose doubt is half of what it changes (our judgement, as for
    another gauge) and the thicknesses'.
    """
    wish, row = wish_of(original), strand_of(yarns)
    fabric = predicted(wish, row)
    blend = blend_by_mass(yarns)
    tex, loop, ratio = float(row.grist_tex[0]), float(fabric.loop_mm[0]), float(fabric.thickness_ratio[0])
    diameter, fullness = ratio * wish.diameter_mm, float(fabric.fullness[0])
    same = strand_key(yarns) == strand_key(original.strands)
    doubt = 0.0 if same else thickness_relative_sd(unlike_share(blend, blend_by_mass(original.strands)))
    stitches = original.gauge.stitches_per_10cm
    per_mm2 = stitches * original.gauge.rows_or_usual_per_10cm / 10_000
    length = _length_factor(loop / wish.loop_mm, wish.loop_per_mm * diameter / wish.loop_mm * doubt)
    known = row.known_share[0] > 0
    metres, garment_m = original.density, original.need_m
    if not same:
        metres = _known(metres).times(length, "yarn in a square metre, in this yarn")
        garment_m = None if garment_m is None else _known(garment_m).times(length, "the same stitches in this yarn")
    return Side(
        name=strand_name(yarns),
        fibres=blend,
        grist_tex=tex,
        thickness_mm=_figure(
            "thickness in the fabric",
            f"0.0564 × √({tex:.4g} tex × {float(row.bulk_cm3_g[0]) * 0.4:.3g})",
            diameter,
            math.hypot(LABEL_RELATIVE_SD / 2, BULK_RELATIVE_SD),
            "mm",
        ),
        loop_mm=_figure("yarn in one stitch", f"at {stitches:.4g} sts to 10 cm", loop, LOOP_RELATIVE_SD, "mm"),
        tightness=_figure("tightness", f"√{tex:.4g} / {loop:.4g}", math.sqrt(tex) / loop, LOOP_RELATIVE_SD, "√tex/mm"),
        tightness_word=tightness_word(fullness) if original.is_plain else None,
        cover=_figure(
            "yarn area over fabric area",
            f"{per_mm2:.4g} sts/mm² × {loop:.4g} mm × {diameter:.3g} mm",
            per_mm2 * loop * diameter,
            math.hypot(LOOP_RELATIVE_SD, BULK_RELATIVE_SD),
            "×",
        ),
        own_stitches_per_10cm=_figure(
            "stitches to 10 cm that cover alike", f"{stitches:.4g} / {ratio:.3f}", stitches / ratio, doubt, "sts"
        ),
        mass_g_m2=_grams(metres, tex, "g/m²", "mass of a square metre", label=not same),
        garment_m=garment_m,
        garment_g=None if garment_m is None else _grams(garment_m, tex, "g", "mass of the garment", label=not same),
        wash=expected_wash(yarns),
        drape=float(fabric.drape[0]) if known else None,
        warmth=float(row.warmth[0]) if known else None,
        elasticity=float(row.elasticity[0]) if known else None,
        care=care_of(blend),
    )


def strand_key(yarns: Sequence[Yarn]) -> tuple[str, ...]:
    """Give what makes two strands the same: their yarns' keys, however they are ordered."""
    return tuple(sorted(yarn.key for yarn in yarns))


def _known(originals: Estimate) -> Estimate:
    """Give a figure of the original as one line: its working stands on the original's side."""
    return Estimate.known(
        "in the original's yarn", originals.mean, originals.unit, originals.origin, sd=originals.sd, source="see there"
    )


def _length_factor(ratio: float, thickness_sd: float) -> Estimate:
    sd = math.hypot((ratio - 1) / 2, thickness_sd)
    return Estimate.worked(
        "loop length in this yarn against the original's", f"{ratio:.4f}", ratio, sd, "×", source="loop length"
    )


def _figure(says: str, working: str, mean: float, relative_sd: float, unit: str) -> Estimate:
    return Estimate.worked(says, working, mean, mean * relative_sd, unit, source="docs: how it computes, substitution")


def _grams(metres: Estimate, tex: float, unit: str, says: str, *, label: bool) -> Estimate:
    """Turn metres into grams. A substitute's band adds its own doubt; the original's is in its metres."""
    mean = metres.mean * tex / 1000
    relative = math.hypot(metres.relative_sd, LABEL_RELATIVE_SD if label else 0.0)
    return Estimate.worked(
        says,
        f"{metres.mean:.4g} {metres.unit} × {tex:.4g} tex / 1000",
        mean,
        mean * relative,
        unit,
        source="arithmetic; grist ± 3 % (our judgement)",
        after=metres.steps,
    )
