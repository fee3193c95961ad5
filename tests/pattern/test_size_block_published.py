"""Size lines of the trade: figures only, typed off the sources named at each; the wording of the lines is ours.

``read`` and ``cross-read`` say whether one text was read or two.
"""

import pytest

from loopwright.pattern.size_block import SizeBlock, read_size_block, to_pattern_fields

WOMAN_BUST = """\
Sizes: XS (S, M, L, 1X, 2X, 3X, 4X, 5X)
To fit bust: 28-30 (32-34, 36-38, 40-42, 44-46, 48-50, 52-54, 56-58, 60-62) in
To fit bust: 71-76 (81-86, 91.5-96.5, 101.5-106.5, 111.5-117, 122-127, 132-137, 142-147, 152-158) cm
"""
"""Craft Yarn Council, woman's bust, inches read or cross-read in reprints by yarn makers; of the centimetres those of
1X and 5X are from memory. 158 cm for 62 in is the one printed pair that is more than half a centimetre off."""

LONG_SWEATER = """\
Finished bust: 84 (89.5, 95, 99.5, 105.5, 110, 115.5, 120, 126, 130.25, 135, 140) cm
Yardage: 1450 (1550, 1650, 1750, 1850, 1950, 2050, 2150, 2200, 2250, 2300, 2400) yds /
1326 (1417, 1509, 1600, 1692, 1791, 1875, 1966, 2012, 2057, 2103, 2276) m
Gauge: 20 sts and 28 rows = 4 in
"""
"""A designer's page for a long sweater, 20 stitches and 28 rows, read: yards as printed. Of its metres it is noted that
all agree but two, 1791 for 1950 yd and 2276 for 2400 yd; the others are therefore set to the agreeing whole metre."""

TWO_COLOURS = """\
Sizes 1 (2, 3, 4, 5) [6, 7, 8, 9, 10]
Bust circumference 82 (88, 93.5, 100, 106.5) [112, 118, 123.5, 130, 136] cm
Main colour 830 (880, 945, 1015, 1070) [1150, 1240, 1305, 1370, 1435] m, contrast colour
115 (120, 130, 140, 145) [155, 170, 180, 185, 200] m (140 m per 50 g)
Tension: 22 sts and 31 rows = 10 cm
"""
"""A yarn maker's page for a pullover in two colours, read: the rows marked D of ``garment_yardage.csv``."""

VEST = """\
Sizes: child 1-2 (child 4-6, child 8-10, adult M, adult L, adult XL)
Finished chest: 24 (28, 32, 40, 44, 48)"
Length: 13 (16, 19, 26, 27, 28)"
Yarn: 250 (350, 450, 875, 1,050, 1,150) yards
Gauge: 5 sts and 7 rows = 1"
"""
"""A pattern leaflet for a family of vests, specification on a yarn shop's page, read."""

RAGLAN = """\
To fit age: 0-6 months (6-12 months, 1-2 years, 2-3 years, 4-5 years, 6-7 years)
Actual measurement: chest 45 (51, 55, 60, 65, 71) cm
Length 25 (28, 32, 38, 42, 48) cm
Sleeve seam 15 (17, 20, 24, 29, 33) cm
Yarn: 2 (2, 3, 3, 4, 4) x 50 g balls, 165 m
Tension: 22 sts and 28 rows to 10 cm
"""
"""A spinner's leaflet for a child's raglan pullover, specification, read."""

CAP_1918 = "Head size: 23 inches\nGauge: 100 stitches = 20 inches"
"""*Handbook of Wool Knitting and Crochet*, Needlecraft, 1918 (Project Gutenberg 26113), skating cap, read."""

SWEATER_1917 = "Length 25 inches\nWidth across chest 18 inches"
"""Red Cross, Pacific Division, sleeveless sweater: 25 in long, across the chest 16 to 20 in, preferably 18 (*The Garden
Island*, Hawaii, 4 December 1917, p. 4), read."""


def faultless(text: str) -> SizeBlock:
    block = read_size_block(text)
    assert block.faults == (), [str(fault) for fault in block.faults]
    return block


def test_the_councils_bust_agrees_with_itself_in_inches_and_centimetres() -> None:
    row = faultless(WOMAN_BUST).row("body", "bust_girth")
    assert row is not None
    inches, centimetres = row.readings
    assert [one.upto for one in inches.figures] == [30, 34, 38, 42, 46, 50, 54, 58, 62]
    assert centimetres.figures[2].value == 91.5


def test_both_printed_slips_of_metres_against_yards_are_found_and_nothing_else() -> None:
    faults = read_size_block(LONG_SWEATER).faults
    assert [fault.found for fault in faults] == [
        "1950 yd and 1791 m for 6, which is 1958.7 yd",
        "2400 yd and 2276 m for 12, which is 2489.1 yd",
    ]
    assert [fault.place.line for fault in faults] == [3, 3]
    assert all(LONG_SWEATER.splitlines()[2][fault.place.column - 1 :].startswith(("1791", "2276")) for fault in faults)


def test_two_colours_in_ten_sizes_add_up_to_the_printed_total() -> None:
    block = faultless(TWO_COLOURS)
    main, contrast = (row.readings[0].figures for row in block.yarn)
    totals = [(one.value or 0) + (other.value or 0) for one, other in zip(main, contrast, strict=True)]
    assert totals == [945, 1000, 1075, 1155, 1215, 1305, 1410, 1485, 1555, 1635]
    assert to_pattern_fields(block)["ball_length"] == "140 m"


def test_a_vest_in_inches_and_yards() -> None:
    block = faultless(VEST)
    chest, length = ([float(cm or 0) for cm in row.in_cm()] for row in block.rows)
    assert chest == pytest.approx([61.0, 71.1, 81.3, 101.6, 111.8, 121.9], abs=0.05)
    assert length == pytest.approx([33.0, 40.6, 48.3, 66.0, 68.6, 71.1], abs=0.05)
    assert block.gauge is not None
    assert block.gauge.stitches_per_10cm == pytest.approx(19.7, abs=0.05)
    assert to_pattern_fields(block)["gauge"] == '5 sts and 7 rows = 1"'
    assert to_pattern_fields(block)["yarn"] == {"main": {"length": "250 (350, 450, 875, 1050, 1150) yd"}}


def test_a_childs_raglan_by_age() -> None:
    fields = to_pattern_fields(faultless(RAGLAN))
    assert fields["sizes"] == "0-6 months (6-12 months, 1-2 years, 2-3 years, 4-5 years, 6-7 years)"
    assert fields["finished"] == {
        "bust_girth": "45 (51, 55, 60, 65, 71) cm",
        "length": "25 (28, 32, 38, 42, 48) cm",
        "sleeve_length": "15 (17, 20, 24, 29, 33) cm",
    }
    assert (fields["yarn"], fields["ball_length"]) == ({"main": {"balls": "2 (2, 3, 3, 4, 4) balls"}}, "165 m")


def test_a_cap_of_1918() -> None:
    block = faultless(CAP_1918)
    assert block.rows[0].measure == "head_girth"
    assert float(block.rows[0].in_cm()[0] or 0) == 58.42
    assert block.gauge is not None
    assert block.gauge.stitches_per_10cm == pytest.approx(100 / 50.8 * 10)


def test_a_width_across_the_chest_is_half_a_girth() -> None:
    block = faultless(SWEATER_1917)
    assert float(block.rows[1].in_cm()[0] or 0) == 2 * 18 * 2.54
    assert to_pattern_fields(block)["finished"] == {"length": "25 in", "bust_girth": "36 in"}


def test_a_width_that_may_be_one_of_several_is_asked_for() -> None:
    (fault,) = read_size_block(SWEATER_1917.replace("18", "16-20")).faults
    assert "the range 16-20 in" in str(fault)
