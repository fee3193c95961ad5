"""The verbs ``undo`` and ``redo``."""

from __future__ import annotations

import typer

from loopwright.cli.options import Data, KeyArgument

__all__ = ["redo", "undo"]


def undo(key: KeyArgument, data: Data = None) -> None:
    """Take the last change of a season back.

    Loading over it and putting it away are changes too.
    """
    from loopwright.web.setup import prepare

    prepare(data)
    from loopwright.store import changes

    try:
        typer.echo(f"Undone: {changes.undo(key)}")
    except changes.NothingToUndo as error:
        typer.echo(str(error), err=True)
        raise typer.Exit(1) from error


def redo(key: KeyArgument, data: Data = None) -> None:
    """Make the change that was undone last again."""
    from loopwright.web.setup import prepare

    prepare(data)
    from loopwright.store import changes

    try:
        typer.echo(f"Done again: {changes.redo(key)}")
    except changes.NothingToRedo as error:
        typer.echo(str(error), err=True)
        raise typer.Exit(1) from error
