"""The verb ``seasons``."""

from __future__ import annotations

import typer

from loopwright.cli.options import AsJson, Data

__all__ = ["seasons"]


def seasons(as_json: AsJson = False, data: Data = None) -> None:
    """List the seasons that are kept."""
    import json

    from loopwright.web.setup import prepare

    prepare(data)
    from loopwright.store.changes import season_list

    kept = season_list()
    if as_json:
        typer.echo(json.dumps([one.model_dump(mode="json") for one in kept], indent=2, ensure_ascii=False))
    elif not kept:
        typer.echo("No season is kept yet. Begin with: loopwright demo --write winter.toml")
    else:
        from rich.text import Text

        from loopwright.cli.show import console, table

        lines = table("key", "name", "planned as of", "garments", numbers=["garments"])
        for one in kept:
            lines.add_row(one.key, Text(one.name), str(one.today), str(one.garments))
        console().print(lines)
