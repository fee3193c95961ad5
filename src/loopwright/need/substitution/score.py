r"""One score for one substitute and for a million.

Per trait the penalty is :math:`\min((\text{off}/\text{close})^2, 9)`; the score is their weighted mean, 0 for the
same and 9 at most. A substitute gets the worst verdict of its traits, and a worse verdict stands behind every better
one. Our proposal: no published ranking of substitutes is known to us.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.need.substitution.fibre_traits import WOOL_BULK_DENSITY_G_CM3
from loopwright.need.substitution.limits import LIMITS, MOST_PENALTY, Limit, Trait
from loopwright.need.substitution.original import Wish
from loopwright.need.substitution.strands import StrandColumns
from loopwright.yarn import effective_diameter_mm

__all__ = ["JAMMED_DIAMETERS", "Predicted", "Ranking", "offs", "predicted", "rank", "rank_keys"]

Column = NDArray[np.float64]

JAMMED_DIAMETERS: Final = 16.7
"""Shortest loop in diameters. Source: 16.67 Chamberlain 1926, 16.75 Hepworth and Leaf, both as quoted in 2016."""
BLOCK: Final = 1 << 14
"""Rows that are scored at a time, so that what is between stays in the processor's cache."""
VERDICT_STEP: Final = MOST_PENALTY + 1
WEIGHT_IN_ALL: Final = math.fsum(limit.weight for limit in LIMITS.values())
MOST_DRAPE: Final = 10.0


@dataclass(frozen=True, slots=True, eq=False)
class Predicted:
    """Fabrics of n strands at the original's gauge.

    :ivar thickness_ratio: diameter over the original's; cover goes with it.
    :ivar loop_mm: loop length.
    :ivar mass_ratio: grams per square metre over the original's.
    :ivar fullness: tightness √tex/l of a smooth wool as thick as this strand, so that fibres can be compared.
    :ivar room: loop length over the shortest that it can have.
    :ivar drape: rank of the fabric, 1 to 10.
    """

    thickness_ratio: Column
    loop_mm: Column
    mass_ratio: Column
    fullness: Column
    room: Column
    drape: Column


@dataclass(frozen=True, slots=True, eq=False)
class Ranking:
    """The best substitutes, the best first.

    :ivar places: rows of the columns that were ranked.
    :ivar verdicts: places in ``VERDICTS``.
    :ivar scores: 0 for the same, 9 at most.
    """

    places: NDArray[np.intp]
    verdicts: NDArray[np.intp]
    scores: Column


def predicted(wish: Wish, strands: StrandColumns) -> Predicted:
    r"""Predict the fabrics of strands knitted to the original's gauge.

    With d the effective diameter and l the loop length, :math:`l = l_0 + k d` at a given gauge; mass goes with
    :math:`l \cdot tex`, tightness is :math:`\sqrt{tex}/l`, room is :math:`l/16.7d`, and drape is the fibres' rank
    × 1.1 / tightness within 1 to 10 (outside stocking stitch the original's tightness stands for 1.1).

    Source: loop length as in :mod:`loopwright.fabric.loop`; tightness factor, textile handbooks (from memory);
    the drape rule is our judgement.
    """
    ratio_wool = effective_diameter_mm(1.0)
    diameter = np.sqrt(strands.grist_tex * strands.bulk_cm3_g * WOOL_BULK_DENSITY_G_CM3)
    diameter *= ratio_wool
    loop = wish.loop_per_mm * diameter
    loop += wish.loop_bare_mm
    fullness = diameter / loop
    room = 1 / (fullness * JAMMED_DIAMETERS)
    fullness /= ratio_wool
    drape = strands.drape * wish.usual_tightness
    drape /= fullness
    np.clip(drape, 1.0, MOST_DRAPE, out=drape)
    mass = strands.grist_tex * loop
    mass /= float(wish.strand.grist_tex[0]) * wish.loop_mm
    diameter /= wish.diameter_mm
    return Predicted(diameter, loop, mass, fullness, room, drape)


def offs(
    wish: Wish, strands: StrandColumns, fabric: Predicted, own_fabric: Predicted
) -> Iterator[tuple[Limit, Column]]:
    """Give how far the strands are off in every trait, n values each.

    :param own_fabric: what is predicted for the original's own strand.

    Ranks and washing that no fibre tells count as twice what is close: they need care.
    """
    own = wish.strand
    yield LIMITS["thickness"], np.abs(fabric.thickness_ratio - 1)
    if wish.is_plain:
        # No strand thinner than the original is called squeezed.
        yield LIMITS["squeeze"], np.where(fabric.room < own_fabric.room, 1 - fabric.room, 0.0)
    yield LIMITS["mass"], np.abs(fabric.mass_ratio - 1)
    told: tuple[tuple[Trait, Column, Column], ...] = (
        ("wash_length", strands.wash_length_pct, own.wash_length_pct),
        ("wash_width", strands.wash_width_pct, own.wash_width_pct),
        ("drape", fabric.drape, own_fabric.drape),
        ("warmth", strands.warmth, own.warmth),
        ("elasticity", strands.elasticity, own.elasticity),
    )
    for trait, column, wanted in told:
        limit = LIMITS[trait]
        off = np.abs(column - wanted[0])
        np.copyto(off, 2 * limit.close, where=np.isnan(off))
        yield limit, off
    yield LIMITS["care"], np.maximum(strands.care_step - own.care_step[0], 0.0)


def rank_keys(wish: Wish, strands: StrandColumns) -> Column:
    """Give one number per strand to sort by, ascending: ten times its verdict's place, plus its score."""
    keys = np.empty(len(strands))
    own_fabric = predicted(wish, wish.strand)
    for start in range(0, len(strands), BLOCK):
        block = slice(start, start + BLOCK)
        keys[block] = _block_keys(wish, strands.rows(block), own_fabric)
    return keys


def _block_keys(wish: Wish, strands: StrandColumns, own_fabric: Predicted) -> Column:
    score = np.zeros(len(strands))
    worse = np.zeros(len(strands), dtype=bool)
    worst = np.zeros(len(strands), dtype=bool)
    for limit, off in offs(wish, strands, predicted(wish, strands), own_fabric):
        worse |= off > limit.close
        worst |= off > limit.end
        penalty = off / limit.close
        penalty *= penalty
        np.minimum(penalty, MOST_PENALTY, out=penalty)
        penalty *= limit.weight / WEIGHT_IN_ALL
        score += penalty
    score += VERDICT_STEP * (worse.astype(np.float64) + worst)
    return score


def rank(wish: Wish, strands: StrandColumns, best: int, allowed: NDArray[np.bool_] | None = None) -> Ranking:
    """Rank strands and give the best; equal ones in the order of their rows.

    One pass finds the key of the last that is wanted (``numpy.partition``); only those up to it are sorted.

    :param best: how many, at least one.
    :param allowed: n truth values; rows that are not allowed are left out.
    """
    keys = rank_keys(wish, strands)
    if allowed is not None:
        keys[~allowed] = np.inf
    best = min(best, len(keys))
    if best < 1:
        return Ranking(np.array([], np.intp), np.array([], np.intp), np.array([]))
    last = np.partition(keys, best - 1)[best - 1]
    within = np.flatnonzero((keys <= last) & np.isfinite(keys))
    places = within[np.argsort(keys[within], kind="stable")][:best]
    found = keys[places]
    verdicts = (found // VERDICT_STEP).astype(np.intp)
    return Ranking(places, verdicts, found - verdicts * VERDICT_STEP)
