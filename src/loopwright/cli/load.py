"""The verb ``load``."""

from __future__ import annotations

from typing import Annotated

import typer

from loopwright.cli.options import Data, SeasonFile

__all__ = ["load"]


def load(
    file: SeasonFile,
    data: Data = None,
    as_key: Annotated[
        str | None,
        typer.Option("--as", metavar="KEY", help="The key to keep it under, else one made from its name."),
    ] = None,
) -> None:
    """Keep a season from its file.

    A season of the same name gives way; undo brings it back.
    """
    from loopwright.cli.loading import read_source
    from loopwright.web.setup import prepare

    source = read_source(file)
    prepare(data)
    key = source.keep(as_key)
    typer.echo(f"Kept as {key}.")
