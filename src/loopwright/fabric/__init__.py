"""The knitted fabric: swatch, gauge before and after washing, loop length.

* :class:`Gauge`, :class:`Swatch`: what was counted, weighed and washed; :class:`Count`, one count as she wrote it.
* :func:`count_statistics`, :class:`CountStatistics`: mean and standard error of several counts.
* :func:`gauge_doubts`: counts that are hard to believe, with the usual reasons.
* :func:`wash_change`, :func:`knit_to_cm`, :func:`washed_cm`, :func:`expected_wash`: what washing does.
* :func:`next_needle`, :data:`NEEDLES`: the needle to try next.
* :func:`swatch_tightness`: how tight a fabric is for its yarn.
* :data:`STRUCTURES`: yarn and time per stitch of each fabric against stocking stitch.
* :func:`loop_length_mm`, :func:`plain_loop_mm`, :func:`stitch_length_mm`: yarn in one stitch from gauge and grist.
* :class:`Unravelled`: yarn in one stitch, measured.
"""

from loopwright.fabric.count import Count, Counts
from loopwright.fabric.gauge import Gauge, GaugeField
from loopwright.fabric.gauge_statistics import COUNT_RELATIVE_SD, CountStatistics, count_statistics
from loopwright.fabric.loop import loop_length_mm, plain_loop_mm, stitch_length_mm
from loopwright.fabric.needle import NEEDLES, Needle, NeedleAdvice, needle_of, next_needle
from loopwright.fabric.plausible import GaugeDoubt, gauge_doubts
from loopwright.fabric.structure import STRUCTURES, Structure, StructureName
from loopwright.fabric.swatch import Swatch
from loopwright.fabric.tightness import Tightness, swatch_tightness
from loopwright.fabric.unravelled import Unravelled
from loopwright.fabric.washing import (
    Factor,
    Length,
    WashChange,
    WashRange,
    expected_wash,
    knit_to_cm,
    wash_change,
    washed_cm,
)

__all__ = [
    "COUNT_RELATIVE_SD",
    "NEEDLES",
    "STRUCTURES",
    "Count",
    "CountStatistics",
    "Counts",
    "Factor",
    "Gauge",
    "GaugeDoubt",
    "GaugeField",
    "Length",
    "Needle",
    "NeedleAdvice",
    "Structure",
    "StructureName",
    "Swatch",
    "Tightness",
    "Unravelled",
    "WashChange",
    "WashRange",
    "count_statistics",
    "expected_wash",
    "gauge_doubts",
    "knit_to_cm",
    "loop_length_mm",
    "needle_of",
    "next_needle",
    "plain_loop_mm",
    "stitch_length_mm",
    "swatch_tightness",
    "wash_change",
    "washed_cm",
]
