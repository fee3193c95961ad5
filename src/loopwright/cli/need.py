"""The verb ``need``."""

from __future__ import annotations

from typing import Annotated

import typer

from loopwright.cli.options import AsJson, MeasuresOption, SeasonFile, WordsOption

__all__ = ["need"]

GarmentArgument = Annotated[
    str | None, typer.Argument(metavar="GARMENT", help="The key of one garment, with its working; else all of them.")
]
RemnantOption = Annotated[
    str | None, typer.Option("--remnant", metavar="MASS", help='Say what a remnant can still knit, such as "38 g".')
]
FromOption = Annotated[
    str | None, typer.Option("--from", metavar="SECTION", help="The section that it is to knit, by its name.")
]
RowOption = Annotated[int, typer.Option("--row", metavar="N", help="Rows of that section that are done.", min=0)]
RoleOption = Annotated[
    str | None, typer.Option("--role", metavar="ROLE", help="The role whose yarn it is, else the garment's first.")
]
ThenOption = Annotated[
    str | None,
    typer.Option("--then", metavar="MASS", help="What there is of another colour: say after which row to change."),
]


def need(
    file: SeasonFile,
    garment: GarmentArgument = None,
    *,
    as_json: AsJson = False,
    remnant: RemnantOption = None,
    section: FromOption = None,
    row: RowOption = 0,
    role: RoleOption = None,
    then: ThenOption = None,
    measures: MeasuresOption = None,
    words: WordsOption = None,
) -> None:
    """Say whether there is enough yarn: metres, grams and doubt by section and role, and tails to cast on with.

    Ends with exit code 1 when yarn is short for a garment still to be made, or the remnant does not finish its section.
    """
    from loopwright.cli.needing import Remnant, tell_need
    from loopwright.files import read_season
    from loopwright.units import Reader

    season = read_season(file)
    reader = Reader(measures=measures or season.measures, words=words or season.words)
    asked = None if remnant is None else Remnant(remnant, section, row, role, then)
    tell_need(season, garment, reader, asked, as_json=as_json)
