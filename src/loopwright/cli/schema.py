"""The verb ``schema``."""

from __future__ import annotations

import typer

__all__ = ["schema"]


def schema() -> None:
    """Print the JSON Schema of a season file.

    Editors and other programs can check a file with it, and help to write one.
    """
    import json

    from loopwright.files import season_schema

    typer.echo(json.dumps(season_schema(), indent=2, ensure_ascii=False))
