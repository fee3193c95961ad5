"""The verb ``gauge``."""

from __future__ import annotations

from typing import Annotated

import typer

from loopwright.cli.options import AsJson, MeasuresOption, SeasonFile, WordsOption

__all__ = ["gauge"]

SwatchArgument = Annotated[
    str | None, typer.Argument(metavar="SWATCH", help="The key of one swatch, else all of them.")
]
RepeatOption = Annotated[
    str | None, typer.Option("--repeat", metavar="REPEAT", help='Stitch repeat to cast on for, such as "4n + 2".')
]
LengthOption = Annotated[
    str | None,
    typer.Option("--length", metavar="LENGTH", help='Say what to knit to for a length after washing, such as "36 cm".'),
]


def gauge(
    file: SeasonFile,
    swatch: SwatchArgument = None,
    as_json: AsJson = False,
    repeat: RepeatOption = None,
    length: LengthOption = None,
    measures: MeasuresOption = None,
    words: WordsOption = None,
) -> None:
    """Say what your swatches tell: tension with its doubt, the wash, the next needle, and the ways out.

    Ends with exit code 1 when a count is hard to believe.
    """
    from loopwright.cli.gauging import tell_gauge
    from loopwright.files import read_season
    from loopwright.units import Reader

    season = read_season(file)
    reader = Reader(measures=measures or season.measures, words=words or season.words)
    tell_gauge(season, swatch, reader, as_json=as_json, repeat=repeat, length=length)
