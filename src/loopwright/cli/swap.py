"""The verb ``swap``."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from loopwright.cli.options import AsJson, MeasuresOption, SeasonFile, WordsOption

__all__ = ["swap"]

GarmentArgument = Annotated[str, typer.Argument(metavar="GARMENT", help="The key of the garment.", show_default=False)]
RoleOption = Annotated[str, typer.Option("--role", metavar="ROLE", help="The colour role to knit in something else.")]
CatalogueOption = Annotated[
    Path | None,
    typer.Option(
        "--catalogue",
        metavar="CSV",
        help="Also rank the yarns of this file: a row of headings (name, fibres, length, mass, price), a yarn a row.",
        show_default=False,
    ),
]
HeldOption = Annotated[bool, typer.Option("--held", help="Also try two or three yarns of the cupboard held together.")]
WithoutOption = Annotated[
    list[str] | None,
    typer.Option(
        "--without",
        metavar="FIBRE",
        help="Leave out yarns with this fibre, and those not wholly stated. May be said several times.",
        show_default=False,
    ),
]
TopOption = Annotated[int, typer.Option("--top", metavar="NUMBER", min=1, max=1000, help="How many to show.")]


def swap(
    file: SeasonFile,
    garment: GarmentArgument,
    *,
    role: RoleOption = "main",
    catalogue: CatalogueOption = None,
    held: HeldOption = False,
    without: WithoutOption = None,
    top: TopOption = 10,
    as_json: AsJson = False,
    measures: MeasuresOption = None,
    words: WordsOption = None,
) -> None:
    """Say what else a garment could be knitted in, at the same stitch gauge, side by side with its own yarn.

    Ends with exit code 1 when nothing makes the same fabric, even with care.
    """
    from loopwright.cli.swapping import tell_swap
    from loopwright.files import read_season
    from loopwright.files.catalogue import read_catalogue

    tell_swap(
        read_season(file),
        garment,
        role,
        catalogue=None if catalogue is None else read_catalogue(catalogue),
        held=held,
        without=without or [],
        top=top,
        as_json=as_json,
        measures=measures,
        words=words,
    )
