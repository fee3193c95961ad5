"""Rows between hem edge and underarm, against lengths added up by hand."""

from __future__ import annotations

import re

import pytest

from loopwright.fabric import Gauge
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.torso import rows_below
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction
from loopwright.units import BadInput

HEM_CM = 4.8
HEM = {"fabric": "stocking stitch", "depth": "4.8 cm"}


def brief_of(length_cm: float) -> Brief:
    """20 stitches and 25 rows to 10 cm: a row is 0.4 cm, and a hem of 12 rows 4.8 cm deep."""
    return Brief(
        Construction.DROP,
        GarmentMeasures(length_cm=length_cm),
        Gauge(stitches_per_10cm=20, rows_per_10cm=25),
        DraftOptions.model_validate({"hem": HEM}),
    )


def below(length_cm: float, above_cm: float, *, flat: bool) -> tuple[int, Measured]:
    brief = brief_of(length_cm)
    measured = Measured(brief.measures, brief.gauge)
    return rows_below(brief, "an armhole", above_cm, measured, flat=flat), measured


@pytest.mark.parametrize(("flat", "step"), [(False, 1), (True, 2)])
@pytest.mark.parametrize("length_cm", [50.0, 56.3, 60.1])
def test_the_whole_length_comes_out_within_half_a_step(length_cm: float, flat: bool, step: int) -> None:
    rows, measured = below(length_cm, 20, flat=flat)
    assert rows % step == 0
    assert abs(HEM_CM + rows * 0.4 + 20 - length_cm) <= step * 0.4 / 2 + 1e-9
    (check,) = measured.checks
    assert check.drafted_cm == pytest.approx(HEM_CM + rows * 0.4 + 20)


@pytest.mark.parametrize("flat", [False, True])
def test_a_length_that_is_too_short_is_told_with_one_that_does(flat: bool) -> None:
    with pytest.raises(BadInput, match=r"an armhole 20 cm deep and a hem edge of") as refused:
        below(24, 20, flat=flat)
    assert refused.value.place == "length"
    least = re.search(r"at least ([\d.]+) cm", refused.value.wanted)
    assert least is not None
    assert float(least[1]) == pytest.approx(20 + HEM_CM + 2 * 0.4, abs=0.05)
    assert below(float(least[1]), 20, flat=flat)[0] == 2
