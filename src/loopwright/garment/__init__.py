"""The thing to be made: what she settled for one garment, and how many stitches it holds.

* :class:`Garment`, :class:`RolePlan`, :class:`Changes`: one garment of a season.
* :func:`fabric_area_cm2`, :func:`stitch_count`: area from finished measures, stitches from area and gauge.
"""

from loopwright.garment.area import fabric_area_cm2
from loopwright.garment.garment import Changes, Garment, RolePlan, Strand
from loopwright.garment.stitches import stitch_count

__all__ = [
    "Changes",
    "Garment",
    "RolePlan",
    "Strand",
    "fabric_area_cm2",
    "stitch_count",
]
