"""Size blocks as people paste them: every way of writing, every fault with its place, and the way back."""

from fractions import Fraction

import pytest

from loopwright.pattern import PatternFacts
from loopwright.pattern.size_block import (
    SizeBlock,
    missing_fields,
    read_size_block,
    to_pattern_fields,
    write_size_block,
)

SIZES = "Sizes: XS (S, M, L)\n"
WHOLE = """\
Sizes: XS (S, M, L) [XL, 2X]
To fit bust 80 (88, 96, 104) [112, 120] cm
• Finished bust: 86 (94, 102, 110) [118, 126] cm / 34 (37, 40, 43 1/4) [46½, 49 1/2] in
Length to back neck: 56 (57, 58,
59) [60, –] cm
Yarn: 9 (10, 11, 12) [13, 14] balls of 50 g / 120 m
CC 200 (220, 240, 260) [280, 300] m
Tension: 22 sts and 30 rows = 10 cm in stocking stitch on 4 mm needles
"""


def cm(block: SizeBlock, measure: str) -> list[float | None]:
    row = block.row("finished", measure)
    assert row is not None, block.faults
    return [None if one is None else float(one) for one in row.in_cm()]


def faultless(text: str) -> SizeBlock:
    block = read_size_block(text)
    assert block.faults == (), [str(fault) for fault in block.faults]
    return block


def test_a_whole_block() -> None:
    block = faultless(WHOLE)
    assert block.sizes == ("XS", "S", "M", "L", "XL", "2X")
    assert cm(block, "bust_girth") == [86, 94, 102, 110, 118, 126]
    assert cm(block, "length") == [56, 57, 58, 59, 60, None]
    assert [row.role for row in block.yarn] == ["main", "contrast"]
    assert block.fabric == "stocking stitch"
    assert block.needle_mm == 4
    assert block.remarks == ()


def test_it_becomes_a_pattern_with_what_it_lacks() -> None:
    fields = to_pattern_fields(faultless(WHOLE))
    assert missing_fields(fields) == ("name", "construction")
    pattern = PatternFacts.model_validate({**fields, "key": "p", "name": "P", "construction": "raglan"})
    assert pattern.finished.bust_girth == (86, 94, 102, 110, 118, 126)
    assert (pattern.ball_length_m, pattern.ball_mass_g, pattern.needle_mm) == (120, 50, 4)
    assert pattern.to_fit.bust_girth == (80, 88, 96, 104, 112, 120)
    assert pattern.designed_ease_cm("bust_girth") == 6


@pytest.mark.parametrize(
    "row",
    [
        "86 (94, 102, 110) cm",
        "86(94,102,110)cm",
        "86 [94, 102] {110} cm",
        "86 / 94 / 102 / 110 cm",
        "86/94/102/110 cm",
        "86; 94; 102; 110 cm",
        "86 | 94 | 102 | 110 cm",
        "86\t94\t102\t110\tcm",
        "86 94 102 110 cm",
        "86, 94, 102, 110 cm",
        "86 cm (94 cm, 102 cm, 110 cm)",
        "cm 86 (94, 102, 110)",
        "86 (94,\n102, 110) cm",
        "\n86 (94, 102, 110) cm",
        "approx. 86 (94, 102, 110) cms.",
        "86,0 (94,0; 102,0; 110,0) cm",
        "860 (940, 1020, 1100) mm",
    ],
)
def test_one_row_in_many_hands(row: str) -> None:
    assert cm(faultless(f"{SIZES}Finished bust: {row}"), "bust_girth") == [86, 94, 102, 110]


@pytest.mark.parametrize(
    "text",
    [
        "Finished bust (cm): 86 (94, 102, 110)",
        "Finished bust [in cm] 86 (94, 102, 110)",
        "Finished measurements in cm\nBust 86 (94, 102, 110)",
        "Actual measurements (cm):\n- Chest: 86 (94, 102, 110)",
        "All measurements are given in cm\nBust/chest circumference 86 (94, 102, 110)",
        "* Garment chest - 86 (94, 102, 110) cm",
    ],
)
def test_the_unit_stands_once_somewhere(text: str) -> None:
    assert cm(faultless(SIZES + text), "bust_girth") == [86, 94, 102, 110]


@pytest.mark.parametrize(
    ("label", "measure"),
    [
        ("Actual bust", "bust_girth"),
        ("Chest circumference", "bust_girth"),
        ("Length to back neck", "length"),
        ("Total length from shoulder", "length"),
        ("Sleeve seam", "sleeve_length"),
        ("Underarm seam", "sleeve_length"),
        ("Sleeve length to underarm", "sleeve_length"),
        ("Upper arm", "upper_arm_girth"),
        ("Bicep circumference", "upper_arm_girth"),
        ("Cuff", "wrist_girth"),
        ("Wrist circumference", "wrist_girth"),
        ("Cross back", "shoulder_width"),
        ("Cross-back", "shoulder_width"),
        ("Armhole depth", "armhole_depth"),
        ("Hip", "hip_girth"),
        ("Waist", "waist_girth"),
    ],
)
def test_labels_in_british_and_american(label: str, measure: str) -> None:
    block = faultless(f"{SIZES}{label}: 30 (31, 32, 33) cm")
    assert cm(block, measure) == [30, 31, 32, 33]


def test_a_leaflet_with_the_units_in_front() -> None:
    text = "Sizes 1 2 3\nTo fit bust cm 81 86 91\n            in 32 34 36\nActual size cm 88 94 100\n in 34½ 37 39½\n"
    block = faultless(text)
    assert cm(block, "bust_girth") == [88, 94, 100]
    assert [len(row.readings) for row in block.rows] == [2, 2]
    assert [remark.says for remark in block.remarks] == ["taken as the bust"]


def test_a_side_seam_has_no_field_and_goes_to_the_note() -> None:
    fields = to_pattern_fields(faultless(f"{SIZES}Side seam 38 (38, 39, 39) cm"))
    assert fields["note"] == "Finished side seam: 38 (38, 39, 39) cm."


def test_several_rows_on_one_line() -> None:
    block = faultless("bust 80 (88, 96) cm / length 56 (57, 58) cm; sleeve 44 (45, 46) cm")
    assert [row.measure for row in block.rows] == ["bust_girth", "length", "sleeve_length"]


def test_a_bare_bust_is_taken_as_finished_and_says_so() -> None:
    (remark,) = faultless("Sizes: S (M)\nBust 86 (94) cm").remarks
    assert "write To fit bust" in remark.says
    assert faultless("Sizes: S (M)\nTo fit\nBust 86 (94) cm").remarks == ()


def test_a_flat_measure_is_doubled() -> None:
    assert cm(faultless("Sizes: S (M)\n½ chest: 43 (47) cm"), "bust_girth") == [86, 94]


@pytest.mark.parametrize("dash", ["-", "–", "—"])
@pytest.mark.parametrize("row", ["86 ({}, 102, 110)", "86 {} 102 110", "86\t{}\t102\t110", "86/{}/102/110"])
def test_a_dash_is_a_size_without_the_figure(dash: str, row: str) -> None:
    assert cm(faultless(f"{SIZES}Finished bust: {row.format(dash)} cm"), "bust_girth") == [86, None, 102, 110]


def test_an_empty_cell_of_a_table_is_a_size_without_the_figure() -> None:
    block = faultless("| Size | XS | S | M |\n|---|---|---|---|\n| Finished bust (in) | 34 | | 40½ |")
    assert [one.value for one in block.rows[0].first.figures] == [34, None, Fraction(81, 2)]


def test_a_table_headed_by_sizes_alone() -> None:
    block = faultless("\tXS\tS\tM\nFinished bust (cm)\t86\t94\t102\nUpper arm (cm)\t30\t32\t34")
    assert block.sizes == ("XS", "S", "M")
    assert cm(block, "upper_arm_girth") == [30, 32, 34]


@pytest.mark.parametrize(
    ("text", "sizes"),
    [
        ("XS (S, M, L) [XL, 2X]", ("XS", "S", "M", "L", "XL", "2X")),
        ("XS/S/M", ("XS", "S", "M")),
        ("XS S M", ("XS", "S", "M")),
        ("S/M (L/XL)", ("S/M", "L/XL")),
        ("0-6 months (6-12 months)", ("0-6 months", "6-12 months")),
        ("2 (4, 6) years", ("2", "4", "6")),
        ("Women's XS (S,\n  M)", ("XS", "S", "M")),
        ("one size", ("one size",)),
        ("1 (2, 3)", ("1", "2", "3")),
    ],
)
def test_size_names(text: str, sizes: tuple[str, ...]) -> None:
    assert read_size_block(f"Sizes: {text}").sizes == sizes


@pytest.mark.parametrize("row", ["86-94-102-110 cm", "86 – 94 – 102 – 110 cm", "86 - 94 - 102 - 110cm"])
def test_dashes_between_sizes(row: str) -> None:
    assert cm(faultless(f"{SIZES}Finished bust: {row}"), "bust_girth") == [86, 94, 102, 110]


def test_thousands_and_decimal_commas_are_told_apart_by_the_number_of_sizes() -> None:
    assert _yarn("1 200 (1 300, 1 400) m") == _yarn("1,200 (1,300, 1,400) m") == _yarn("1200(1300,1400)m")
    assert cm(faultless("Sizes: S (M, L)\nLength 56,5/57/58,5 cm"), "length") == [56.5, 57, 58.5]
    assert cm(faultless("Sizes: S (M)\nLength 56,5 (57,5) cm"), "length") == [56.5, 57.5]


def _yarn(amounts: str) -> list[Fraction | None]:
    block = faultless(f"Sizes: S (M, L)\nYarn: {amounts}")
    return [one.value for one in block.yarn[0].readings[0].figures]


@pytest.mark.parametrize(
    "row",
    [
        "Yarn: 9 (10, 11) balls of 50 g / 120 m",
        "Yarn: 9 (10, 11) x 50 g balls, 120 m each",
        "Yarn: 9 (10, 11) 50g balls (120 m per ball)",
        "Yarn: 9 (10, 11) balls\nBall: 50 g = 120 m",
        "MC: 9 (10, 11) skeins (120 m / 131 yd per 50 g)",
        "9 (10, 11) balls of Old Jetty DK (75% wool, 120 m per 50 g)",
        "Old Jetty DK: 9 (10, 11) balls, 50 g = 120 m",
    ],
)
def test_balls_with_their_put_up(row: str) -> None:
    fields = to_pattern_fields(faultless(f"Sizes: S (M, L)\n{row}"))
    assert fields["yarn"] == {"main": {"balls": "9 (10, 11) balls"}}
    assert (fields["ball_length"], fields["ball_mass"]) == ("120 m", "50 g")


def test_roles_of_colours() -> None:
    text = "Sizes: S (M)\nMC 900 (980) m, CC1 200 (220) m, CC2 50 (60) m\nContrast 3: 10 (10) m"
    assert [row.role for row in faultless(text).yarn] == ["main", "contrast-1", "contrast-2", "contrast-3"]
    letters = "Sizes: S (M)\nYarn A: 4 (5) balls\nB: 1 (1) ball\nC 1 (2) balls"
    assert [row.role for row in faultless(letters).yarn] == ["main", "contrast-1", "contrast-2"]


def test_words_that_mean_nothing_here_are_told() -> None:
    remarks = read_size_block("Sizes: S (M)\nShown in size M.\nPom-pom width 4 (5) cm").remarks
    assert [(remark.place.line, remark.text) for remark in remarks] == [
        (2, "Shown in size M."),
        (3, "Pom-pom width 4 (5) cm"),
    ]


def test_sizes_without_names_are_named_after_whom_they_fit() -> None:
    fields = to_pattern_fields(faultless("To fit bust 80 (88) cm\nActual bust 86 (94) cm"))
    assert fields["sizes"] == "80 (88)"
    assert missing_fields(to_pattern_fields(faultless("Actual bust 86 (94) cm")))[-2:] == ("sizes", "yarn")


# --- Faults -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("row", "column", "said"),
    [
        ("Finished bust: 86 (94, 102) cm", 16, 'found 3 figures for "Finished bust"; wanted 4, one for each of the'),
        ("Finished bust: 86 cm", 16, "write all sizes behind it"),
        ("Finished bust: 86 (94, 102, 110)", 29, "figures without a unit"),
        ("Finished bust: 86 (94, 102, 110) g", 29, '"g" for a length'),
        ("Finished bust: 10 (12, 14, 16) cm", 16, "found 10 cm for XS and 3 more like it; wanted from 25 to 250 cm"),
        ("Finished bust: 86 (94, 92, 110) cm", 24, "found 92 cm for M after 94 cm for S"),
        ("Finished bust: 86 (94, 0, 110) cm", 24, "a figure above nothing"),
        ("Finished bust: 86 (94, 100-104, 110) cm", 24, "the range 100-104 cm for M"),
        ("Finished bust: 86 (94, 102, 110) cm / 34 (37, 42, 43) in", 47, "102 cm and 42 in for M, which is 106.7 cm"),
        ("Finshed bust 86 (94, 102, 110) cm", 1, "did you mean finished bust?"),
        ("Finished bsut 86 (94, 102, 110) cm", 1, "did you mean bust?"),
        ("Tension: 22 sts", 1, "wanted a gauge"),
        ("Tension: 220 sts = 10 cm", 1, "from 3 to 150 to 10 cm"),
        ("Yarn: 9 (10, 11) balls", 1, "found 3 figures; wanted 4, one amount for each size"),
        ("Yarn: 9 (10, 11, 12)", 1, "amounts without a unit"),
        ("12 (13, 14, 15) cm", 1, "without a name"),
    ],
)
def test_a_fault_names_its_place(row: str, column: int, said: str) -> None:
    (fault,) = read_size_block(f"{SIZES}\n{row}").faults
    assert (fault.place.line, fault.place.column) == (3, column)
    assert said in str(fault)


def test_all_faults_are_told_in_the_order_of_the_text() -> None:
    block = read_size_block(f"{SIZES}Bust 10 (11, 12, 13) cm\nHip 90 (91) cm\nLength 56 (57, 58, 59)\nTension: 5")
    assert [fault.place.line for fault in block.faults] == [2, 3, 4, 5]


def test_a_row_told_twice() -> None:
    both = "Sizes: S (M)\nFinished bust 86 (94) cm\nFinished bust 34 (37) in"
    assert len(faultless(both).rows[0].readings) == 2
    (fault,) = read_size_block(f"{both}\nActual bust: 88 (94) cm").faults
    assert "(it stands on line 2 as well)" in str(fault)


def test_a_garment_far_from_the_body_it_is_to_fit() -> None:
    (fault,) = read_size_block("Sizes: S (M)\nTo fit bust 80 (88) cm\nActual bust 43 (94) cm").faults
    assert "43 cm finished for S, to fit 80 cm" in str(fault)


def test_a_size_named_twice() -> None:
    (fault,) = read_size_block("Sizes: S (M, S)").faults
    assert (fault.place.column, fault.found) == (14, '"S" twice')


def test_a_number_of_endless_digits_is_a_fault() -> None:
    (fault,) = read_size_block(f"Sizes: S\nFinished bust {'9' * 5000} cm").faults
    assert "at most" in fault.wanted


def test_nothing_is_read_from_nothing() -> None:
    assert read_size_block(" \n\n---\n") == SizeBlock()
    assert write_size_block(SizeBlock()) == ""
