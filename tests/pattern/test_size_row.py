"""Size rows as patterns print them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.pattern import read_size_names, read_size_row, write_size_row

ROW = (86.0, 94.0, 102.0)


@pytest.mark.parametrize(
    "text",
    [
        "86 (94, 102) cm",
        "86(94,102) cm",
        "86 (94,102)cm",
        "86, 94, 102 cm",
        "86 [94, 102] cm",
        "86 (94; 102) cm",
        "86 cm (94 cm, 102 cm)",
        "86.0 (94.0, 102.0) cm",
        "860 (940, 1020) mm",
        "  86 ( 94 ,  102 )  cm. ",
    ],
)
def test_one_row_in_many_hands(text: str) -> None:
    assert read_size_row(text, "length") == ROW


@pytest.mark.parametrize("text", ["86,5 (94,5; 102,5) cm", "86,5 (94,5, 102,5) cm", "86.5 (94.5, 102.5) cm"])
def test_a_decimal_comma_between_sizes_parted_otherwise(text: str) -> None:
    assert read_size_row(text, "length") == (86.5, 94.5, 102.5)


@pytest.mark.parametrize("dash", ["-", "–", "—"])
def test_a_dash_is_a_size_without_the_figure(dash: str) -> None:
    assert read_size_row(f"86 ({dash}, 102) cm", "length") == (86, None, 102)
    assert read_size_row(f"{dash} (94, 102) cm", "length") == (None, 94, 102)
    assert read_size_row(f"86 (94, {dash}) cm", "length") == (86, 94, None)


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("34 (37, 40) in", (34, 37, 40)),
        ('34" (37", 40")', (34, 37, 40)),
        ("34½ (36¾, 40¼) in", (34.5, 36.75, 40.25)),
        ("34 1/2 (36 3/4, 40) inches", (34.5, 36.75, 40)),
    ],
)
def test_inches(text: str, inches: tuple[float, ...]) -> None:
    assert read_size_row(text, "length") == pytest.approx([inch * 2.54 for inch in inches], rel=1e-12)


@pytest.mark.parametrize(
    ("text", "kind", "row"),
    [
        ("900 (980, 1060) m", "yarn", (900, 980, 1060)),
        ("1000 yd", "yarn", (914.4,)),
        ("350 (400) g", "mass", (350, 400)),
        ("9 (10, 11)", "count", (9, 10, 11)),
        ("9 (10, 11) balls", "count", (9, 10, 11)),
        ("6½ (7, 8)", "count", (6.5, 7, 8)),
    ],
)
def test_other_kinds(text: str, kind: str, row: tuple[float, ...]) -> None:
    assert read_size_row(text, kind) == pytest.approx(row)


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("86 (94, 102)", "length"),
        ("86 (ninety, 102) cm", "length"),
        ("- (-, -) cm", "length"),
        ("", "length"),
        ("cm", "length"),
        ("0 (94, 102) cm", "length"),
        ("86 (94, 102) g", "length"),
        ("86 (94, 102) m", "mass"),
        ("9 (10, 11) cm", "count"),
    ],
)
def test_what_is_no_row(text: str, kind: str) -> None:
    with pytest.raises(ValueError, match="wanted"):
        read_size_row(text, kind)


def test_a_fault_names_the_figure_and_the_row() -> None:
    with pytest.raises(ValueError, match=r"ninety.*86 \(ninety, 102\)"):
        read_size_row("86 (ninety, 102) cm", "length")


@given(st.lists(st.none() | st.floats(0.1, 2000), min_size=1, max_size=12).filter(any))
def test_a_written_row_reads_back(row: list[float | None]) -> None:
    assert read_size_row(write_size_row(row, "cm"), "length") == tuple(row)


def test_size_names() -> None:
    assert read_size_names("XS (S, M, 1X/2X)") == ("XS", "S", "M", "1X/2X")
    assert read_size_names("one size") == ("one size",)


@pytest.mark.parametrize("text", ["", "( )", "S (M, S)"])
def test_what_are_no_size_names(text: str) -> None:
    with pytest.raises(ValueError, match="wanted"):
        read_size_names(text)
