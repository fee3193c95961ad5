"""Invented yarns for the tests of substitution."""

from collections.abc import Mapping

from loopwright.fabric import Gauge
from loopwright.need.substitution import Original
from loopwright.uncertainty import Estimate, Origin
from loopwright.yarn import Yarn

__all__ = ["DK", "original", "yarn"]


def yarn(key: str, fibres: Mapping[str, float], tex: float, mass_g: float = 50) -> Yarn:
    """A yarn of this grist."""
    return Yarn.model_validate(
        {"key": key, "name": key.title(), "fibres": fibres, "length_m": mass_g / tex * 1000, "mass_g": mass_g}
    )


DK = yarn("dk", {"wool": 100}, 400)


def original(*strands: Yarn, stitches: float = 22, rows: float = 30, need_m: float | None = 1000) -> Original:
    """A strand at a gauge; DK in stocking stitch when nothing else is said."""
    need = None if need_m is None else Estimate.known("given", need_m, "m", Origin.STATED, sd=0.05 * need_m)
    return Original(strands=strands or (DK,), gauge=Gauge(stitches_per_10cm=stitches, rows_per_10cm=rows), need_m=need)
