"""The verb ``picture``."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from loopwright.cli.options import SeasonFile

__all__ = ["picture"]

GarmentArgument = Annotated[str, typer.Argument(metavar="GARMENT", help="The key of one garment.", show_default=False)]
OutOption = Annotated[
    Path, typer.Option("--out", metavar="FILE", help="Where to draw it: .png, .svg, or .html for a page of colourways.")
]
ColourOption = Annotated[
    list[str] | None,
    typer.Option(
        "--colour",
        metavar="ROLE=#RRGGBB",
        help="Another colour for a role than its yarn's; strands held together joined by +. May be given again.",
    ),
]
ColourwayOption = Annotated[
    list[str] | None,
    typer.Option(
        "--colourway",
        metavar='"NAME: ROLE=#RRGGBB, …"',
        help="Draw the front in this colourway; given again, all of them side by side.",
    ),
]
BackOption = Annotated[bool, typer.Option("--back", help="The back, not the front.")]
FabricOption = Annotated[bool, typer.Option("--fabric", help="The fabric from near, with its stitches.")]
EdgesOption = Annotated[
    str | None,
    typer.Option(
        "--edges",
        metavar="ROLE",
        help="The role that ribs and bands are drawn in where the draft does not say, else the second role.",
    ),
]
SizeOption = Annotated[int, typer.Option("--size", metavar="PX", min=64, max=2400, help="Pixels of the longer side.")]


def picture(
    file: SeasonFile,
    garment: GarmentArgument,
    out: OutOption,
    *,
    colour: ColourOption = None,
    back: BackOption = False,
    fabric: FabricOption = False,
    colourway: ColourwayOption = None,
    edges: EdgesOption = None,
    size: SizeOption = 1200,
) -> None:
    """Draw a garment before it is knitted: front or back with every stitch in its colour, over the wearer's outline.

    Colours are those of its yarns where the season gives a likeness, else grey. Judge the yarn itself in daylight.
    """
    from loopwright.cli.picturing import Wished, draw
    from loopwright.files import read_season

    wished = Wished(
        colours=tuple(colour or ()),
        colourways=tuple(colourway or ()),
        face="back" if back else "front",
        fabric=fabric,
        edges=edges,
        size=size,
    )
    draw(read_season(file), garment, wished, out)
