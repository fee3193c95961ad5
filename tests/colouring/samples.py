"""Drafts and charts to colour."""

from __future__ import annotations

from functools import cache

import numpy as np

from loopwright.chart import Chart, ChartRole
from loopwright.colouring import ColourWork
from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import Brief, ColourPlan, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction

GAUGE = Gauge(stitches_per_10cm=20, rows_per_10cm=28)
MEASURES = GarmentMeasures.model_validate(
    {"bust_girth": 96, "length": 60, "sleeve_length": 46, "upper_arm_girth": 34, "head_girth": 52}
)
DIAMOND = np.array([[0, 1, 0, 0], [1, 1, 1, 0], [0, 1, 0, 0]], dtype=np.uint8)
"""Its axis is the second column; the fourth is plain."""


def diamond() -> Chart:
    return Chart(DIAMOND, np.zeros_like(DIAMOND), (ChartRole("main"), ChartRole("contrast")))


@cache
def made(construction: str, *, flat: bool = False, opens: bool = False, top_down: bool = False) -> Draft:
    worked = "flat" if flat else "in the round"
    options = DraftOptions.model_validate(
        {"worked": worked, "opens_in_front": opens, "direction": "top down" if top_down else None}
    )
    return draft(Brief(Construction(construction), MEASURES, GAUGE, options))


def work(plan: dict[str, str]) -> ColourWork:
    return ColourWork(ColourPlan.model_validate(plan), "main", (("diamond", diamond()),))
