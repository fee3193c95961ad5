"""The verb ``sizes``."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from loopwright.cli.options import AsJson

if TYPE_CHECKING:
    from loopwright.pattern import SizeBlock
    from loopwright.pattern.size_block import MeasureRow, Reading

__all__ = ["sizes"]

_MOST_BYTES = 1_000_000
_USUAL_KEY = "pattern"


def sizes(
    file: Annotated[
        str, typer.Argument(metavar="FILE", help="A text file, or - for standard input.", show_default=False)
    ] = "-",
    as_toml: Annotated[
        bool, typer.Option("--toml", help="Print the section [patterns.x], ready for a season file.")
    ] = False,
    as_json: AsJson = False,
    key: Annotated[str, typer.Option("--key", metavar="KEY", help="The pattern's key in the section.")] = _USUAL_KEY,
) -> None:
    """Read a pattern's size block, as pasted, and show it as a table.

    Every fault is told with its line and column, and the exit code is then 2. What is left out is told as well.
    """
    from loopwright.pattern import read_size_block
    from loopwright.store.keys import check_key

    check_key(key)
    if as_toml and as_json:
        from loopwright.units import BadInput

        raise BadInput("--toml and --json", "one of them")
    block = read_size_block(_text(file))
    if as_json:
        typer.echo(_json(block))
    elif as_toml and not block.faults:
        typer.echo(_toml(block, key), nl=False)
    elif not as_toml:
        _show(block)
    for line in (*block.faults, *(block.remarks if not as_json else ())):
        typer.echo(str(line), err=True)
    if block.faults:
        raise typer.Exit(2)


def _text(file: str) -> str:
    import sys

    from loopwright.units import BadInput

    place = "standard input" if file == "-" else file
    try:
        content = sys.stdin.buffer.read(_MOST_BYTES + 1) if file == "-" else _bytes_of(Path(file))
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        raise BadInput(reason, "a text file that can be read", place=place) from error
    if len(content) > _MOST_BYTES:
        raise BadInput("more than 1 MB", "a pattern's size block", place=place)
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise BadInput("bytes that are not text", "text in UTF-8", place=place) from error
    if not text.strip():
        raise BadInput("no text", "the lines of a pattern that state its sizes", place=place)
    return text


def _bytes_of(path: Path) -> bytes:
    with path.open("rb") as file:
        return file.read(_MOST_BYTES + 1)


# ----------------------------------------------------------------------------------------------------- for people
def _show(block: SizeBlock) -> None:
    from rich.text import Text

    from loopwright.cli.show import console, table
    from loopwright.pattern import missing_fields, to_pattern_fields
    from loopwright.pattern.size_block import row_name

    out = console()
    names = block.sizes or tuple(str(at + 1) for at in range(block.columns))
    rows = [line for row in block.rows for line in _lines(row_name(row.of, row.measure, half=row.half), row.readings)]
    rows += [line for row in block.yarn for line in _lines(f"Yarn, {row.role}", row.readings)]
    if rows:
        made = table("size", *names, numbers=names)
        for line in rows:
            made.add_row(*map(Text, line))
        out.print(made)
    fields = to_pattern_fields(block)
    for label, field in _FACTS.items():
        if field in fields:
            out.print(Text(f"{label}: {fields[field]}"))
    missing = missing_fields(fields)
    if missing:
        out.print(Text(f"Still wanted for a pattern: {', '.join(missing)}."))


_FACTS = {
    "Tension": "gauge",
    "Fabric": "fabric",
    "Needle": "needle",
    "Length of a ball": "ball_length",
    "Mass of a ball": "ball_mass",
}


def _lines(name: str, readings: Sequence[Reading]) -> list[list[str]]:
    """Give a row's cells, a line for each unit."""
    from loopwright.pattern.size_block import figure_text

    lines = []
    for at, reading in enumerate(readings):
        cells = [
            "–" if one.value is None else f"{figure_text(one, reading.unit)} {reading.unit}" for one in reading.figures
        ]
        lines.append(["" if at else name, *cells])
    return lines


# -------------------------------------------------------------------------------------------- for other programs
def _toml(block: SizeBlock, key: str) -> str:
    """Write the section; what a pattern still needs stands in it as a comment."""
    import tomli_w

    from loopwright.pattern import missing_fields, to_pattern_fields

    fields = to_pattern_fields(block)
    lines = [f"# still wanted: {', '.join(missing_fields(fields))}\n"] if missing_fields(fields) else []
    return "".join(lines) + tomli_w.dumps({"patterns": {key: fields}})


def _json(block: SizeBlock) -> str:
    import json

    from loopwright.pattern import missing_fields, to_pattern_fields

    fields = to_pattern_fields(block)
    said: dict[str, Any] = {
        "sizes": list(block.sizes),
        "rows": [_row_json(row) for row in block.rows],
        "pattern": fields,
        "missing": list(missing_fields(fields)),
        "faults": [
            {
                "line": fault.place.line,
                "column": fault.place.column,
                "width": fault.width,
                "found": fault.found,
                "wanted": fault.wanted,
                "hint": fault.hint,
            }
            for fault in block.faults
        ],
        "left_out": [
            {"line": one.place.line, "column": one.place.column, "text": one.text, "says": one.says}
            for one in block.remarks
        ],
    }
    return json.dumps(said, indent=2, ensure_ascii=False)


def _row_json(row: MeasureRow) -> dict[str, Any]:
    cm = [None if one is None else float(one) for one in row.in_cm()]
    return {"of": row.of, "measure": row.measure, "cm": cm, "units": [reading.unit for reading in row.readings]}
