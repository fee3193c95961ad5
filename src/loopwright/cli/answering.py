"""Plans a season and tells the plan: what ``plan`` and ``demo`` do."""

from __future__ import annotations

from pathlib import Path

import typer

from loopwright.cli.shortfalls import shortfalls
from loopwright.cli.show import show_plan
from loopwright.documents import season_report
from loopwright.season import Season, SeasonPlan, plan
from loopwright.store.keys import key_from_name
from loopwright.units import BadInput, Measures, Reader, Words

__all__ = ["answer"]


def answer(
    season: Season,
    *,
    as_json: bool,
    report: Path | None,
    measures: Measures | None,
    words: Words | None,
    check: bool,
) -> None:
    """Plan a season and print the plan.

    :param report: folder to write the report into.
    :raises typer.Exit: with code 1 where ``check`` is wanted and something falls short.
    :raises BadInput: the report cannot be written; nothing is printed then.
    """
    reader = Reader(measures=measures or season.measures, words=words or season.words)
    planned = plan(season, reader)
    written = _write_report(season, planned, reader, report) if report is not None else None
    if as_json:
        typer.echo(planned.model_dump_json(indent=2))
    else:
        show_plan(planned, reader)
    if written is not None:
        typer.echo(f"Report: {written}", err=True)
    missing = shortfalls(planned) if check else ()
    for line in missing:
        typer.echo(line, err=True)
    if missing:
        raise typer.Exit(1)


def _write_report(season: Season, planned: SeasonPlan, reader: Reader, folder: Path) -> Path:
    path = folder / f"{key_from_name(season.name)}.html"
    text = season_report(season, planned, reader)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        raise BadInput(reason, "a folder that can be written to", place=str(path)) from error
    return path
