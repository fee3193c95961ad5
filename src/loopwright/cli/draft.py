"""The verb ``draft``."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

from loopwright.cli.options import AsJson, MeasuresOption, SeasonFile, WordsOption

__all__ = ["draft"]

GarmentArgument = Annotated[
    str | None, typer.Argument(metavar="GARMENT", help="The key of one garment, else all of them.")
]
SizesOption = Annotated[
    bool, typer.Option("--sizes", help="Draft every size of the pattern, its counts in a table with a column a size.")
]
BodiesOption = Annotated[
    Literal["women", "children"] | None,
    typer.Option("--bodies", help="The same over a table of bodies, with the garment's own ease."),
]
SchematicOption = Annotated[
    Path | None,
    typer.Option("--schematic", metavar="FILE", help="Also draw its pieces with their measures into this SVG file."),
]


def draft(
    file: SeasonFile,
    garment: GarmentArgument = None,
    as_json: AsJson = False,
    sizes: SizesOption = False,
    bodies: BodiesOption = None,
    schematic: SchematicOption = None,
    measures: MeasuresOption = None,
    words: WordsOption = None,
) -> None:
    """Say what you knit: every piece with its counts, rows and shaping, and how the measures come out.

    With --json every row of every section. Ends with exit code 1 when a garment cannot be drafted.
    """
    from loopwright.cli.drafting import tell_draft, tell_sizes
    from loopwright.files import read_season
    from loopwright.units import Reader

    season = read_season(file)
    reader = Reader(measures=measures or season.measures, words=words or season.words)
    if sizes or bodies is not None:
        tell_sizes(season, garment, bodies, reader, as_json=as_json)
    else:
        tell_draft(season, garment, reader, as_json=as_json, schematic=schematic)
