"""Tells what swatches say: what the verb ``gauge`` does."""

from __future__ import annotations

import json
from collections.abc import Sequence

import typer
from rich.console import Console
from rich.text import Text

from loopwright.cli.show import console, show_answer, table
from loopwright.fabric import NeedleAdvice
from loopwright.fit.ways_out import read_repeat
from loopwright.season import Season
from loopwright.season.swatch_answers import garment_answers_on, gauge_text, needle_text, swatch_answers
from loopwright.season.swatch_report import SwatchReport, swatch_report
from loopwright.season.wording import Wording
from loopwright.units import Reader, read_length_cm

__all__ = ["tell_gauge"]


def tell_gauge(
    season: Season, key: str | None, reader: Reader, *, as_json: bool, repeat: str | None, length: str | None
) -> None:
    """Print what one swatch says, or a table of all of them.

    :param key: of one swatch; None for all.
    :param repeat, length: as a person writes them.
    :raises BadInput: there is no such swatch, or the repeat or the length cannot be read.
    :raises typer.Exit: with code 1 where a count is hard to believe.
    """
    asked = None if repeat is None else read_repeat(repeat)
    length_cm = None if length is None else read_length_cm(length)
    keys = tuple(season.swatch_by_key) if key is None else (key,)
    reports = [swatch_report(season, one, asked, length_cm) for one in keys]
    if as_json:
        typer.echo(json.dumps([one.model_dump(mode="json") for one in reports], indent=2, ensure_ascii=False))
    else:
        _show(reports, Wording(reader, season.today.year), in_full=key is not None)
    if any(report.doubts for report in reports):
        raise typer.Exit(1)


def _show(reports: Sequence[SwatchReport], wording: Wording, *, in_full: bool) -> None:
    out = console()
    if not reports:
        out.print("There is no swatch yet.")
        return
    if in_full:
        for report in reports:
            _show_one(out, report, wording)
        return
    lines = table("swatch", "fabric", "needle", f"{wording.word('tension')}, sts × rows", "wash, %", "next needle")
    for report in reports:
        mm = "" if report.needle_mm is None else f"{report.needle_mm:g} mm"
        lines.add_row(
            report.key, wording.fabric(report.fabric), mm, _tension(report, wording), _wash(report), _next(report)
        )
    out.print(lines)
    window = "10 cm" if wording.reader.measures == "metric" else "4 in"
    out.print(f"Counts to {window}, ± one standard error; wash in width × length, + grows.")
    out.print("One swatch in full: loopwright gauge FILE SWATCH")
    for report in reports:
        for doubt in report.doubts:
            out.print(Text(f"{report.key}: hard to believe: {doubt.says}."))


def _tension(report: SwatchReport, wording: Wording) -> str:
    """Give the gauge without its units, which stand in the heading and below the table."""
    text = gauge_text(report.planned, wording).rpartition(" to ")[0].replace(" ± ", "±")
    return text.replace(" sts", "").replace(" rows", "")


def _wash(report: SwatchReport) -> str:
    if report.wash is None:
        return "counted once" if report.is_washed else "not washed"
    length = report.wash.length
    return f"{report.wash.width.percent:+.1f}{'' if length is None else f' × {length.percent:+.1f}'}"


def _next(report: SwatchReport) -> str:
    """Give the next needle for each garment, once where they agree."""
    said = dict.fromkeys(_advice(garment.needle) for garment in report.garments)
    return ", ".join(said) or "no garment"


def _advice(advice: NeedleAdvice) -> str:
    if advice.direction == "hold":
        return "hold"
    return advice.direction if advice.needle is None else f"{advice.needle.mm:g} mm"


def _show_one(out: Console, report: SwatchReport, wording: Wording) -> None:
    needle = "" if report.needle_mm is None else f", {needle_text(report.needle_mm, report.needle)}"
    out.print(Text(report.key, style="bold"))
    out.print(f"{wording.fabric(report.fabric)}, {' with '.join(report.yarns)}{needle}")
    for answer in swatch_answers(report, wording):
        show_answer(out, answer)
    for garment in report.garments:
        out.print()
        out.rule(Text(garment.name, style="bold"), align="left", characters="─")
        for answer in garment_answers_on(garment, wording):
            show_answer(out, answer)
