"""Shaped armholes, caps and straps against printed examples and tables.

Statuses: read (seen in the named text), cross-read (quoted by a second text, or recomputed from one). Row gauges and
lengths that a source does not print are ours and are said to be.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft, Kind
from loopwright.garment.parts.armhole import armhole_steps
from loopwright.garment.parts.plan import shoulder_rests
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction

IN = 2.54


def per_inch(stitches: float, rows: float) -> Gauge:
    return Gauge(stitches_per_10cm=stitches * 10 / IN, rows_per_10cm=rows * 10 / IN)


def edge(made: Draft, piece: str, face: str) -> list[tuple[Kind, int]]:
    """What is done at the right armhole edge of a face, in order."""
    sections = (made.section(piece, face), made.section(piece, f"{face} right shoulder"))
    shapings = [one for section in sections for one in section.shapings if one.side == "right"]
    return [(one.kind, one.stitches) for one in shapings if one.kind in (Kind.CAST_OFF, Kind.DECREASE)]


# Set-in armhole. Source: a knitter's weblog, 2007 (read): 62 cm wide, 38 cm across the shoulders, 28 × 40 to 10 cm:
# 12 cm a side; 3 cm = 8.4 → 8 cast off; 25.2 → 26 decreased over 64 rows (16 cm), then 10 cm straight.


def weblog(shoulders_cm: float = 38) -> Brief:
    return Brief(
        Construction.SET_IN,
        GarmentMeasures(
            bust_girth_cm=124,
            length_cm=65,
            armhole_depth_cm=28.5,  # 26 cm of edge and a slope of 2.5 cm; the slope is ours, as are length and sleeve
            shoulder_slope_cm=2.5,
            shoulder_width_cm=shoulders_cm,
            upper_arm_girth_cm=46,
            wrist_girth_cm=26,
            sleeve_length_cm=45,
        ),
        Gauge(stitches_per_10cm=28, rows_per_10cm=40),
    )


def test_weblog_takes_away_12_cm_on_each_side() -> None:
    made = draft(weblog())
    assert sum(stitches for _, stitches in edge(made, "back", "back")) == 8 + 26
    assert made.check("shoulder_width").drafted_cm == pytest.approx(38, abs=0.36)
    # "About an inch" is 7 stitches here; the weblog takes 3 cm, 8.
    assert edge(made, "back", "back")[0] == (Kind.CAST_OFF, 7)


def test_weblog_26_decreases_take_64_rows() -> None:
    steps = armhole_steps(34, 8, 68, slow_part=4)
    assert sum(kind is Kind.DECREASE for _, kind, _ in steps) == 26
    assert steps[-1][0] == 64  # rows 1 to 64, row 0 being that of the first cast-off


# Cap heights by class of chest. Source: a knitter's weblog, 2014 (read): armhole depth less 2 in up to a chest of 30
# in, less 3 in up to 48 in, less 4 in above; a band of an inch about it, since ours follows from the lengths of the
# edges. Upper arms and gauge are ours; depths are to the end of the shoulder, as the armhole's edge runs. The weblog's
# own cap of 36 rows is not reproduced: neither its armhole's shape nor its stitches to the inch are printed.


@pytest.mark.parametrize(
    ("chest_in", "depth_in", "upper_arm_in", "shoulders_in", "less_in"),
    [(28, 6.25, 10, 12, 2), (40, 8.5, 14, 16, 3), (44, 8.75, 15, 16.5, 3), (52, 9.5, 18, 18, 4)],
)
def test_cap_heights_lie_near_the_rule_by_class_of_chest(
    chest_in: float, depth_in: float, upper_arm_in: float, shoulders_in: float, less_in: float
) -> None:
    measures = GarmentMeasures(
        bust_girth_cm=chest_in * IN,
        length_cm=24 * IN,
        armhole_depth_cm=(depth_in + 1) * IN,
        shoulder_slope_cm=IN,
        shoulder_width_cm=shoulders_in * IN,
        upper_arm_girth_cm=upper_arm_in * IN,
        wrist_girth_cm=upper_arm_in * 0.65 * IN,
        sleeve_length_cm=17 * IN,
    )
    made = draft(Brief(Construction.SET_IN, measures, per_inch(5, 6.5)))
    assert made.section("sleeve", "cap").height_cm / IN == pytest.approx(depth_in - less_in, abs=1)


# Vest armholes. Source: a printed vest in five sizes, 16 stitches to 4 in (read): half body, cross back, stitches on
# each side, first cast-off, decreases in right-side rows, armhole depth in inches. Its row gauge is ours, 5½ an inch.
VEST = [
    (36, 72, 60, 6, 3, 3, 7),
    (40, 80, 64, 8, 4, 4, 7.25),
    (44, 88, 68, 10, 5, 5, 7.5),
    (48, 96, 70, 13, 7, 6, 7.75),
    (52, 104, 72, 16, 8, 8, 8),
]


@pytest.mark.parametrize(("bust", "half", "across", "each", "first", "decreases", "depth"), VEST)
def test_vest_armholes_in_five_sizes(
    bust: float, half: int, across: int, each: int, first: int, decreases: int, depth: float
) -> None:
    measures = GarmentMeasures(
        bust_girth_cm=bust * IN,
        length_cm=22 * IN,
        armhole_depth_cm=depth * IN,
        shoulder_width_cm=across / 4 * IN,
    )
    made = draft(Brief(Construction.SLEEVELESS, measures, per_inch(4, 5.5), DraftOptions(neckline="V")))
    back = made.section("body", "back")
    assert back.first == half
    assert edge(made, "body", "back") == [(Kind.CAST_OFF, first), *[(Kind.DECREASE, 1)] * decreases]
    assert back.first - 2 * each == across
    rows = [one.row for one in back.shapings if one.side == "right" and one.kind is Kind.DECREASE]
    assert rows == list(range(2, 2 + 2 * decreases, 2))


# A waisted jacket of 1918 (public domain, read): 5 stitches to the inch, back of 76 stitches at the underarm, 70 after
# the armholes, 25 shoulder + 20 neck + 25 shoulder; armhole 6 in. Ridges are not printed per inch: 8 rows are ours.


def test_a_jacket_of_1918_divides_its_back_as_printed() -> None:
    measures = GarmentMeasures(
        bust_girth_cm=2 * 76 / 5 * IN,
        length_cm=22 * IN,
        armhole_depth_cm=6 * IN,
        shoulder_width_cm=14 * IN,
        neck_width_cm=4 * IN,
        shoulder_slope_cm=0.1,
    )
    made = draft(Brief(Construction.SLEEVELESS, measures, per_inch(5, 8)))
    back = made.section("body", "back")
    assert back.first == 76
    assert sum(stitches for _, stitches in edge(made, "body", "back")) == 3
    shoulders = [made.section("body", f"back {side} shoulder").live for side in ("right", "left")]
    assert [shoulders[0], 70 - sum(shoulders), shoulders[1]] == [25, 20, 25]


# A belted jacket of 1918 (public domain, read): back of 99 less 5 at each side = 89; 34 + 21 + 34.


def test_a_belted_jacket_of_1918_divides_its_back_as_printed() -> None:
    measures = GarmentMeasures(
        bust_girth_cm=2 * 99 / 5 * IN,
        length_cm=26 * IN,
        armhole_depth_cm=8 * IN,
        shoulder_width_cm=89 / 5 * IN,
        neck_width_cm=21 / 5 * IN,
    )
    made = draft(Brief(Construction.SLEEVELESS, measures, per_inch(5, 8)))
    assert made.section("body", "back").first == 99
    assert sum(stitches for _, stitches in edge(made, "body", "back")) == 5
    shoulders = [made.section("body", f"back {side} shoulder").live for side in ("right", "left")]
    assert [shoulders[0], 89 - sum(shoulders), shoulders[1]] == [34, 21, 34]


# Shoulder slopes. Sources: 36 stitches and an inch at 7 rows are 8 rows, four nines (cross-read); 44 over 16 rows are
# four sixes and four fives (read); twice the slope halves the step, 6 × 2 becomes 3 × 4 (read).


@pytest.mark.parametrize(
    ("stitches", "slope", "steps"), [(36, 8, [9] * 4), (44, 16, [6] * 4 + [5] * 4), (12, 4, [6] * 2), (12, 8, [3] * 4)]
)
def test_shoulders_slope_in_the_printed_steps(stitches: int, slope: int, steps: list[int]) -> None:
    assert [count for _, _, count in shoulder_rests(stitches, 60, slope)] == steps[:-1]


def test_a_drafted_shoulder_of_36_slopes_in_four_nines() -> None:
    measures = GarmentMeasures(
        bust_girth_cm=2 * 128 / 5 * IN,
        length_cm=24 * IN,
        armhole_depth_cm=9 * IN,
        shoulder_width_cm=108 / 5 * IN,
        neck_width_cm=36 / 5 * IN,
        shoulder_slope_cm=IN,
        back_neck_depth_cm=1.5 * IN,
    )
    made = draft(Brief(Construction.SLEEVELESS, measures, per_inch(5, 7)))
    shoulder = made.section("body", "back right shoulder")
    rests = [one.stitches for one in (*made.section("body", "back").shapings, *shoulder.shapings) if one.kind == "rest"]
    assert shoulder.live == 36
    assert rests[-3:] == [9, 9, 9]


# Vest grading. Source: a designer's vest by way of a yarn shop (read), cm: bust, cross back, armhole depth.
GRADED = [
    (89, 33, 24),
    (96, 37, 24),
    (104, 41, 24),
    (111, 44, 25),
    (120, 49, 26),
    (127, 52, 27),
    (136, 57, 28),
    (144, 61, 28),
    (151, 64, 29),
]


def test_every_size_of_a_graded_vest_drafts_and_none_is_smaller_than_the_one_before() -> None:
    sizes = []
    for bust, across, depth in GRADED:
        measures = GarmentMeasures(
            bust_girth_cm=bust, length_cm=56, shoulder_width_cm=across, armhole_depth_cm=depth, neck_width_cm=across / 2
        )
        made = draft(Brief(Construction.SLEEVELESS, measures, Gauge(stitches_per_10cm=21, rows_per_10cm=28)))
        for name, wanted in (("bust_girth", bust), ("shoulder_width", across), ("armhole_depth", depth)):
            assert made.check(name).drafted_cm == pytest.approx(wanted, abs=0.5)
        face = made.section("body", "back")
        sizes.append((face.first, 2 * made.section("body", "back left shoulder").live + face.closed, made.stitches))
    for before, after in pairwise(sizes):
        assert all(one <= other for one, other in zip(before, after, strict=True))


# Lengths are sums. Source: a printed vest table (read), inches: garment, length, armhole, shoulder.
LENGTHS = [
    (38, 24, 8.5, 3.75),
    (42, 24.5, 9, 4),
    (46, 25, 9, 4),
    (50, 25.5, 9.25, 4.25),
    (53, 26.5, 9.5, 4.5),
    (57, 27.5, 10, 4.5),
]


@pytest.mark.parametrize(("garment", "length", "armhole", "shoulder"), LENGTHS)
def test_a_vest_tables_shoulders_come_of_what_is_usual(
    garment: float, length: float, armhole: float, shoulder: float
) -> None:
    measures = GarmentMeasures(bust_girth_cm=garment * IN, length_cm=length * IN, armhole_depth_cm=armhole * IN)
    made = draft(Brief(Construction.SLEEVELESS, measures, per_inch(5, 7), DraftOptions(neckline="V")))
    assert made.section("body", "back left shoulder").live / 5 == pytest.approx(shoulder, abs=0.35)
    below = made.piece("body").base_cm("back") / IN
    assert below + made.check("armhole_depth").drafted_cm / IN == pytest.approx(length, abs=0.15)
