"""Files that hold a table, or only look like one; what is too large is refused before it is unpacked."""

import io
import zipfile

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import Workbook, load_workbook

from loopwright.files.cupboard_table import UnreadableTable, read_csv, read_table, read_xlsx, write_csv, write_xlsx
from loopwright.files.cupboard_table.grid import MOST_COLUMNS, MOST_ROWS
from loopwright.files.cupboard_table.xlsx_grid import MOST_UNPACKED_BYTES

cells = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)
tables = st.lists(st.lists(cells, min_size=2, max_size=2), min_size=1, max_size=4)


def filled(rows: list[list[str]]) -> list[list[str]]:
    return [["a", "b"], *(row for row in rows if any(cell.strip() for cell in row))]


@given(tables)
def test_any_text_comes_back_from_csv(rows: list[list[str]]) -> None:
    assert [list(row.cells) for row in read_csv(write_csv(filled(rows)), "x").rows] == filled(rows)[1:]


@given(tables)
@settings(max_examples=40, deadline=None)
def test_any_text_comes_back_from_a_workbook(rows: list[list[str]]) -> None:
    """Control characters too, which XML cannot hold: ECMA-376 writes them as _x0001_."""
    assert [list(row.cells) for row in read_xlsx(write_xlsx(filled(rows), "x"), "x").rows] == filled(rows)[1:]


def workbook(rows: list[list[object]]) -> bytes:
    """A workbook as another program writes it."""
    book = Workbook()
    for row in rows:
        book.active.append(row)  # type: ignore[union-attr]
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def test_numbers_and_days_of_a_sheet_are_read_as_written() -> None:
    grid = read_table(workbook([["dye lot", "weighed"], [416, 42.5], [None, 7.0], [True, None]]), "x.xlsx")
    assert [(row.line, row.cells) for row in grid.rows] == [(2, ("416", "42.5")), (3, ("", "7")), (4, ("yes", ""))]


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@a", "'=1"])
def test_no_text_becomes_a_formula(text: str) -> None:
    """Source: common practice against formulas in tables, no source."""
    assert write_csv([["a"], [text]]).decode("utf-8-sig").splitlines()[1].startswith("'")
    sheet = load_workbook(io.BytesIO(write_xlsx([["a"], [text]], "x"))).active
    assert sheet is not None
    assert (sheet["A2"].data_type, sheet["A2"].value) == ("s", text)


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_the_separator_is_found(separator: str) -> None:
    text = f'\n"yarn, or name"{separator}colour\nA{separator}B\n'
    assert read_csv(text.encode(), "x").headings == ("yarn, or name", "colour")


def test_a_line_is_counted_as_an_editor_does() -> None:
    grid = read_csv(b'\na,b\n\n"x\ny",1\nz,2\n', "x")
    assert (grid.line, [row.line for row in grid.rows]) == (2, [4, 6])


@pytest.mark.parametrize("mark", ["utf-8-sig", "utf-16"])
def test_marks_of_an_encoding_are_understood(mark: str) -> None:
    assert read_csv("yarn,note\nFen,Étang\n".encode(mark), "x").rows[0].cells == ("Fen", "Étang")


@pytest.mark.parametrize(
    ("content", "wording"),
    [
        (b"", "x: found nothing; wanted a row of headings"),
        (b" , \n,\n", "x: found nothing"),
        (b"yarn\nF\xe9n\n", "x:2: found bytes that are not text in UTF-8"),
        (b"a" * 5_000_001, "x: found more than 5 MB"),
        (b'a\n"b', "x:2: found a row that cannot be read"),
        (b"PK but no zip", "x: found a file that is no workbook; wanted a workbook, .xlsx, or a table as .csv"),
        ((",".join("a" * (MOST_COLUMNS + 1))).encode(), "x:1: found 101 columns; wanted at most 100"),
        (b"a\n" + b"b\n" * (MOST_ROWS + 1), "x:20002: found more than 20,000 rows"),
        (b"a\n" + b"b" * 2001, "x:2: found more than 2,000 letters in one cell"),
    ],
)
def test_what_holds_no_table_is_said(content: bytes, wording: str) -> None:
    with pytest.raises(UnreadableTable) as caught:
        read_table(content, "x")
    assert wording in str(caught.value)


def zipped(parts: dict[str, bytes]) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, content in parts.items():
            packed.writestr(name, content)
    return out.getvalue()


def test_a_zip_that_unpacks_to_too_much_is_refused() -> None:
    bomb = zipped({"xl/worksheets/sheet1.xml": b" " * (MOST_UNPACKED_BYTES + 1)})
    assert len(bomb) < 100_000
    with pytest.raises(UnreadableTable, match="unpacks to 60 MB in 1 parts"):
        read_table(bomb, "x.xlsx")


def test_a_zip_of_too_many_parts_is_refused() -> None:
    with pytest.raises(UnreadableTable, match="in 501 parts"):
        read_table(zipped({f"{number}.xml": b"" for number in range(501)}), "x.xlsx")


def test_entities_are_not_followed() -> None:
    laughs = b'<!DOCTYPE a [<!ENTITY b "ha"><!ENTITY c "&b;&b;">]><a>&c;</a>'
    with pytest.raises(UnreadableTable, match="a workbook with a document type"):
        read_table(zipped({"xl/workbook.xml": laughs}), "x.xlsx")


@pytest.mark.parametrize("left_out", ["xl/workbook.xml", "[Content_Types].xml"])
def test_a_workbook_with_a_part_missing_is_no_fault_of_ours(left_out: str) -> None:
    with zipfile.ZipFile(io.BytesIO(workbook([["a"], ["b"]]))) as packed:
        parts = {name: packed.read(name) for name in packed.namelist() if name != left_out}
    with pytest.raises(UnreadableTable, match="a workbook that cannot be read"):
        read_table(zipped(parts), "x.xlsx")


def test_what_a_sheet_says_of_its_size_is_not_believed() -> None:
    with zipfile.ZipFile(io.BytesIO(workbook([["a"], ["b"]]))) as packed:
        parts = {name: packed.read(name) for name in packed.namelist()}
    sheet = parts["xl/worksheets/sheet1.xml"]
    parts["xl/worksheets/sheet1.xml"] = sheet.replace(b'ref="A1:A2"', b'ref="A1:XFD1048576"')
    assert parts["xl/worksheets/sheet1.xml"] != sheet
    assert read_table(zipped(parts), "x.xlsx").rows[0].cells == ("b",)
