"""The cupboard as a table and back: nothing is lost, nothing is doubled, faults name line and column."""

import math
from collections.abc import Callable

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from loopwright.files.cupboard_table import (
    cupboard_rows,
    entries_to_keep,
    read_table,
    take_in,
    understand,
    write_csv,
    write_xlsx,
)
from loopwright.records import FROM_FILE
from loopwright.season import Season
from loopwright.season.change import tables_with_entries
from loopwright.season.cupboard_report import CupboardUse, lot_report
from loopwright.yarn import Lot, Yarn
from tests.files.cupboard_lines import make_key, taken
from tests.season.small import season
from tests.strategies import keys, lots, yarns

SMALL = season()
EMPTY = SMALL.model_copy(update={"cupboard": ()})


@st.composite
def cupboards(draw: st.DrawFn) -> tuple[tuple[Yarn, ...], tuple[Lot, ...]]:
    """A few yarns, each with a name of its own, and lots of them, some of which may be the same."""
    of = draw(st.lists(keys, unique=True, min_size=1, max_size=2))
    kinds = tuple(draw(yarns(key)).model_copy(update={"name": f"No. {number}"}) for number, key in enumerate(of))
    held = draw(st.lists(keys, unique=True, max_size=3))
    some = [draw(lots(key, tuple(of))) for key in held]
    twice: bool = draw(st.booleans())
    twin = [some[0].model_copy(update={"key": "twin-of-it"})] if some and twice else []
    return kinds, (*some, *twin)


def content_of(write: Callable[..., bytes], kinds: tuple[Yarn, ...], held: tuple[Lot, ...]) -> bytes:
    by_key = {yarn.key: yarn for yarn in kinds}
    return write(cupboard_rows(lot_report(lot, by_key[lot.yarn], CupboardUse()) for lot in held))


def with_table(content: bytes, into: Season, name: str) -> Season:
    """The season with a table taken in."""
    grid = read_table(content, name)
    taken = take_in(grid, understand(grid), into, make_key)
    assert taken.faults == ()
    added, changed = entries_to_keep(taken, "leave")
    return Season.model_validate(tables_with_entries(into, added, changed), context=FROM_FILE)


@given(cupboards())
@settings(max_examples=60, deadline=None)
def test_what_csv_gives_out_it_takes_in(cupboard: tuple[tuple[Yarn, ...], tuple[Lot, ...]]) -> None:
    kinds, held = cupboard
    there = with_table(content_of(write_csv, kinds, held), EMPTY, "mine.csv")
    used = {lot.yarn for lot in held}
    assert there.cupboard == held
    assert {y.key: y for y in there.yarns[len(SMALL.yarns) :]} == {y.key: y for y in kinds if y.key in used}


@given(cupboards())
@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_what_a_workbook_gives_out_it_takes_in(cupboard: tuple[tuple[Yarn, ...], tuple[Lot, ...]]) -> None:
    """Texts and counts to the letter; quantities to the 15 digits that a sheet keeps (ECMA-376 writes them in tens)."""
    kinds, held = cupboard
    content = content_of(lambda rows: write_xlsx(rows, "Cupboard"), kinds, held)
    there = with_table(content, EMPTY, "mine.xlsx").cupboard
    plain = [lot.model_dump(exclude={"mass_g"}) for lot in held]
    assert [lot.model_dump(exclude={"mass_g"}) for lot in there] == plain
    assert all(
        math.isclose(one.mass_g or 0, other.mass_g or 0, rel_tol=1e-14) for one, other in zip(held, there, strict=True)
    )


@given(cupboards())
@settings(max_examples=30, deadline=None)
def test_a_second_time_nothing_is_added(cupboard: tuple[tuple[Yarn, ...], tuple[Lot, ...]]) -> None:
    kinds, held = cupboard
    content = content_of(write_csv, kinds, held)
    once = with_table(content, EMPTY, "mine.csv")
    assert with_table(content, once, "mine.csv") == once


def test_two_lines_alike_are_two_lots() -> None:
    text = "yarn,colour,balls\nKiln DK,Rust,2\nKiln DK,rust,2\n"
    assert [one.key for one in taken(text).added] == ["kiln-dk-rust", "kiln-dk-rust-2"]


def test_of_three_lines_one_is_there() -> None:
    found = taken("yarn,colour,dye lot,balls\nkiln dk,OAT,1,12\nKiln DK,Oat,1,3\nKiln DK,Oat,2,1\n")
    assert [one.line for one in found.equal] == [2]
    assert [one.line for one in found.added] == [3, 4]


def test_another_amount_is_told_and_left_to_choose() -> None:
    found = taken('yarn,colour,dye lot,balls,"weighed, g",box\nKiln DK,Oat,1,9,31,attic\n')
    (one,) = found.differing
    assert one.differs == (("put_ups", "12", "9"), ("weighed", "", "31 g"), ("kept_in", "", "attic"))
    assert entries_to_keep(found, "leave") == ({"yarns": {}, "cupboard": {}}, {})
    assert entries_to_keep(found, "update")[1] == {
        "cupboard": {"oat": {"put_ups": 9, "weighed": "31 g", "kept_in": "attic"}}
    }
    assert list(entries_to_keep(found, "add")[0]["cupboard"]) == ["kiln-dk-oat"]


def test_an_amount_that_the_file_does_not_have_any_more_is_taken_away() -> None:
    found = taken("yarn,colour,dye lot,balls,weighed\nKiln DK,Oat,1,,40 g\n")
    assert entries_to_keep(found, "update")[1] == {"cupboard": {"oat": {"put_ups": None, "weighed": "40 g"}}}


def test_a_new_yarn_comes_along_once() -> None:
    text = (
        "yarn,color,skeins,yards per skein,ounces per skein,fiber\n"
        "Fen,Moss,3,246,3.5,70% merino 30% silk\nFen,Reed,1,246,3.5,\n"
    )
    found = taken(text)
    (fen,) = found.yarns.values()
    assert fen["fibres"] == {"merino": 70.0, "silk": 30.0}
    assert fen["length"] == "224.9424 m"  # 246 × 0.9144 m, the international yard
    assert math.isclose(float(fen["mass"].removesuffix(" g")), 3.5 * 28.349523125)  # the avoirdupois ounce
    assert {one.fields["yarn"] for one in found.added} == {"fen"}


@pytest.mark.parametrize(
    ("line", "fault"),
    [
        ("Kiln DK,Oat,,,", "mine.csv:2: found no whole balls and no mass; wanted how many whole balls, or the mass"),
        ("Kiln DK,Oat,0,0,", "mine.csv:2: found no whole balls and no mass"),
        ("Kiln DK,Oat,2.5,,", 'mine.csv:2: column “balls”: found "2.5"; wanted whole balls, a whole number'),
        ("Kiln DK,Oat,two,,", 'mine.csv:2: column “balls”: found "two"; wanted whole balls, a whole number'),
        ("Kiln DK,Oat,-1,,", 'column “balls”: found "-1"; wanted whole balls, from 0 to 10,000'),
        ("Kiln DK,Oat,,heavy,", 'mine.csv:2: column “weighed, g”: found "heavy"; wanted'),
        ("Kiln DK,Oat,,9 yd,", 'column “weighed, g”: found "9 yd"; wanted'),
        (",Oat,1,,", "mine.csv:2: column “yarn”: found nothing; wanted the name of the yarn"),
        ("Kiln DK,Oat,1,,70 wool 20 silk", 'column “fibres”: found "70 wool 20 silk"; wanted shares that sum to 100 %'),
        ("Kiln DK,Oat,1,,100 wol", "“wol” is none; did you mean wool?"),
        ("Kiln DK,Oat,1,,50 wool 50 wool", "wanted each fibre once; wool stands twice"),
        ("Fen,Oat,1,,", "the yarn “Fen”, which is not there yet, without the length and mass of a put-up"),
    ],
)
def test_a_fault_names_its_line_and_column(line: str, fault: str) -> None:
    found = taken(f'yarn,colour,balls,"weighed, g",fibres\n{line}\n')
    assert fault in str(found.faults[0])
    with pytest.raises(ValueError, match="faults"):
        entries_to_keep(found, "leave")


def test_every_fault_is_told_at_once() -> None:
    found = taken("yarn,colour,balls\nKiln DK,Oat,x\nKiln DK,Rust,1\nFen,Oat,1\nKiln DK,Oat,\n")
    assert [fault.line for fault in found.faults] == [2, 4, 5]


def test_a_bare_mass_needs_a_heading_with_its_unit() -> None:
    assert "write 42 g or 42 oz" in str(taken("yarn,colour,weighed\nKiln DK,Oat,42\n").faults[0])
    (one,) = taken("yarn,colour,weighed in ounces\nKiln DK,Rust,1 1/2\n").added
    assert one.fields["weighed"] == "42.5242846875 g"


def test_a_yarn_of_that_name_with_other_put_ups_is_a_fault() -> None:
    found = taken("yarn,colour,balls,put-up length,put-up mass\nKiln DK,Rust,1,200 m,50 g\n")
    assert "found put-ups of 200 m and 50 g; wanted 120 m and 50 g, as “Kiln DK” has here" in str(found.faults[0])
    assert taken("yarn,colour,balls,put-up length,put-up mass\nKiln DK,Rust,1,131 yd,1 3/4 oz\n").faults == ()
