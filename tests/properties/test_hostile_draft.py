"""Measures drawn without regard to any body: a draft keeps the laws, or is refused in words; nothing else happens."""

from __future__ import annotations

import random
from collections.abc import Iterator

import pytest

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction
from loopwright.units import BadInput

RANGES_CM = {
    "length": (20, 90),
    "armhole_depth": (8, 40),
    "shoulder_width": (18, 60),
    "upper_arm_girth": (12, 70),
    "wrist_girth": (8, 50),
    "sleeve_length": (4, 60),
    "neck_width": (5, 60),
    "front_neck_depth": (1, 40),
    "back_neck_depth": (0.5, 12),
    "shoulder_slope": (0.3, 9),
    "hip_girth": (40, 190),
    "waist_girth": (40, 160),
}


def hostile(construction: Construction, number: int) -> Iterator[Brief]:
    chance = random.Random(f"hostile {construction.value}")
    for _ in range(number):
        known = {name: chance.uniform(*ends) for name, ends in RANGES_CM.items() if chance.random() < 0.6}
        measures = {"bust_girth": chance.uniform(50, 160), "length": 55.0, **known}
        stitches = chance.uniform(8, 45)
        options = {
            "neckline": chance.choice([None, "boat", "round", "V", "high"]),
            "opens_in_front": chance.random() < 0.3,
            "direction": chance.choice([None, "top down", "bottom up"]),
            "worked": chance.choice([None, "flat", "in the round"]),
            "sleeves": chance.choice([None, None, "none"]),
            "bust_short_rows_cm": chance.choice([None, None, 3.0]),
            "hem": {"depth": f"{chance.uniform(0.3, 12):.2f} cm"},
        }
        yield Brief(
            construction,
            GarmentMeasures.model_validate(measures),
            Gauge(stitches_per_10cm=stitches, rows_per_10cm=stitches * chance.uniform(1.05, 1.8)),
            DraftOptions.model_validate(options),
            head_girth_cm=chance.choice([None, 56.0]),
        )


@pytest.mark.parametrize("construction", [one for one in Construction if one.is_top], ids=str)
def test_a_draft_is_lawful_or_refused(construction: Construction) -> None:
    made, refused = 0, 0
    for brief in hostile(construction, 400):
        try:
            draft(brief)  # raises where a law is broken
            made += 1
        except BadInput as fault:
            refused += 1
            assert fault.wanted, brief
    assert made > 5
    assert refused > 5
