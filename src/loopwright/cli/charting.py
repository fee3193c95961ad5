"""Tells what a chart holds: what the verb ``chart`` does."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import typer
from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from loopwright.chart import Chart, Fit, chart_csv, fit_chart, laid_out, read_row, row_words
from loopwright.chart.png_form import chart_png
from loopwright.cli.chart_laying import LaidOnGarment, laid_on_garment
from loopwright.cli.chart_source import Source
from loopwright.cli.show import console, show_answer, table
from loopwright.cli.writing import write_bytes, write_text
from loopwright.pictures.chart_view import ChartLook, chart_drawing, shaded
from loopwright.season.cautions import caution
from loopwright.season.chart_answers import catch_words, chart_answers, fit_words
from loopwright.season.chart_report import ChartReport
from loopwright.units import BadInput, write_percent

__all__ = ["Wish", "tell_chart"]

_MOST_ROWS: Final = 60


@dataclass(frozen=True, slots=True)
class Wish:
    """What is to be done with the chart beside telling it."""

    fit: int | None
    in_the_round: bool
    edge: int
    mirror: bool
    svg: Path | None
    png: Path | None
    csv: Path | None
    on_garment: Path | None
    place: str | None


def tell_chart(source: Source, wish: Wish, *, check: bool, as_json: bool) -> None:
    """Print what is known of a chart, and write it in the forms that are wanted.

    :raises BadInput: it cannot be fitted or written.
    :raises typer.Exit: with code 1 where a float is too long or a row has three colours and ``check`` is set.
    """
    report = source.report
    fit, laid = _fit(report.chart, wish), _laid(source, wish)
    if as_json:
        typer.echo(json.dumps(_as_json(source, fit, laid), indent=1, ensure_ascii=False))
    else:
        _show(source, fit, laid)
    _write(report, laid_out(report.chart, fit) if fit else report.chart, source.name, wish)
    if laid is not None and wish.on_garment is not None:
        laid.draw(wish.on_garment)
    if check and (report.long or report.many):
        raise typer.Exit(1)


def _fit(chart: Chart, wish: Wish) -> Fit | None:
    if wish.fit is None:
        return None
    try:
        in_the_round = wish.in_the_round or chart.in_the_round
        if in_the_round and (wish.edge or wish.mirror):
            raise BadInput(found="an edge or a mirror in the round", wanted="them flat only, or neither")
        return fit_chart(chart, wish.fit, in_the_round=in_the_round, edge=wish.edge, mirror=wish.mirror)
    except BadInput as fault:
        raise fault.at("--fit") from None


def _laid(source: Source, wish: Wish) -> LaidOnGarment | None:
    if wish.on_garment is None:
        if wish.place is not None:
            raise BadInput(found=wish.place, wanted="--on-garment with a file beside it", place="--place")
        return None
    return laid_on_garment(source.season, source.key, wish.place, wish.on_garment, source.wording)


def _write(report: ChartReport, chart: Chart, name: str, wish: Wish) -> None:
    if wish.csv is not None:
        write_text(wish.csv, chart_csv(chart), ".csv")
    if wish.png is not None:
        if wish.png.suffix.lower() != ".png":
            raise BadInput(wish.png.name, "a name that ends in .png", place=str(wish.png))
        write_bytes(wish.png, chart_png(shaded(chart)))
    if wish.svg is not None:
        names = tuple((one.role, one.name) for one in report.roles)
        says = f"{name}: {chart.columns} stitches by {chart.rows} rows"
        write_text(wish.svg, chart_drawing(chart, says, ChartLook(report.ratio, names=names)), ".svg")


# ----------------------------------------------------------------------------------------------------- for people
def _show(source: Source, fit: Fit | None, laid: LaidOnGarment | None) -> None:
    out, report = console(), source.report
    out.rule(Text(source.name, style="bold"), align="left", characters="─")
    if source.picture is not None:
        _show_picture(out, source)
    for answer in chart_answers(report, source.wording):
        show_answer(out, answer)
        if answer.figures:
            made = table("", "")
            for figure in answer.figures:
                made.add_row(figure.label, figure.text)
            made.show_header = False
            out.print(Padding(made, (0, 0, 0, 4), expand=False))
    if fit is not None:
        out.print()
        out.print(Text(f"How does it go into {fit.count} stitches?", style="bold"))
        out.print(Padding(Text(f"{fit_words(fit, source.wording)}."), (0, 0, 0, 2)))
    if laid is not None:
        out.print()
        out.print(Text(f"How does it lie on {laid.on.garment.name}?", style="bold"))
        for line in laid.words:
            out.print(Padding(Text(line), (0, 0, 0, 2)))
        out.print(Padding(Text(caution("colour").text), (0, 0, 0, 2)))
    _show_rows(out, report.chart)
    if report.for_young_child:
        out.print()
        out.print(Text(caution("floats").text))


def _show_picture(out: Console, source: Source) -> None:
    picture = source.picture
    assert picture is not None
    shades = ", ".join(f"{role.name} {role.shade}" for role in picture.chart.roles)
    out.print(Padding(Text(f"Colours: {shades}."), (1, 0, 0, 2)))
    wider = "wider" if picture.proportion_error > 0 else "narrower"
    off = write_percent(abs(picture.proportion_error), digits=1)
    out.print(
        Padding(
            Text(
                f"Cells are off by ΔE00 {picture.delta_e:.1f} on average, {picture.worst_delta_e:.1f} at most; "
                f"since rows are whole it comes out {off} {wider} than the picture."
            ),
            (0, 0, 0, 2),
        )
    )
    out.print(Padding(Text(caution("colour").text), (0, 0, 0, 2)))


def _show_rows(out: Console, chart: Chart) -> None:
    """Print every row in working order, the first one first; of a large chart the first ones."""
    out.print()
    out.print(Text("What does each row say?", style="bold"))
    made = table("", "", "")
    made.show_header = False
    many = len(chart.roles) > 1
    for row in range(min(chart.rows, _MOST_ROWS)):
        read = read_row(chart, row)
        made.add_row(f"{read.number}", "←" if read.leftwards else "→", row_words(read, with_roles=many))
    out.print(Padding(made, (0, 0, 0, 2), expand=False))
    if chart.rows > _MOST_ROWS:
        out.print(Padding(Text(f"The first {_MOST_ROWS} of {chart.rows}; all of them are in the CSV."), (0, 0, 0, 2)))


# ---------------------------------------------------------------------------------------------- for other programs
def _as_json(source: Source, fit: Fit | None, laid: LaidOnGarment | None) -> dict[str, Any]:
    report, chart = source.report, source.report.chart
    columns = chart.columns
    return {
        "name": source.name,
        "stitches": columns,
        "rows": chart.rows,
        "worked": "in the round" if chart.in_the_round else "flat",
        "gauge": {
            "stitches_per_10cm": report.gauge.stitches_per_10cm,
            "rows_per_10cm": report.gauge.rows_or_usual_per_10cm,
            "from": report.gauge_from,
        },
        "width_cm": round(report.gauge.width_cm(columns), 3),
        "height_cm": round(chart.rows / report.gauge.rows_or_usual_per_10cm * 10, 3),
        "roles": [
            {
                "role": one.role,
                "shade": role.shade,
                "stitches": one.stitches,
                "float_stitches": one.float_stitches,
                "metres": round(one.metres, 4),
                "mass_g": None if one.mass_g is None else round(one.mass_g, 3),
            }
            for one, role in zip(report.roles, chart.roles, strict=True)
        ],
        "more_than_two_colours": [{"row": row, "colours": number} for row, number in report.many],
        "longest_float": report.longest,
        "float_limit": report.limit,
        "long_floats": [
            {
                "row": one.row,
                "role": one.role,
                "stitches": one.stitches,
                "length_cm": round(one.length_cm, 3),
                "catch_at_stitch": [columns - column for column in one.catch_columns],
                "says": catch_words(one, columns, source.wording),
            }
            for one in report.long
        ],
        "areas": dict(report.areas),
        "count_faults": [
            {"row": one.number, "works": one.taken, "row_below_leaves": one.left_below} for one in report.faults
        ],
        "fit": None if fit is None else _fit_json(fit),
        "on_garment": None if laid is None else laid.as_json(),
        "picture": None
        if source.picture is None
        else {
            "delta_e_2000": round(source.picture.delta_e, 4),
            "worst_delta_e_2000": round(source.picture.worst_delta_e, 4),
            "proportion_error": round(source.picture.proportion_error, 6),
        },
        "answers": [
            {"key": one.key, "question": one.question, "sentence": one.sentence}
            for one in chart_answers(report, source.wording)
        ],
    }


def _fit_json(fit: Fit) -> dict[str, Any]:
    return {
        "count": fit.count,
        "repeat": fit.width,
        "in_the_round": fit.in_the_round,
        "exact": fit.exact,
        "whole_repeats": fit.whole,
        "cut_stitches": fit.cut,
        "plain_stitches": fit.plain,
        "nearest_fewer": fit.fewer,
        "nearest_more": fit.more,
        "front_and_back_centred": fit.halves_match,
        "axis_off_stitches": fit.axis_off,
        "columns": [int(column) + 1 if column >= 0 else None for column in fit.columns],
    }
