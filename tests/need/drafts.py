"""Plausible drafts to count yarn of, and strands to knit them with."""

from __future__ import annotations

from hypothesis import strategies as st

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import Brief, GarmentMeasures
from loopwright.need import StrandOfRole, loop_by_gauge
from loopwright.pattern import Construction

GAUGE = Gauge(stitches_per_10cm=20, rows_per_10cm=28)
STRAND = StrandOfRole(loop_by_gauge(GAUGE, "stocking stitch", 450.0), 450.0, 110.0)
MEASURES = {"bust_girth": 100.0, "length": 60.0, "upper_arm_girth": 36.0, "wrist_girth": 22.0, "sleeve_length": 45.0}


def pullover(construction: Construction = Construction.RAGLAN, **changed: float) -> Draft:
    """A plain pullover at 20 × 28, with measures changed in cm."""
    return draft(Brief(construction, GarmentMeasures.model_validate(MEASURES | changed), GAUGE))


pullovers = st.builds(
    pullover,
    st.sampled_from([Construction.RAGLAN, Construction.YOKE, Construction.DROP, Construction.SET_IN]),
    bust_girth=st.integers(85, 130).map(float),
    length=st.integers(52, 72).map(float),
    sleeve_length=st.integers(36, 52).map(float),
)
