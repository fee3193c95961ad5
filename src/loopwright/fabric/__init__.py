"""The knitted fabric: swatch, gauge before and after washing, loop length.

* :class:`Gauge`, :class:`Swatch`: what was counted, weighed and washed.
* :data:`STRUCTURES`: yarn and time per stitch of each fabric against stocking stitch.
* :func:`loop_length_mm`: yarn in one stitch from gauge and grist.
"""

from loopwright.fabric.gauge import Gauge, GaugeField, gauge_sd
from loopwright.fabric.loop import loop_length_mm
from loopwright.fabric.structure import STRUCTURES, Structure, StructureName
from loopwright.fabric.swatch import Swatch

__all__ = [
    "STRUCTURES",
    "Gauge",
    "GaugeField",
    "Structure",
    "StructureName",
    "Swatch",
    "gauge_sd",
    "loop_length_mm",
]
