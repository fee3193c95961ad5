"""The command with its verbs, and how errors of the user are told."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from typing import Annotated, NoReturn

import typer

from loopwright import __version__
from loopwright.cli import (
    allot,
    chart,
    colour,
    cupboard,
    demo,
    draft,
    fit,
    gauge,
    load,
    need,
    photo,
    picture,
    plan,
    save,
    schema,
    seasons,
    serve,
    sizes,
    swap,
    undo,
)

__all__ = ["app", "main"]

app = typer.Typer(
    name="loopwright",
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
    epilog="Exit codes: 0 done, 1 the answer is no, 2 the input is at fault; nothing is written then.",
)

for verb in (
    plan.plan,
    demo.demo,
    fit.fit,
    gauge.gauge,
    draft.draft,
    need.need,
    allot.allot,
    sizes.sizes,
    colour.colour,
    photo.photo,
    picture.picture,
    chart.chart,
    cupboard.cupboard,
    swap.swap,
    serve.serve,
    load.load,
    save.save,
    seasons.seasons,
    undo.undo,
    undo.redo,
):
    app.command()(verb)
app.command()(schema.schema)


def _tell_version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"loopwright {__version__}")
        raise typer.Exit


@app.callback()
def loopwright(
    version: Annotated[
        bool, typer.Option("--version", callback=_tell_version, is_eager=True, help="Say the version.")
    ] = False,
) -> None:
    """Plan and make a season of hand-knitted garments, with the working shown."""


def main(arguments: Sequence[str] | None = None) -> NoReturn:
    """Run the command line and end the process with its exit code.

    :param arguments: left out, those that the process was started with.
    """
    try:
        app(arguments)
    except _user_errors() as error:
        for line in str(error).splitlines():
            typer.echo(line, err=True)
        sys.exit(2)
    sys.exit(0)


def _user_errors() -> tuple[type[Exception], ...]:
    """Give the errors that are told in words alone. They are imported only once something was raised."""
    from loopwright.units.errors import LoopwrightError

    if "django.db" not in sys.modules:
        return (LoopwrightError,)
    from django.db import DatabaseError

    return (LoopwrightError, DatabaseError)
