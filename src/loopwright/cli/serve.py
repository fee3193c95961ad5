"""The verb ``serve``."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from loopwright.cli.options import Data

__all__ = ["serve"]


def serve(
    file: Annotated[
        Path | None,
        typer.Argument(metavar="FILE", help="A season file to load first, .toml or .json.", show_default=False),
    ] = None,
    port: Annotated[
        int,
        typer.Option(
            "--port", min=0, max=65535, envvar="LOOPWRIGHT_PORT", help="If it is taken, the next free one is used."
        ),
    ] = 8765,
    host: Annotated[
        str,
        typer.Option(
            "--host", envvar="LOOPWRIGHT_HOST", help="The address to listen on; 0.0.0.0 for your network too."
        ),
    ] = "127.0.0.1",
    data: Data = None,
    demo: Annotated[
        bool,
        typer.Option("--demo", envvar="LOOPWRIGHT_DEMO", help="Keep the demo season too, if it is not there."),
    ] = False,
) -> None:
    """Open Loopwright in the browser, on this machine."""
    from loopwright.cli.loading import read_source
    from loopwright.cli.server import allow_host, keep_demo, open_server, run

    source = read_source(file) if file is not None else None
    allow_host(host)
    from loopwright.web.setup import prepare

    prepare(data)
    if source is not None:
        source.keep()
    if demo:
        keep_demo()
    run(open_server(host, port), host, port)
