"""Strands by column: what one yarn, a held-together pair or a catalogue of a million brings to a fabric."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from loopwright.need.substitution.fibre_traits import (
    CARE_NOT_STATED,
    CARE_STEPS,
    WOOL_BULK_DENSITY_G_CM3,
    known_fibres,
    share_row,
)
from loopwright.yarn import FIBRES, Yarn

__all__ = ["BRUSHED_FROM_SHARE", "StrandColumns", "held_together", "strand_columns", "strand_of"]

Column = NDArray[np.float64]
Index = slice | NDArray[np.intp]

BRUSHED_FROM_SHARE: Final = 0.5
"""From this share on a yarn of a fibre that is usually brushed is taken as brushed: our judgement."""


@dataclass(frozen=True, slots=True, eq=False)
class StrandColumns:
    """Strands, one a row; every column has the length n. What no fibre tells is NaN.

    :ivar grist_tex: grist of the whole strand.
    :ivar bulk_cm3_g: volume of a gram of it within the fabric: 2.5 for smooth wool.
    :ivar drape, warmth, elasticity: means of the fibres' ranks by mass, 1 to 10.
    :ivar wash_length_pct, wash_width_pct: middle of what the first gentle hand wash usually does, + grows.
    :ivar care_step: that of the most delicate fibre.
    :ivar known_share: share by mass of the fibres that something is known of.
    """

    grist_tex: Column
    bulk_cm3_g: Column
    drape: Column
    warmth: Column
    elasticity: Column
    wash_length_pct: Column
    wash_width_pct: Column
    care_step: Column
    known_share: Column

    def __len__(self) -> int:
        return len(self.grist_tex)

    def columns(self) -> tuple[Column, ...]:
        """Give the columns in the order of the fields."""
        return tuple(getattr(self, field.name) for field in fields(self))

    def rows(self, index: Index) -> StrandColumns:
        """Give some of the rows: a slice, which copies nothing, or an array of places."""
        named = {field.name: getattr(self, field.name)[index] for field in fields(self)}
        return StrandColumns(**named)


_AVERAGED: Final = ("drape", "warmth", "elasticity", "wash_length", "wash_width")
_KNOWN, _BULK, _BRUSHED, _BRUSHED_MORE = range(len(_AVERAGED), len(_AVERAGED) + 4)
_STEPS: Final = sorted({care.step for care in CARE_STEPS.values()})
_FIRST_STEP: Final = _BRUSHED_MORE + 1


def _per_fibre() -> Column:
    """Give one row per fibre of what is summed over a blend; the row of ``other`` is nothing but zeros."""
    rows = []
    for fibre in known_fibres():
        facts = FIBRES[fibre.name]
        brushed = fibre.brushed_density_g_cm3
        rows.append(
            [
                fibre.drape_rank,
                fibre.warmth_rank,
                fibre.elasticity_rank,
                sum(facts.wash_length_pct) / 2,
                sum(facts.wash_width_pct) / 2,
                1,
                1 / fibre.bulk_density_g_cm3,
                0 if brushed is None else 1,
                0 if brushed is None else 1 / brushed - 1 / fibre.bulk_density_g_cm3,
                *(float(CARE_STEPS[fibre.care].step == step) for step in _STEPS),
            ]
        )
    rows.append([0.0] * len(rows[0]))
    return np.array(rows)


_PER_FIBRE: Final = _per_fibre()


def strand_columns(grist_tex: ArrayLike, shares: NDArray[np.floating]) -> StrandColumns:
    r"""Give the columns of single yarns from grist and blend.

    Ranks, washing and volume are means of the fibres by mass over the fibres that are known; the volume of a gram is
    :math:`\sum_i p_i/\rho_i`. A yarn at least half of a usually brushed fibre is taken as brushed. Care follows the
    most delicate fibre.

    :param grist_tex: n grists in tex, above nothing.
    :param shares: n × 21 shares of one by mass, in the order of ``FIBRE_NAMES``; a row of zeros states no fibre.
    Source: ``data/fibre/traits.csv``, ``data/fibre/fibres.csv``; that blends average is our judgement.
    """
    grist = np.asarray(grist_tex, dtype=np.float64)
    sums = shares @ _PER_FIBRE.astype(shares.dtype)
    known = sums[:, _KNOWN].astype(np.float64)
    with np.errstate(invalid="ignore"):
        drape, warmth, elasticity, length, width = (sums[:, column] / known for column in range(len(_AVERAGED)))
    bulk = np.array(sums[:, _BULK], dtype=np.float64)
    bulk += np.where(sums[:, _BRUSHED] >= BRUSHED_FROM_SHARE, sums[:, _BRUSHED_MORE], 0)
    bulk = np.divide(bulk, known, out=np.full(len(grist), 1 / WOOL_BULK_DENSITY_G_CM3), where=known > 0)
    care = _care_steps(sums, shares[:, -1] > 0)
    return StrandColumns(grist, bulk, drape, warmth, elasticity, length, width, care, known)


def _care_steps(sums: NDArray[np.floating], other: NDArray[np.bool_]) -> Column:
    steps = np.full(len(sums), CARE_STEPS[CARE_NOT_STATED].step, dtype=np.float64)
    stated = (sums[:, _KNOWN] > 0) & ~other
    steps[stated] = 0
    for place, step in enumerate(_STEPS):
        np.copyto(steps, step, where=stated & (sums[:, _FIRST_STEP + place] > 0))
    return steps


def held_together(single: StrandColumns, members: NDArray[np.intp]) -> StrandColumns:
    r"""Give the columns of strands held together.

    Grists add; volumes, ranks and washing are means by mass, so that diameters add in square,
    :math:`d^2 = \sum_i d_i^2`; care follows the most delicate. Source: definition of tex, ASTM D861; geometry.

    :param members: m × k places in ``single``, the k yarns of each strand; one place twice is two strands of it.
    """
    grist = single.grist_tex[members]
    mass = grist / grist.sum(axis=1, keepdims=True)
    known = single.known_share[members]

    def by_mass(column: Column, weight: Column) -> Column:
        """Give the mean over the yarns of which something is known."""
        total = weight.sum(axis=1)
        whole = np.where(weight > 0, weight * column[members], 0).sum(axis=1)
        mean: Column = np.divide(whole, total, out=np.full(len(whole), np.nan), where=total > 0)
        return mean

    weight = mass * known
    return StrandColumns(
        grist_tex=grist.sum(axis=1),
        bulk_cm3_g=by_mass(single.bulk_cm3_g, mass),
        drape=by_mass(single.drape, weight),
        warmth=by_mass(single.warmth, weight),
        elasticity=by_mass(single.elasticity, weight),
        wash_length_pct=by_mass(single.wash_length_pct, weight),
        wash_width_pct=by_mass(single.wash_width_pct, weight),
        care_step=single.care_step[members].max(axis=1),
        known_share=weight.sum(axis=1),
    )


def strand_of(yarns: Sequence[Yarn]) -> StrandColumns:
    """Give one row: these yarns held together as one strand; name one twice for two strands of it."""
    shares = np.array([share_row(yarn.fibres) for yarn in yarns])
    single = strand_columns([yarn.grist_tex for yarn in yarns], shares)
    return held_together(single, np.arange(len(yarns))[np.newaxis])
