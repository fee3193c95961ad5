"""What a table's headings mean; what could mean two things is asked."""

import pytest

from loopwright.files.cupboard_table import ASIDE, FIELDS, Columns, meaning_of, read_csv, understand


def columns(*headings: str, said: dict[int, str] | None = None) -> Columns:
    quoted = ",".join(f'"{heading}"' for heading in headings)
    return understand(read_csv(f"{quoted}\n{','.join('x' for _ in headings)}\n".encode(), "shop.csv"), said)


def meanings(*headings: str) -> list[str | None]:
    return [column.means for column in columns(*headings).all]


def test_our_own_headings_mean_themselves() -> None:
    assert meanings(*(field.heading for field in FIELDS)) == [field.key for field in FIELDS]


@pytest.mark.parametrize(
    ("heading", "means"),
    [
        ("Color", "colour"),
        ("COLOURWAY", "colour"),
        ("Dye-lot", "dye_lot"),
        ("Lot no.", "dye_lot"),
        ("Skeins", "put_ups"),
        ("Number of hanks", "put_ups"),
        ("Fiber content", "fibres"),
        ("Yards per skein", "length"),
        ("Length of a ball (m)", "length"),
        ("Weight per ball [oz]", "mass"),
        ("Weight left (g)", "weighed"),
        ("Location", "kept_in"),
        ("Comments", "note"),
        ("Needle size, mm", "needle"),
    ],
)
def test_plain_words_are_understood(heading: str, means: str) -> None:
    assert meanings(heading) == [means]


@pytest.mark.parametrize("heading", ["Weight", "Length", "Grams", "Price", "Status", "Weight per parcel"])
def test_what_is_not_clear_is_asked(heading: str) -> None:
    found = columns("yarn", "colour", "balls", heading)
    assert [column.heading for column in found.unclear] == [heading]
    assert not found.is_clear
    assert columns("yarn", "colour", "balls", heading, said={3: ASIDE}).is_clear


@pytest.mark.parametrize(
    ("heading", "unit"),
    [("Yards per skein", "yd"), ("weighed, g", "g"), ("Weight left (oz)", "oz"), ("weighed", None), ("g or oz", None)],
)
def test_a_heading_names_its_unit(heading: str, unit: str | None) -> None:
    assert columns(heading).all[0].unit == unit


def test_what_is_worked_out_is_left_aside() -> None:
    assert meanings("in all, m", "free, m", "reserved for", "") == [ASIDE] * 4


def test_a_field_twice_is_a_fault() -> None:
    (fault,) = columns("yarn", "colour", "color", "balls").faults
    assert str(fault) == (
        "shop.csv:1: column “color”: found a second column for colour; wanted one; the first is “colour”"
    )


def test_what_is_missing_is_named() -> None:
    faults = [str(fault) for fault in columns("yarn").faults]
    assert faults == [
        "shop.csv:1: found no column for colour; wanted a column headed colour",
        "shop.csv:1: found no column for put-ups; wanted a column headed put-ups, or one for weighed, g",
    ]


def test_a_meaning_can_be_said_in_any_of_the_words() -> None:
    assert (meaning_of("Color"), meaning_of("weighed"), meaning_of("nothing")) == ("colour", "weighed", ASIDE)
    with pytest.raises(KeyError):
        meaning_of("price")
