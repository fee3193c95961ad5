"""What holds for every block: reading undoes writing, nothing crashes, and no text takes long."""

import random
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

from loopwright.fabric import STRUCTURES, Gauge
from loopwright.pattern.size_block import (
    Figure,
    MeasureRow,
    PutUp,
    Reading,
    SizeBlock,
    YarnRow,
    read_size_block,
    to_pattern_fields,
    write_size_block,
)
from loopwright.pattern.size_block.figures import take_all
from loopwright.pattern.size_block.tokens import lex_line, lines_of
from loopwright.pattern.size_block.tree import Of
from loopwright.pattern.size_block.words import PLAUSIBLE_CM

INCH_CM = Fraction("2.54")
BODY = ("bust_girth", "waist_girth", "hip_girth", "height", "foot_length", "hand_girth")
FINISHED = sorted(set(PLAUSIBLE_CM) - {"height", "foot_girth", "foot_length", "hand_girth"})
PIECES = [
    *"0123456789 ()[]{},;:/|-–—\t\n½¼¾=%'\"x",
    *("cm", "in", "balls", " m", "sts", "Bust", "Sizes", "Yarn", "1/2", "9" * 30),
]

EXAMPLE = """\
Sizes: XS (S, M, L) [XL, 2X]
To fit bust 80 (88, 96, 104) [112, 120] cm
• Finished bust: 86 (94, 102, 110) [118, 126] cm / 34 (37, 40, 43 1/4) [46½, 49 1/2] in
Length to back neck: 56 (57, 58,
59) [60, –] cm
Yarn: 9 (10, 11, 12) [13, 14] balls of 50 g / 120 m
MC 900 (980, 1060, 1140) [1200, 1300] m, CC 200 (220, 240, 260) [280, 300] m
Tension: 22 sts and 30 rows = 10 cm in stocking stitch on 4 mm needles
Needles 4 mm
"""


# --- Blocks drawn -------------------------------------------------------------------------------------------


def fractions(low: Fraction, high: Fraction, unit: str) -> SearchStrategy[Fraction]:
    """Figures as printed: tenths of a centimetre, sixteenths of an inch."""
    steps = 16 if unit == "in" else 10
    return st.integers(int(low * steps) + 1, int(high * steps)).map(lambda number: Fraction(number, steps))


@st.composite
def measure_rows(draw: DrawFn, of: Of, measure: str, columns: int) -> MeasureRow:
    unit = draw(st.sampled_from(["cm", "in", "mm"]))
    factor = {"cm": Fraction(1), "in": INCH_CM, "mm": Fraction(1, 10)}[unit]
    low, high = (Fraction(bound) / factor for bound in PLAUSIBLE_CM[measure])
    if measure == "bust_girth":
        low, high = Fraction(80) / factor, Fraction(119) / factor
    values = sorted(draw(st.lists(fractions(low, high, unit), min_size=columns, max_size=columns)))
    missing = draw(st.sets(st.integers(0, columns - 1), max_size=columns - 1))
    figures = []
    for at, value in enumerate(values):
        upto = value + draw(st.integers(1, 9)) if of == "body" and draw(st.booleans()) else None
        figures.append(Figure(None) if at in missing else Figure(value, upto))
    return MeasureRow(of, measure, (Reading(unit, tuple(figures)),))


@st.composite
def yarn_rows(draw: DrawFn, role: str, columns: int) -> YarnRow:
    unit = draw(st.sampled_from(["m", "yd", "g", "oz", "balls"]))
    amounts = st.integers(1, 9000).map(Fraction) | st.integers(2, 99).map(lambda halves: Fraction(halves, 2))
    values = draw(st.lists(amounts, min_size=columns, max_size=columns))
    return YarnRow(role, (Reading(unit, tuple(map(Figure, values))),))


@st.composite
def put_ups(draw: DrawFn) -> PutUp:
    length = Reading(draw(st.sampled_from(["m", "yd"])), (Figure(Fraction(draw(st.integers(20, 900)))),))
    mass = Reading("g", (Figure(Fraction(draw(st.integers(5, 500)))),))
    return draw(st.sampled_from([PutUp(length, mass), PutUp(None, mass), PutUp(length, None)]))


@st.composite
def blocks(draw: DrawFn) -> SizeBlock:
    """A block without faults."""
    names = draw(st.sampled_from([("XS", "S", "M", "L"), ("one size",), ("2", "4-5", "6"), ("S/M", "L/XL")]))
    kinds: list[tuple[Of, str]] = [("body", one) for one in BODY] + [("finished", one) for one in FINISHED]
    chosen = draw(st.lists(st.sampled_from(kinds), unique=True, max_size=8))
    rows = [draw(measure_rows(of, measure, len(names))) for of, measure in chosen]
    roles = draw(st.lists(st.sampled_from(["contrast", "contrast-1", "contrast-2"]), unique=True, max_size=3))
    gauges = st.builds(Gauge, stitches_per_10cm=st.floats(3, 150), rows_per_10cm=st.none() | st.floats(3, 150))
    gauge = draw(st.none() | gauges)
    return SizeBlock(
        sizes=names,
        rows=tuple(rows),
        yarn=tuple(draw(yarn_rows(role, len(names))) for role in ("main", *roles)),
        put_up=draw(st.none() | put_ups()),
        gauge=gauge,
        fabric=draw(st.none() | st.sampled_from(sorted(STRUCTURES))) if gauge else None,
        needle_mm=draw(st.none() | st.integers(2, 40).map(lambda number: Fraction(number, 2))),
    )


@given(blocks())
def test_reading_undoes_writing(block: SizeBlock) -> None:
    assert read_size_block(write_size_block(block)) == block


@given(blocks(), st.sampled_from(["[]", "{}", "()"]), st.sampled_from(["; ", ", ", " | "]))
def test_other_brackets_and_separators_say_the_same(block: SizeBlock, brackets: str, parting: str) -> None:
    written = write_size_block(block).replace(", ", parting).replace("(", brackets[0]).replace(")", brackets[1])
    assert read_size_block(written) == block


@given(blocks())
def test_the_fields_hold_what_the_block_says(block: SizeBlock) -> None:
    fields = to_pattern_fields(block)
    table = {"finished": "finished", "body": "to_fit"}
    kept = [row.measure for row in block.rows if row.measure in fields.get(table[row.of], {})]
    noted = fields.get("note", "").count(": ")
    assert len(kept) + noted == len(block.rows)
    assert set(fields["yarn"]) == {row.role for row in block.yarn}


# --- Any text -----------------------------------------------------------------------------------------------


def spoilt(text: str, seed: int) -> str:
    """The text with up to thirty places changed."""
    chance = random.Random(seed)
    signs = list(text)
    for _ in range(chance.randint(1, 30)):
        at = chance.randrange(len(signs)) if signs else 0
        signs[at : at + chance.choice([0, 1, 1, 3, 20])] = chance.choice(["", *PIECES])
    return "".join(signs)


@settings(max_examples=300)
@given(st.integers(0, 2**32))
def test_a_spoilt_block_is_read_or_told(seed: int) -> None:
    assert_sound(spoilt(EXAMPLE, seed))


@given(st.text(max_size=200) | st.lists(st.sampled_from(PIECES), max_size=60).map("".join))
def test_any_text_is_read_or_told(text: str) -> None:
    assert_sound(text)


def assert_sound(text: str) -> None:
    """Every place lies in the text, every row is whole, and what is without fault is written and read back."""
    block = read_size_block(text)
    lines = lines_of(text)
    spans = [(fault.place, fault.width) for fault in block.faults]
    spans += [(remark.place, remark.width) for remark in block.remarks]
    for place, width in spans:
        assert 1 <= place.line <= len(lines)
        assert 1 <= place.column < place.column + width <= len(lines[place.line - 1]) + 1
    readings = [row.readings for row in block.rows] + [row.readings for row in block.yarn]
    assert len({len(one.figures) for both in readings for one in both}) <= 1
    to_pattern_fields(block)
    if not block.faults:
        assert read_size_block(write_size_block(block)) == block


def work(text: str) -> int:
    """How many tokens are looked at, at most, to read a text: every way of every row."""
    return sum(
        len(tokens) * sum(1 for _ in take_all(tokens))
        for number, line in enumerate(lines_of(text), 1)
        if (tokens := lex_line(line, number))
    )


@pytest.mark.parametrize(
    "piece", ["1/2 ", "1,", "86 - ", "(", "| ", "9 ", "MC 1/2-3,4 ", "bust ", "1 200 ", "Bust 1 (2) cm ", "a 1 "]
)
def test_work_grows_with_the_length_alone(piece: str) -> None:
    once, twice = work(f"Bust {piece * 200}"), work(f"Bust {piece * 400}")
    assert twice <= 2.1 * once
    assert_sound(f"Sizes: S (M)\nBust {piece * 2000}\n" + f"{piece}\n" * 500)
