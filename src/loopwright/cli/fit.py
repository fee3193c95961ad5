"""The verb ``fit``."""

from __future__ import annotations

from typing import Annotated

import typer

from loopwright.cli.options import AsJson, MeasuresOption, SeasonFile, WordsOption

__all__ = ["fit"]

GarmentArgument = Annotated[
    str | None, typer.Argument(metavar="GARMENT", help="The key of one garment, else all of them.")
]


def fit(
    file: SeasonFile,
    garment: GarmentArgument = None,
    as_json: AsJson = False,
    measures: MeasuresOption = None,
    words: WordsOption = None,
) -> None:
    """Say which size fits whom: every size at your own gauge, with the ease at each point.

    Ends with exit code 1 when a garment fits nobody well, or has no size yet.
    """
    from loopwright.cli.fitting import tell_fit
    from loopwright.files import read_season

    tell_fit(read_season(file), garment, as_json=as_json, measures=measures, words=words)
