"""The strand to be replaced, as it is knitted, and what follows from it once."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Annotated, Final

from pydantic import Field

from loopwright.fabric import STRUCTURES, Gauge, stitch_length_mm
from loopwright.fabric.loop import LOOP_RELATIVE_SD
from loopwright.fabric.plausible import PLAIN
from loopwright.fabric.structure import StructureName
from loopwright.need.substitution.fibre_traits import WOOL_BULK_DENSITY_G_CM3
from loopwright.need.substitution.strands import StrandColumns, strand_of
from loopwright.records import Record
from loopwright.uncertainty import Estimate
from loopwright.yarn import Yarn, effective_diameter_mm

__all__ = ["Original", "Wish", "diameter_mm", "wish_of"]

USUAL_TIGHTNESS: Final = 1.1
"""Tightness at which a plain fabric drapes as its fibre's rank says: middle of *normal*, our judgement."""


class Original(Record):
    """A strand as it is knitted.

    :ivar strands: the yarns of it; one named twice for two strands.
    :ivar gauge: that it is knitted at, and that the substitute is to be knitted at.
    :ivar washed: whether that gauge was counted after washing.
    :ivar density_relative_sd: doubt of stitches × rows, as a share.
    :ivar metres_per_m2: metres to the square metre, where her own swatch tells them better than the gauge.
    :ivar need_m: metres of strand that is to be replaced, if known.
    """

    strands: Annotated[tuple[Yarn, ...], Field(min_length=1)]
    gauge: Gauge
    structure: StructureName = "stocking stitch"
    washed: bool = True
    density_relative_sd: float = 0.03
    metres_per_m2: Estimate | None = None
    need_m: Estimate | None = None

    @property
    def is_plain(self) -> bool:
        """Say whether it is stocking stitch, for which the words of tightness hold."""
        return self.structure in PLAIN

    @property
    def density(self) -> Estimate:
        """Give metres of strand to the square metre: hers, else ``s·r·100·l`` by the loop length."""
        if self.metres_per_m2 is not None:
            return self.metres_per_m2
        rows = self.gauge.rows_or_usual_per_10cm
        loop = wish_of(self).loop_mm
        mean = self.gauge.stitches_per_10cm * rows * 100 * loop / 1000
        return Estimate.worked(
            "yarn in a square metre, by loop length",
            f"{self.gauge.stitches_per_10cm:.4g} × {rows:.4g} × 100 sts × {loop:.4g} mm",
            mean,
            mean * math.hypot(self.density_relative_sd, LOOP_RELATIVE_SD, STRUCTURES[self.structure].size_relative_sd),
            "m/m²",
            source="loop length after Dalidovich and Munden",
        )


@dataclass(frozen=True, slots=True, eq=False)
class Wish:
    """What every substitute is held against: plain numbers of one original.

    :ivar strand: the original as one row.
    :ivar diameter_mm: effective diameter within the fabric.
    :ivar loop_bare_mm: loop length of a yarn without thickness at this gauge.
    :ivar loop_per_mm: millimetres of loop for each millimetre of diameter.
    :ivar usual_tightness: at which a fibre drapes as its rank says.
    """

    strand: StrandColumns
    is_plain: bool
    diameter_mm: float
    loop_bare_mm: float
    loop_per_mm: float
    usual_tightness: float

    @property
    def loop_mm(self) -> float:
        """Give the loop length of the original."""
        return self.loop_bare_mm + self.loop_per_mm * self.diameter_mm


def diameter_mm(grist_tex: float, bulk_cm3_g: float) -> float:
    """Give the effective diameter within the fabric: that of smooth wool, ``0.0564·√tex``, at another bulk density.

    ``0.0564·√(tex · volume · 0.40)``: fibre that packs closer lies thinner. Source: round yarn of that density,
    arithmetic; the densities are judged, ± 25 %.
    """
    return effective_diameter_mm(grist_tex * bulk_cm3_g * WOOL_BULK_DENSITY_G_CM3)


def wish_of(original: Original) -> Wish:
    """Work out what substitutes are held against. Loop length is linear in the diameter at a given gauge."""
    strand = strand_of(original.strands)
    state = "washed" if original.washed else "unwashed"
    per_stitch = STRUCTURES[original.structure].yarn_per_stitch
    diameter = diameter_mm(float(strand.grist_tex[0]), float(strand.bulk_cm3_g[0]))
    bare = stitch_length_mm(original.gauge, original.structure, 0.0, state)
    slope = math.pi / 2 * per_stitch
    own = diameter / effective_diameter_mm(1.0) / (bare + slope * diameter)
    return Wish(
        strand=strand,
        is_plain=original.is_plain,
        diameter_mm=diameter,
        loop_bare_mm=bare,
        loop_per_mm=slope,
        usual_tightness=USUAL_TIGHTNESS if original.is_plain else own,
    )
