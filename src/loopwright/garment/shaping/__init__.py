"""Shaping of hand-knits as exact small integer problems, each with a stated order of preference.

Nothing is a float rounded at the end: stitches and rows sum exactly, mirrored sides are equal, and what cannot be done
raises `BadInput` with what can. Rows are counted from 0.

Whole counts           `nearest_count` (repeat, parity, range), `fits_repeat`, `shaping_times`
Within a row           `spread_across` (increases), `spread_decreases`, `even_sections`
Over rows              `spread_along` (waists, sleeves, raglans), `spread_mixed` (caps, necks), `Rhythm`
In steps               `even_steps`, `shoulder_steps`, `cast_off_curve` (underarms)
Whole rounds           `worked_across`, `even_ratio`, `even_counts`, `rows_at` (round yokes, crowns)
Necks                  `round_neck`, `v_neck`, `boat_neck`, `high_neck`, `NeckCurve`
Short rows             `bust_short_rows`, `cup_depth_cm`, `measured_depth_cm`, `back_neck_raise`, `ShortRows`
Bands                  `pick_up_ratio`, `picked_up`, `pick_up_pattern`, `pick_up_steps`,
                       `buttonholes`, `buttonhole_plan`, `ButtonholePlan`
Slanted edges          `slanted_length_cm`, `slant_rise_cm`
Saying it shortly      `tally`, `runs`
"""

from loopwright.garment.shaping.across import even_sections, runs, spread_across, spread_decreases, tally
from loopwright.garment.shaping.along import Rhythm, spread_along, spread_mixed
from loopwright.garment.shaping.buttonholes import ButtonholePlan, buttonhole_plan, buttonholes
from loopwright.garment.shaping.counts import fits_repeat, nearest_count, shaping_times
from loopwright.garment.shaping.neckline import NeckCurve, boat_neck, high_neck, round_neck, v_neck
from loopwright.garment.shaping.pick_up import pick_up_pattern, pick_up_ratio, pick_up_steps, picked_up
from loopwright.garment.shaping.rounds import even_counts, even_ratio, rows_at, worked_across
from loopwright.garment.shaping.short_rows import (
    ShortRows,
    back_neck_raise,
    bust_short_rows,
    cup_depth_cm,
    measured_depth_cm,
)
from loopwright.garment.shaping.slant import slant_rise_cm, slanted_length_cm
from loopwright.garment.shaping.steps import cast_off_curve, even_steps, shoulder_steps

__all__ = [
    "ButtonholePlan",
    "NeckCurve",
    "Rhythm",
    "ShortRows",
    "back_neck_raise",
    "boat_neck",
    "bust_short_rows",
    "buttonhole_plan",
    "buttonholes",
    "cast_off_curve",
    "cup_depth_cm",
    "even_counts",
    "even_ratio",
    "even_sections",
    "even_steps",
    "fits_repeat",
    "high_neck",
    "measured_depth_cm",
    "nearest_count",
    "pick_up_pattern",
    "pick_up_ratio",
    "pick_up_steps",
    "picked_up",
    "round_neck",
    "rows_at",
    "runs",
    "shaping_times",
    "shoulder_steps",
    "slant_rise_cm",
    "slanted_length_cm",
    "spread_across",
    "spread_along",
    "spread_decreases",
    "spread_mixed",
    "tally",
    "v_neck",
    "worked_across",
]
