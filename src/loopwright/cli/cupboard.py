"""The verb ``cupboard``."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

from loopwright.cli.options import AsJson, MeasuresOption, SeasonFile, WordsOption

__all__ = ["cupboard"]

SearchOption = Annotated[
    str | None,
    typer.Option(
        "--search",
        metavar="TEXT",
        help="Only lots in which every word stands: yarn, colour, dye lot, fibre, place or note.",
    ),
]
ExportOption = Annotated[
    Path | None,
    typer.Option("--export", metavar="TABLE", help="Write the lots as a table, .csv or .xlsx.", show_default=False),
]
ImportOption = Annotated[
    Path | None,
    typer.Option(
        "--import",
        metavar="TABLE",
        help="Say what taking in a table, .csv or .xlsx, would do; with --write also do it.",
        show_default=False,
    ),
]
ColumnOption = Annotated[
    list[str] | None,
    typer.Option(
        "--column",
        metavar="HEADING=MEANING",
        help='What a column of the table means, such as "Shade=colour" or "Price=nothing". May be said several times.',
        show_default=False,
    ),
]
ThereOption = Annotated[
    Literal["leave", "update", "add"],
    typer.Option(
        "--there",
        help="What is done with lots that are there already: left alone, given the table's amounts, or added again.",
    ),
]
WriteOption = Annotated[
    Path | None,
    typer.Option(
        "--write",
        metavar="SEASON",
        help="Write the season with what was taken in, .toml or .json; its comments are not carried over.",
        show_default=False,
    ),
]


def cupboard(
    file: SeasonFile,
    *,
    search: SearchOption = None,
    export: ExportOption = None,
    take: ImportOption = None,
    column: ColumnOption = None,
    there: ThereOption = "leave",
    write: WriteOption = None,
    replace: Annotated[
        bool, typer.Option("--replace", help="Put what is written in the place of a file that is there already.")
    ] = False,
    as_json: AsJson = False,
    measures: MeasuresOption = None,
    words: WordsOption = None,
) -> None:
    """Say what yarn there is, what it is kept for and what is free; give the cupboard out as a table, or take one in.

    Ends with exit code 1 when a search finds nothing.
    """
    from loopwright.cli.cupboard_telling import export_cupboard, import_table, tell_cupboard
    from loopwright.files import read_season
    from loopwright.units import BadInput, Reader

    season = read_season(file)
    reader = Reader(measures=measures or season.measures, words=words or season.words)
    if take is not None:
        import_table(season, take, column or [], there, write, reader, replace=replace, as_json=as_json)
        return
    if write is not None or column:
        raise BadInput("--write" if write else "--column", "it together with --import")
    if export is not None:
        export_cupboard(season, search or "", export, replace=replace)
        return
    tell_cupboard(season, search or "", reader, as_json=as_json)
