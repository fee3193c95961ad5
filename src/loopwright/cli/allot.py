"""The verb ``allot``."""

from __future__ import annotations

from typing import Annotated

import typer

from loopwright.cli.options import AsJson, MeasuresOption, SeasonFile, WordsOption

__all__ = ["allot"]

GarmentArgument = Annotated[
    str | None,
    typer.Argument(
        metavar="GARMENT",
        help="The key of one garment, which then has the whole cupboard to itself; else all share it.",
    ),
]


def allot(
    file: SeasonFile,
    garment: GarmentArgument = None,
    as_json: AsJson = False,
    measures: MeasuresOption = None,
    words: WordsOption = None,
) -> None:
    """Say which lot knits which section, where dye lots change, and where a substitute colour hides.

    Ends with exit code 1 when a section is left without yarn that is sure enough.
    """
    from loopwright.cli.allotting import tell_allotment
    from loopwright.files import read_season
    from loopwright.units import Reader

    season = read_season(file)
    reader = Reader(measures=measures or season.measures, words=words or season.words)
    tell_allotment(season, garment, reader, as_json=as_json)
