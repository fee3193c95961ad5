"""Drafting and drawing a garment, each construction beside the drop shoulder of the same run."""

from __future__ import annotations

from collections.abc import Callable

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.wanted import Brief, GarmentMeasures
from loopwright.pattern import Construction
from loopwright.pictures.schematic import schematic
from loopwright.units import Reader

GAUGE = Gauge(stitches_per_10cm=28, rows_per_10cm=38)
MEASURES = GarmentMeasures(
    bust_girth_cm=110,
    hip_girth_cm=114,
    length_cm=62,
    armhole_depth_cm=23,
    shoulder_width_cm=41,
    upper_arm_girth_cm=38,
    wrist_girth_cm=22,
    sleeve_length_cm=45,
)
LIMIT_S = 0.05
"""What a full adult garment may take."""


def drafts(seconds: Callable[[Callable[[], object]], float], line: Callable[[str, float, str, float], None]) -> None:
    """Measure with these two, the clock and the printer of ``bench``."""
    print("Drafting, an adult's garment in fine yarn")
    unit = seconds(lambda: draft(Brief(Construction.DROP, MEASURES, GAUGE)))
    line("drop shoulder", unit, "the 50 ms that it may take", unit / LIMIT_S)
    for construction in (Construction.SET_IN, Construction.SLEEVELESS, Construction.RAGLAN, Construction.YOKE):
        brief = Brief(construction, MEASURES, GAUGE)
        took = seconds(lambda brief=brief: draft(brief))  # type: ignore[misc]
        line(construction.value, took, "the drop shoulder", took / unit)
    made = draft(Brief(Construction.DROP, MEASURES, GAUGE))
    reader = Reader(measures="metric", words="british")
    took = seconds(lambda: schematic(made, reader, says="a drop shoulder"))
    line("its schematic", took, "drafting it", took / unit)
