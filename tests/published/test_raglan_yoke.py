"""Raglans and round yokes against published counts.

Sources and status (`read` in the named text, `cross-read` at second hand, else as said):

* EPS: the percentage system, *Knitting Without Tears* (1971) and *Knitting Around* (1989), in a comparison sheet;
  cross-read. Its round yoke comes out count for count; of its raglan the counts where body and sleeves meet do.
* Walker, *Knitting from the Top* (1972), in a sweater class's hand-out; cross-read.
* A top-down raglan jacket in six sizes, a knitting magazine, spring 2007; read.
* Top-down raglan by gauge (F4f of our notes), and a third, a sixth, a third, a sixth of a round neck; common practice,
  no source.
* Depth with the sleeve's top in it: a designer's article of 2013; read.
* Two graded yokes in nine sizes each, a yarn firm's pattern pages; read.
"""

from __future__ import annotations

import pytest

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft, Section
from loopwright.garment.parts.raglan_counts import RaglanCounts, shaping_rows
from loopwright.garment.parts.raglan_neck import FrontNeck
from loopwright.garment.parts.raglan_rows import RaglanPlan, raglan_yoke
from loopwright.garment.parts.round_yoke_counts import shaping_at
from loopwright.garment.parts.yoke_counts import Meeting
from loopwright.garment.shaping import ShortRows
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction

INCH = 2.54


def per_inch(stitches: float, rows: float) -> Gauge:
    return Gauge(stitches_per_10cm=stitches / INCH * 10, rows_per_10cm=rows / INCH * 10)


def made(construction: Construction, gauge: Gauge, inches: dict[str, float], **options: object) -> Draft:
    """Draft from measures in inches; sleeve, wrist and length are ours, and touch none of the counts checked."""
    known = {"length": 25.0, "sleeve_length": 17.0, "wrist_girth": 8.0} | inches
    measures = GarmentMeasures.model_validate({name: value * INCH for name, value in known.items()})
    return draft(Brief(construction, measures, gauge, DraftOptions.model_validate(options)))


def parts(section: Section, row: int) -> dict[str, int]:
    return {part.name: int(part.stitches[row]) for part in section.parts}


EPS_INCHES = {"bust_girth": 40.0, "upper_arm_girth": 66 / 5, "armhole_depth": 10.0}


def test_eps_round_yoke_of_200() -> None:
    yoke = made(Construction.YOKE, per_inch(5, 7), EPS_INCHES)
    section = yoke.section("yoke", "yoke")
    assert yoke.section("body", "body").live == 200
    assert yoke.section("left sleeve", "sleeve").live == 66
    assert [join.one.amount for join in yoke.joins if join.kind == "grafted"] == [16, 16]
    assert section.first == 268
    assert [int(section.stitches[one.row]) for one in section.shapings] == [179, 120, 80]


def test_eps_round_yoke_depths() -> None:
    # 70 rounds: decreases near rounds 35, 52 or 53, and 70; the sheet allows 33–38 and 50–56.
    section = made(Construction.YOKE, per_inch(5, 7), EPS_INCHES).section("yoke", "yoke")
    assert section.rows == 70
    assert [one.row + 1 for one in section.shapings] == [35, 53, 70]


def test_eps_back_is_raised_by_about_six_short_rows() -> None:
    # Ours is an inch, so 7 rows to the inch, in pairs.
    assert made(Construction.YOKE, per_inch(5, 7), EPS_INCHES).section("yoke", "back neck").rows in (6, 8)


def test_yoke_worked_down_increases_in_rounds_22_and_43_of_84() -> None:
    # A weblog on the percentage system, read: half and a quarter of 84 rounds; and one at the neck.
    assert [row + 1 for row in shaping_at(84, 3, up=False, flat=False)] == [1, 22, 43]


def test_four_rounds_lie_at_40_60_80_and_100_per_cent() -> None:
    # Common practice, no source.
    assert [row + 1 for row in shaping_at(50, 4, up=True, flat=False)] == [20, 30, 40, 50]


@pytest.mark.parametrize("direction", ["top down", "bottom up"])
def test_eps_raglan_of_200(direction: str) -> None:
    # 268 = 84 + 84 + 50 + 50, and 34 left of back and front after 25 decreases. The sheet uses the sleeves up over 50
    # rounds; ours keep a top, for the shoulder to lie in, so the sleeves decrease less often.
    raglan = made(
        Construction.RAGLAN,
        per_inch(5, 7),
        {
            "bust_girth": 40.0,
            "upper_arm_girth": 66 / 5,
            "neck_width": 34 / 5,
            "front_neck_depth": 1.6,
            "armhole_depth": 50 / 7,
        },
        direction=direction,
    )
    meeting = Meeting(200, 0, 16, 66)
    yoke = raglan.section("yoke", "yoke")
    assert (yoke.live if direction == "top down" else yoke.first) == meeting.yoke == 268
    assert (meeting.back, meeting.front, meeting.sleeve) == (84, 84, 50)
    assert "body 25 times" in str(raglan.notes[0])
    if direction == "top down":
        assert parts(yoke, -1) == {"back": 84, "front": 84, "left sleeve": 50, "right sleeve": 50}
    at_neck = parts(yoke, -1 if direction == "bottom up" else 0)
    assert at_neck["back"] == 34 + 2 * (direction == "top down")


def test_eps_raglan_of_50_rounds() -> None:
    # −8 every 2nd round: 25 times in 50 rounds use up sleeves of 50 and leave 34 of 84.
    assert shaping_rows(50, 25, up=True) == tuple(range(0, 50, 2))
    counts = RaglanCounts(16, 66, 34, 0, 50, 25, 25)
    assert (counts.back, counts.sleeve) == (84, 50)


def test_walker_set_up() -> None:
    # 4½ in at 4 to the inch: back 18, sleeves 6, fronts 1 each, and 4 seam stitches: 36. We set no stitch apart for
    # the seams, so we cast on the other 32.
    raglan = made(
        Construction.RAGLAN,
        per_inch(4, 5.5),
        {
            "bust_girth": 36.0,
            "upper_arm_girth": 13.0,
            "neck_width": 4.5,
            "front_neck_depth": 3.0,
            "armhole_depth": 8.0,
        },
    )
    first = raglan.section("yoke", "back neck")
    upper = raglan.section("yoke", "upper yoke")
    assert first.first == 36 - 4
    assert upper.first == 32
    # The first row shapes all four lines: two stitches more in every part.
    assert parts(upper, 0) == {"back": 20, "front": 4, "left sleeve": 8, "right sleeve": 8}


def test_a_round_neck_joined_at_once_is_parted_in_thirds_and_sixths() -> None:
    # 96 stitches: 32, 32, 16, 16.
    raglan = made(
        Construction.RAGLAN,
        per_inch(5, 7),
        {
            "bust_girth": 40.0,
            "upper_arm_girth": 14.0,
            "neck_width": 32 / 5,
            "front_neck_depth": 8 / 5,
            "armhole_depth": 9.0,
        },
    )
    yoke = raglan.section("yoke", "yoke")
    assert yoke.first == 96
    assert parts(yoke, 0) == {"back": 34, "front": 34, "left sleeve": 18, "right sleeve": 18}
    assert raglan.check("front_neck_depth").is_exact


def test_raglan_by_gauge() -> None:
    # 8 in of raglan at 7 rounds to the inch: 56 rounds, 28 increases; back 36 to 92, sleeve 12 to 68, 8 more under the
    # arm, 76. Half the sleeve's top, 1.2 in, adds to the depth.
    raglan = made(
        Construction.RAGLAN,
        per_inch(5, 7),
        {
            "bust_girth": 40.0,
            "upper_arm_girth": 76 / 5,
            "neck_width": 36 / 5,
            "front_neck_depth": 3.0,
            "armhole_depth": 8.0 + 12 / 5 / 2,
        },
    )
    upper, yoke = raglan.section("yoke", "upper yoke"), raglan.section("yoke", "yoke")
    assert upper.rows + yoke.rows == 56
    assert parts(upper, 0) == {"back": 36 + 2, "front": 4, "left sleeve": 12 + 2, "right sleeve": 12 + 2}
    assert parts(yoke, -1) == {"back": 92, "front": 92, "left sleeve": 68, "right sleeve": 68}
    assert [one.row for one in (*upper.shapings, *yoke.shapings) if one.side == "lines"] == [
        *range(0, upper.rows, 2),
        *range(0, yoke.rows, 2),
    ]
    assert raglan.section("left sleeve", "sleeve").stitches[0] == 76
    # And (200 − 92 − 92) ÷ 2 under each arm.
    assert [join.one.amount for join in raglan.joins if join.one.section == "body"][:2] == [8, 8]


@pytest.mark.parametrize(
    ("times", "total", "sleeve", "body"),
    [
        (19, 216, 52, 112),
        (22, 240, 58, 124),
        (25, 264, 64, 136),
        (28, 288, 70, 148),
        (31, 312, 76, 160),
        (34, 336, 82, 172),
    ],
)
def test_raglan_jacket_of_2007(times: int, total: int, sleeve: int, body: int) -> None:
    # 64 = 1 + 14 + 34 + 14 + 1, then 8 more in every increase row; nothing is cast on under the arm. Its fronts never
    # meet, so it is no draft from measures: the rows of our yoke are worked from its set-up.
    rows = 2 * times
    counts = RaglanCounts(0, sleeve, 34, 14, rows, times, times)
    plan = RaglanPlan(counts, Meeting(2 * counts.back, 0, 0, sleeve), FrontNeck(rows, 2, 0, ()), ShortRows(0, ()))
    brief = Brief(Construction.RAGLAN, GarmentMeasures(), per_inch(4, 5.5), DraftOptions(opens_in_front=True))
    yoke = raglan_yoke(brief, plan, up=False).section("upper yoke")
    last = parts(yoke, -1)
    assert (yoke.first, yoke.live) == (64, total)
    assert last["left sleeve"] == last["right sleeve"] == sleeve
    assert last["back"] + last["front"] == body


def test_half_the_sleeve_top_adds_to_the_depth() -> None:
    # 5.5 in of raglan under a sleeve's top of 4 in: an armhole of 7.5 in. Gauge ours: 5 and 8 to the inch.
    counts = RaglanCounts(8, 76, 36, 20, 44, 22, 22)
    assert counts.depth_cm(per_inch(5, 8)) == pytest.approx(7.5 * INCH)


# Two yokes in nine sizes: bust, yoke depth, upper arm in cm; of the first also underarm to hem.
FIRST = [
    (86, 19, 35, 26),
    (94, 20, 39, 26),
    (102, 22, 43, 28),
    (110, 23, 45, 30),
    (118, 24, 49, 32),
    (124, 25, 52, 34),
    (134, 26, 55, 36),
    (142, 28, 59, 38),
    (150, 30, 63, 40),
]
SECOND = [
    (83, 19, 29, 30),
    (94, 19, 32, 30),
    (99, 21, 36, 30),
    (110, 22, 37, 30),
    (115, 23, 39, 30),
    (125, 23, 41, 30),
    (136, 23, 43, 30),
    (146, 25, 45, 30),
    (151, 25, 47, 30),
]
GRADED = [(*one, way) for one in FIRST + SECOND for way in ("top down", "bottom up")]


@pytest.mark.parametrize("construction", [Construction.YOKE, Construction.RAGLAN])
@pytest.mark.parametrize(("bust", "depth", "arm", "side", "direction"), GRADED)
def test_every_graded_size_drafts(
    construction: Construction, bust: int, depth: int, arm: int, side: int, direction: str
) -> None:
    # Gauge (22 × 30), sleeve and head are ours; the second yoke's length too.
    measures = GarmentMeasures(
        bust_girth_cm=bust,
        armhole_depth_cm=depth,
        upper_arm_girth_cm=arm,
        length_cm=depth + side,
        sleeve_length_cm=44.0,
    )
    gauge = Gauge(stitches_per_10cm=22, rows_per_10cm=30)
    options = DraftOptions.model_validate({"direction": direction})
    sized = draft(Brief(construction, measures, gauge, options, head_girth_cm=57.0))
    for name in ("armhole_depth", "upper_arm_girth", "length"):
        assert sized.check(name).is_exact, sized.check(name)
    # Back and front are alike, so the count is even: a stitch at most.
    assert abs(sized.check("bust_girth").off_cm) <= gauge.width_cm(1) + 1e-9
