"""Plausible briefs of tops, from small children to the largest sizes: strategies for the laws of drafting."""

from __future__ import annotations

from hypothesis import strategies as st

from loopwright.fabric import Gauge
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction


@st.composite
def gauges(draw: st.DrawFn) -> Gauge:
    stitches = draw(st.floats(14, 36))
    return Gauge(stitches_per_10cm=stitches, rows_per_10cm=stitches * draw(st.floats(1.2, 1.5)))


@st.composite
def measures(draw: st.DrawFn, *, shaped: bool = True) -> GarmentMeasures:
    """Proportions of bodies with ease: the ratios span the size tables of children and adults."""
    bust = draw(st.floats(54, 150))
    armhole = 0.10 * bust + 8 + draw(st.floats(0, 4))
    upper_arm = bust * draw(st.floats(0.30, 0.40))
    known = {
        "bust_girth": bust,
        "length": armhole + draw(st.floats(16, 45)),
        "armhole_depth": armhole,
        "shoulder_width": min(0.24 * bust + 13, 0.42 * bust) * draw(st.floats(0.97, 1.03)),
        "upper_arm_girth": upper_arm,
        "wrist_girth": upper_arm * draw(st.floats(0.6, 0.9)),
        "sleeve_length": draw(st.floats(16, 50)),
    }
    if shaped and draw(st.booleans()):
        known["hip_girth"] = bust * draw(st.floats(0.94, 1.1))
    return GarmentMeasures.model_validate(known)


@st.composite
def briefs(draw: st.DrawFn, construction: Construction, /, **options: st.SearchStrategy[object]) -> Brief:
    """Give briefs of one construction; ``options`` are strategies by option name."""
    chosen = {name: draw(strategy) for name, strategy in options.items()}
    wanted = draw(measures())
    assert wanted.bust_girth_cm is not None
    return Brief(
        construction,
        wanted,
        draw(gauges()),
        DraftOptions.model_validate(chosen),
        head_girth_cm=min(44 + 0.13 * wanted.bust_girth_cm, 60.0),
    )
