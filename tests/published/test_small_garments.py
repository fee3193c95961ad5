"""Hats, scarves and shawls against published counts: the same rule must give the same stitches.

Each check names its source and its standing: *read* in the named text, *cross-read* in a text that quotes it or in two
that agree, *memory* known but not read. Pages are named by what they are, books by title and year. The book of 1918 is
the Handbook of Wool Knitting and Crochet (anonymous), Needlecraft Publishing Company, Augusta, Maine; Project Gutenberg
eBook 26113, read, public domain in the United States.
"""

from __future__ import annotations

from itertools import accumulate

import pytest

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.constructions.crescent import work_crescent
from loopwright.garment.constructions.half_round import doubled, half_round_counts, plain_rows
from loopwright.garment.constructions.hat import work_crown
from loopwright.garment.constructions.triangle import work_triangle
from loopwright.garment.draft import Draft, Needle
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures, Trim
from loopwright.pattern import Construction

INCH = 2.54
PLAIN_ENDS = DraftOptions(hem=Trim(fabric="stocking stitch", depth_cm=1.0))
"""Edges in the fabric itself: a trim of as many rows to 10 cm as the piece."""


def per_inch(stitches: float, rows: float) -> Gauge:
    return Gauge(stitches_per_10cm=stitches / INCH * 10, rows_per_10cm=rows / INCH * 10)


def drafted(of: Construction, gauge: Gauge, options: DraftOptions = PLAIN_ENDS, **inches: float) -> Draft:
    measures = {name: value * INCH for name, value in inches.items()}
    return draft(Brief(of, GarmentMeasures.model_validate(measures), gauge, options))


# Shawls


@pytest.mark.parametrize(
    ("cast_on", "rows", "stitches"),
    [
        (14, 72, 158),  # a designer's page on the top-down triangle, 12 in × 6 rows (read)
        (5, 100, 205),  # a knitter's weblog, 2013, right-angled triangle, +4 in 2 rows (cross-read)
    ],
)
def test_a_triangle_gains_two_stitches_a_row(cast_on: int, rows: int, stitches: int) -> None:
    assert work_triangle(Needle(cast_on), rows).now == stitches


def test_the_last_row_of_a_triangle_is_twice_its_rows_and_its_centre() -> None:
    # The designer's page (read): 12 in of rows and a centre of 2 in: 2 × 12 + 2 = 26 in. 6 stitches and 6 rows to 1 in.
    last = work_triangle(Needle(12), 72).now
    assert per_inch(6, 6).width_cm(last) == pytest.approx(26 * INCH)


def test_a_wedge_crescent_gains_four_stitches_a_row() -> None:
    # A knitter's weblog, 2013 (read): 13 stitches, 8 in 2 rows, 40 rows: 173.
    assert work_crescent(Needle(13), 40).now == 173


def test_a_half_pi_shawl_counts_as_printed() -> None:
    # A knitter's page on the half-pi shawl (read): 9 → 17 → … → 389 with 3, 7, 15, 31, 63 plain rows between.
    counts = half_round_counts(130)
    assert sorted(set(counts.tolist())) == [17, 29, 53, 101, 197, 389]
    assert [int((counts == one).sum()) - 1 for one in (17, 29, 53, 101, 197)] == [3, 7, 15, 31, 63]
    assert plain_rows(5, first=3) == (3, 7, 15, 31, 63)
    body = drafted(Construction.HALF_ROUND_SHAWL, per_inch(5, 7), depth=20).section("shawl", "body")
    assert (body.first, body.last) == (9, 389)


def test_a_half_pi_shawl_with_a_lace_edge() -> None:
    # A designer's half-pi shawl (read): 7 edge stitches, 384 of lace, 7 edge stitches: 398. Its lace is ours less the 5
    # edge stitches of the printed row above.
    lace = half_round_counts(130)[-1] - 5
    assert (lace, lace + 2 * 7) == (384, 398)


@pytest.mark.parametrize(
    ("cast_on", "times", "stitches"),
    [
        (6, 7, 768),  # a knitter's weblog, 2013, circle (read)
        (9, 6, 576),  # Knitter's Almanac, 1974, the pi shawl (memory)
    ],
)
def test_doubling_a_circle(cast_on: int, times: int, stitches: int) -> None:
    assert doubled(cast_on, times) == stitches


def test_the_rounds_of_a_circle_that_doubles() -> None:
    # The same weblog (read): straight rounds 1, 2, 4 … 64, 127 in all; each stretch is ours with its doubling round.
    stretches = [rows + 1 for rows in plain_rows(7, first=0)]
    assert stretches == [1, 2, 4, 8, 16, 32, 64]
    assert list(accumulate(stretches))[-1] == 127


# Hats


def test_a_childs_hat_of_96_stitches() -> None:
    # A knitter's weblog, 2006 (read): 19 in × 5 = 95, made 96; crown −8 every 2nd round 11 times, 96 → 8.
    made = drafted(Construction.HAT, per_inch(5, 7), DraftOptions(), head_girth=19, length=8)
    crown = made.section("hat", "crown")
    assert made.section("hat", "brim").first == made.section("hat", "body").last == 96
    assert [(one.stitches, one.row) for one in crown.shapings] == [(8, 2 * time + 1) for time in range(11)]
    assert (crown.rows, crown.last) == (22, 8)


def test_a_skating_cap_of_136_stitches() -> None:
    # The book of 1918: 136 stitches, head size 23 in, single rib from end to end, 14½ in high. Rows are assumed.
    rib = DraftOptions(hem=Trim(fabric="1x1 rib", depth_cm=4 * INCH))
    made = drafted(Construction.HAT, per_inch(136 / 23, 8), rib, head_girth=23, length=14.5)
    assert made.section("hat", "brim").first == made.section("hat", "body").first == 136


def test_the_top_of_a_helmet() -> None:
    # The book of 1918: 48 stitches narrowed in 3 places in every other row "until 9 stitches are left": 13 times. Ours
    # ends at one stitch a spoke, so the 3 lines go on for two more; the counts up to there are the book's.
    counts = work_crown(Needle(48), 3, 15, 30).section("top", "top", "stocking stitch", per_inch(4.36, 7)).stitches
    assert counts[1:26:2].tolist() == [48 - 3 * time for time in range(1, 14)]
    assert counts[25] == 9


# Rectangles


def test_a_striped_scarf_has_64848_stitches() -> None:
    # The book of 1918: 84 stitches, 772 rows by its stripes. It prints no gauge; 6 stitches and 12 rows are assumed.
    gauge = per_inch(6, 12)
    ends = DraftOptions(hem=Trim(fabric="stocking stitch", depth_cm=64 / 12 * INCH))  # 64 rows of brown at each end
    made = drafted(Construction.RECTANGLE, gauge, ends, width=84 / 6, length=772 / 12)
    assert [(one.last, one.rows) for one in made.pieces[0].sections] == [(84, 64), (84, 644), (84, 64)]
    assert made.stitches == 64848


def test_a_muffler_of_50_stitches() -> None:
    # The book of 1918: 50 stitches measure 11 in, 68 in long: 748 square inches. A ridge as high as a stitch is wide is
    # assumed, as the book shows elsewhere.
    made = drafted(Construction.RECTANGLE, per_inch(50 / 11, 2 * 50 / 11), width=11, length=68)
    assert made.section("rectangle", "body").first == 50
    assert made.area_cm2 / INCH**2 == pytest.approx(
        748, abs=11 / (50 / 11) / 2
    )  # within a ridge, as rows come in pairs


@pytest.mark.parametrize(
    ("stitches_per_inch", "width", "stitches"),
    [
        (60 / 12, 12, 60),  # the book of 1918: scarf of the winter girl, 60 stitches at the 5 to 1 in of its sweater
        (48 / 11, 11, 48),  # the same: front of a helmet, 48 stitches, 11 in
        (7, 10, 70),  # the same: washcloth, 70 stitches for about 10 in
        (4.5, 22.5, 101),  # worksheet for a drop-shoulder jumper: 22½ in × 4½ = 101¼, less its seam stitches (read)
    ],
)
def test_a_width_by_gauge(stitches_per_inch: float, width: float, stitches: int) -> None:
    made = drafted(Construction.RECTANGLE, per_inch(stitches_per_inch, 9), width=width, length=20)
    assert made.section("rectangle", "body").first == stitches


def test_a_hood_is_half_as_many_ridges_as_stitches() -> None:
    # The book of 1918: "any number of stitches, and knitting just half that number of ribs"; its hood of 80 stitches
    # has 35 + 6 = 41 ridges by its rows, 40 by its rule: half as long as wide, a ridge being as high as a stitch wide.
    made = drafted(Construction.RECTANGLE, per_inch(5, 10), width=16, length=8)
    sections = made.pieces[0].sections
    assert (sections[1].first, sum(one.rows for one in sections) / 2) == (80, 40)


def test_a_blanket_holds_its_repeat() -> None:
    # A baby blanket's layout (read): 4 × 27 + 8 + 2 × 6 = 128, a repeat of 27 with 20 more.
    options = DraftOptions.model_validate({"repeat": "27n + 20", "hem": PLAIN_ENDS.hem})
    made = drafted(Construction.RECTANGLE, per_inch(4, 5), options, width=32, length=40)
    assert made.section("rectangle", "body").first == 128
