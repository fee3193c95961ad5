"""The verb ``demo``."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from loopwright.cli.options import AsJson, Check, MeasuresOption, ReportFolder, WordsOption

__all__ = ["demo"]


def demo(
    as_json: AsJson = False,
    report: ReportFolder = None,
    measures: MeasuresOption = None,
    words: WordsOption = None,
    check: Check = False,
    write: Annotated[
        Path | None,
        typer.Option("--write", metavar="FILE", help="Only write the season file, to begin your own from."),
    ] = None,
) -> None:
    """Plan the invented season that comes with the program."""
    from loopwright.cli.answering import answer
    from loopwright.cli.writing import write_file
    from loopwright.files import demo_text, read_season_text

    if write is not None:
        write_file(write, demo_text(), "toml")
        typer.echo(f"Written: {write}. Plan it with: loopwright plan {write}")
        return
    season = read_season_text(demo_text(), name="the demo season", format="toml")
    answer(season, as_json=as_json, report=report, measures=measures, words=words, check=check)
