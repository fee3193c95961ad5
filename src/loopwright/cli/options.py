"""Arguments and options that several verbs have. Each option can also be set by the variable that its help names."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

__all__ = ["AsJson", "Check", "Data", "KeyArgument", "MeasuresOption", "ReportFolder", "SeasonFile", "WordsOption"]

SeasonFile = Annotated[Path, typer.Argument(metavar="FILE", help="A season file, .toml or .json.", show_default=False)]
KeyArgument = Annotated[str, typer.Argument(metavar="KEY", help="The key of a kept season.", show_default=False)]
AsJson = Annotated[bool, typer.Option("--json", envvar="LOOPWRIGHT_JSON", help="Print JSON, for other programs.")]
ReportFolder = Annotated[
    Path | None,
    typer.Option(
        "--report",
        metavar="DIR",
        envvar="LOOPWRIGHT_REPORT",
        help="Also write a report, one HTML file that stands alone, into this folder.",
    ),
]
MeasuresOption = Annotated[
    Literal["metric", "imperial"] | None,
    typer.Option("--measures", envvar="LOOPWRIGHT_MEASURES", help="Measures to answer in, else the season's."),
]
WordsOption = Annotated[
    Literal["british", "american"] | None,
    typer.Option("--words", envvar="LOOPWRIGHT_WORDS", help="Words of the trade to answer in, else the season's."),
]
Check = Annotated[
    bool,
    typer.Option(
        "--check",
        envvar="LOOPWRIGHT_CHECK",
        help="End with exit code 1 when yarn is short or a date is less than 80 % sure.",
    ),
]
Data = Annotated[
    Path | None,
    typer.Option(
        "--data",
        metavar="DIR",
        envvar="LOOPWRIGHT_DATA",
        help="The folder that seasons are kept in, else the usual one.",
    ),
]
