"""The yarn in one stitch of one strand: unravelled, weighed, or from gauge and grist; joined by their precision."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from loopwright.fabric import STRUCTURES, Gauge, StructureName, Swatch, stitch_length_mm
from loopwright.fabric.loop import LOOP_RELATIVE_SD
from loopwright.garment.stitches import ONE_COUNT_DENSITY_SD
from loopwright.uncertainty import Estimate, Origin, combine_by_precision
from loopwright.yarn.lot import LABEL_RELATIVE_SD, SCALE_SD_G

__all__ = ["Loop", "loop_by_gauge", "loop_on_swatch", "stitch_on_swatch"]

UNRAVELLED_RELATIVE_SD: Final = 0.03
"""Error of an unravelled length, as a share: 2 to 4 % for how straight it is drawn; our judgement."""
NO_GRIST_RELATIVE_SD: Final = 0.075
"""Error of the loop by Munden's equation alone, as a share: 6 to 9 %, judged from the spread of the models."""
OTHER_FABRIC_RELATIVE_SD: Final = 0.03
"""Doubt of the loop of a fabric that was not swatched, such as a rib beside stocking stitch; our judgement."""
PLAIN: Final = frozenset({"stocking stitch", "stocking stitch in the round"})


@dataclass(frozen=True, slots=True)
class Loop:
    """The yarn in one stitch of a strand.

    :ivar fabric: the fabric that it is known of.
    :ivar stitch_mm: yarn in one stitch of that fabric, in mm; its doubt is shared by every stitch of the garment.
    """

    fabric: StructureName
    stitch_mm: Estimate

    def of(self, fabric: StructureName) -> float:
        """Give the yarn in one stitch of any fabric of this strand and needle, in mm.

        A smaller needle for an edge is not allowed for: knitted to a depth it has as many more rows as its loops are
        shorter. Source: loop factors of :data:`~loopwright.fabric.STRUCTURES`.
        """
        return self.stitch_mm.mean * STRUCTURES[fabric].yarn_per_stitch / STRUCTURES[self.fabric].yarn_per_stitch

    def relative_sd(self, fabric: StructureName) -> float:
        """Give the doubt of :meth:`of` as a share."""
        known = fabric == self.fabric or {fabric, self.fabric} <= PLAIN
        return self.stitch_mm.relative_sd if known else math.hypot(self.stitch_mm.relative_sd, OTHER_FABRIC_RELATIVE_SD)


def loop_by_gauge(
    gauge: Gauge,
    fabric: StructureName,
    grist_tex: float | None,
    *,
    state: str = "unknown",
    density_sd: float = ONE_COUNT_DENSITY_SD,
) -> Loop:
    """Give the loop from gauge and grist.

    The model errs by 6 % (7.5 % without a grist); a loop goes as the root of a stitch's area, so half of the doubt of
    stitches × rows is added, and for another fabric than stocking stitch the doubt of its sizes. Source: Dalidovich and
    Munden as in :mod:`loopwright.fabric.loop`; sizes of fabrics as in the table of structures.

    :param density_sd: doubt of stitches × rows, as a share.
    """
    mean = stitch_length_mm(gauge, fabric, grist_tex, state)
    model_sd = LOOP_RELATIVE_SD if grist_tex is not None else NO_GRIST_RELATIVE_SD
    relative = math.hypot(model_sd, density_sd / 2, STRUCTURES[fabric].size_relative_sd)
    of_yarn = "no grist" if grist_tex is None else f"{grist_tex:.4g} tex"
    return Loop(
        fabric,
        Estimate.worked(
            f"yarn in a stitch of {fabric}",
            f"{gauge.stitches_per_10cm:.4g} sts × {gauge.rows_or_usual_per_10cm:.4g} rows to 10 cm, {of_yarn}, {state}",
            mean,
            relative * mean,
            "mm",
            source="loop length after Dalidovich and Munden",
        ),
    )


def loop_on_swatch(swatch: Swatch, grist_tex: float, swatch_tex: float) -> Loop:
    """Give the loop on a swatch: unravelled, else from gauge and grist; joined with its mass where it was weighed.

    What was measured on the swatch's own strand is carried to another grist at the same gauge by the model's ratio.

    :param grist_tex: of the strand to knit with.
    :param swatch_tex: of the strand that the swatch was knitted with.
    """
    ways = [stitch_on_swatch(swatch, grist_tex, swatch_tex, density_sd=swatch.density_relative_sd)]
    weighed = _weighed(swatch, swatch_tex, _ratio(swatch, grist_tex, swatch_tex))
    if weighed is not None:
        ways.append(weighed)
    return Loop(swatch.fabric, combine_by_precision(ways, f"yarn in a stitch of {swatch.fabric}, joined"))


def stitch_on_swatch(swatch: Swatch, grist_tex: float, swatch_tex: float, *, density_sd: float = 0.0) -> Estimate:
    """Give the yarn in one stitch of a swatch in mm, unravelled where it was, else from gauge and grist.

    :param density_sd: doubt of stitches × rows as a share, of which half is added to the model's.
    """
    unravelled = _unravelled(swatch, _ratio(swatch, grist_tex, swatch_tex))
    if unravelled is not None:
        return unravelled
    return loop_by_gauge(swatch.gauge, swatch.fabric, grist_tex, state=_state(swatch), density_sd=density_sd).stitch_mm


def _state(swatch: Swatch) -> str:
    return "washed" if swatch.is_washed else "unwashed"


def _ratio(swatch: Swatch, grist_tex: float, swatch_tex: float) -> float:
    """Give how many times longer the loop of another grist is at the swatch's gauge, by the model."""
    if grist_tex == swatch_tex:
        return 1.0
    own, other = (stitch_length_mm(swatch.gauge, swatch.fabric, tex, _state(swatch)) for tex in (swatch_tex, grist_tex))
    return other / own


def _carried(ratio: float) -> str:
    return "" if ratio == 1 else f" × {ratio:.3f} for another grist"


def _unravelled(swatch: Swatch, ratio: float) -> Estimate | None:
    measured = swatch.unravelled
    if measured is None:
        return None
    mean = measured.stitch_mm * ratio
    return Estimate.worked(
        f"yarn in a stitch of {swatch.fabric}, unravelled",
        f"{measured.length_cm:.4g} cm / {measured.stitches:.4g} sts{_carried(ratio)}",
        mean,
        UNRAVELLED_RELATIVE_SD * mean,
        "mm",
        origin=Origin.MEASURED,
        source="arithmetic; ± 3 % (our judgement)",
    )


def _weighed(swatch: Swatch, swatch_tex: float, ratio: float) -> Estimate | None:
    per_area = swatch.mass_per_area_g_m2
    if per_area is None or swatch.mass_g is None:
        return None
    gauge = swatch.gauge
    rows = gauge.rows_or_usual_per_10cm
    mean = per_area / swatch_tex * 1e6 / (gauge.stitches_per_10cm * rows * 100) * ratio
    sd = mean * math.hypot(SCALE_SD_G / swatch.mass_g, LABEL_RELATIVE_SD, swatch.density_relative_sd)
    return Estimate.worked(
        f"yarn in a stitch of {swatch.fabric}, by your weighed swatch",
        f"{per_area:.4g} g/m² / {swatch_tex:.4g} tex / ({gauge.stitches_per_10cm:.4g} × {rows:.4g} × 100 sts)"
        + _carried(ratio),
        mean,
        sd,
        "mm",
        origin=Origin.MEASURED,
        source="arithmetic; scale ± 1 g and grist ± 3 % (our judgement)",
    )
