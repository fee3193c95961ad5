"""The verb ``save``."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

from loopwright.cli.options import Data, KeyArgument

__all__ = ["save"]


def save(
    key: KeyArgument,
    file: Annotated[
        Path | None,
        typer.Argument(metavar="FILE", help="Where to write it; left out, it is printed.", show_default=False),
    ] = None,
    format: Annotated[
        Literal["toml", "json"] | None,
        typer.Option("--format", envvar="LOOPWRIGHT_FORMAT", help="Else what FILE ends in, else toml."),
    ] = None,
    replace: Annotated[
        bool, typer.Option("--replace", help="Put it in the place of a file that is there already.")
    ] = False,
    data: Data = None,
) -> None:
    """Write a kept season as a file.

    As long as nothing was changed it is the very file that was loaded, comments and all; after that a new one.
    """
    from loopwright.cli.writing import format_for, write_file
    from loopwright.web.setup import prepare

    wanted = format_for(file, format) if file is not None else format or "toml"
    prepare(data)
    from loopwright.store.changes import text_of

    text = text_of(key, wanted)
    if file is None:
        typer.echo(text.encode("utf-8"), nl=False)
    else:
        write_file(file, text, wanted, replace=replace)
        typer.echo(f"Written: {file}")
