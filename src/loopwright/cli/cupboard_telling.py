"""Tells what is in the cupboard, writes it as a table, and takes a table in: what the verb ``cupboard`` does."""

from __future__ import annotations

import json
from collections.abc import Container, Mapping, Sequence
from pathlib import Path

import typer
from pydantic import ValidationError
from rich.text import Text

from loopwright.cli.show import console, table
from loopwright.cli.writing import format_for, write_bytes, write_file
from loopwright.files import FileFault, SeasonFileFaults, faults_of, write_season_text
from loopwright.files.cupboard_table import (
    COMPARED,
    MOST_BYTES,
    Choice,
    Grid,
    TakenIn,
    cupboard_rows,
    entries_to_keep,
    meaning_of,
    read_table,
    take_in,
    understand,
    write_csv,
    write_xlsx,
)
from loopwright.records import FROM_FILE
from loopwright.season import Season, plan
from loopwright.season.change import Entries, tables_with_entries
from loopwright.season.cupboard_report import LotReport, cupboard_report
from loopwright.season.cupboard_search import find_lots
from loopwright.season.wording import Wording
from loopwright.store.keys import free_key, key_from_name
from loopwright.units import BadInput, Reader, write_mass_doubt

__all__ = ["export_cupboard", "import_table", "tell_cupboard"]


def tell_cupboard(season: Season, search: str, reader: Reader, *, as_json: bool) -> None:
    """Print the lots that a search finds.

    :raises typer.Exit: with code 1 where it finds none.
    """
    reports = _reports(season, search)
    if as_json:
        typer.echo(json.dumps([_plain(report) for report in reports], indent=2, ensure_ascii=False))
    else:
        _show(season, reports, search, Wording(reader, season.today.year))
    if search and not reports:
        raise typer.Exit(1)


def _reports(season: Season, search: str) -> tuple[LotReport, ...]:
    return cupboard_report(season, plan(season), find_lots(season, search))


def _plain(report: LotReport) -> Mapping[str, object]:
    return report.model_dump(mode="json") | {"reserved_m": report.reserved_m, "free_m": report.free_m}


def _show(season: Season, reports: Sequence[LotReport], search: str, wording: Wording) -> None:
    out = console()
    if not reports:
        out.print("No lot has all of these words." if search else "The cupboard is empty.")
        return
    length = "metres" if wording.reader.measures == "metric" else "yards"
    lines = table("yarn", wording.word("colour"), "dye lot", "mass", length, "reserved for", "free", numbers=["free"])
    for report in reports:
        kept = ", ".join(dict.fromkeys(one.name for one in report.reserved))
        lines.add_row(
            *(Text(text) for text in (report.yarn.name, report.lot.colour, report.lot.dye_lot)),
            write_mass_doubt(report.mass_g.mean, report.mass_g.sd, wording.reader),
            wording.estimate(report.length_m),
            Text(kept or "–"),
            wording.yarn(report.free_m) if report.free_m >= report.length_m.sd else "–",
        )
    out.print(lines)
    of_all = f" of {len(season.cupboard)}" if search else ""
    out.print(f"{len(reports)}{of_all} lots; ± one standard deviation.")


def export_cupboard(season: Season, search: str, path: Path, *, replace: bool) -> None:
    """Write the lots that a search finds as a table.

    :raises BadInput: the name ends otherwise, a file is there, or the place cannot be written to.
    """
    ending = path.suffix.lower()
    if ending not in {".csv", ".xlsx"}:
        raise BadInput(path.name, "a name that ends in .csv or .xlsx", place=str(path))
    reports = _reports(season, search)
    rows = cupboard_rows(reports)
    write_bytes(path, write_csv(rows) if ending == ".csv" else write_xlsx(rows, "Cupboard"), replace=replace)
    typer.echo(f"Written: {path}, {len(reports)} lots")


def import_table(
    season: Season,
    path: Path,
    said: Sequence[str],
    there: Choice,
    write: Path | None,
    reader: Reader,
    *,
    replace: bool,
    as_json: bool,
) -> None:
    """Say what taking in a table would do, and do it where a season is to be written.

    :param said: what columns mean, as ``heading=meaning``.
    :raises SeasonFileFaults: with every fault of the table, each with its line and column; nothing is written.
    """
    ending = None if write is None else format_for(write, None)
    grid = _read(path)
    columns = understand(grid, _meanings(grid, said))
    faults = [*columns.faults, *(_unclear(grid, column.heading) for column in columns.unclear)]
    if faults:
        raise SeasonFileFaults(faults)
    taken = take_in(grid, columns, season, _make_key)
    if taken.faults:
        raise SeasonFileFaults(taken.faults)
    _tell_taking(taken, there, as_json=as_json)
    if write is None or ending is None:
        if not as_json:
            typer.echo("Nothing is written without --write SEASON.")
        return
    added, changed = entries_to_keep(taken, there)
    write_file(write, write_season_text(_with(season, added, changed), ending), ending, replace=replace)
    typer.echo(f"Written: {write}", err=as_json)


def _read(path: Path) -> Grid:
    try:
        with path.open("rb") as file:
            content = file.read(MOST_BYTES + 1)
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        raise BadInput(reason, "a table that can be read", place=str(path)) from error
    return read_table(content, path.name)


def _meanings(grid: Grid, said: Sequence[str]) -> dict[int, str]:
    places = {heading.casefold(): place for place, heading in enumerate(grid.headings)}
    meanings = {}
    for pair in said:
        heading, _, meaning = pair.rpartition("=")
        place = places.get(heading.strip().casefold())
        if place is None:
            raise BadInput(pair, f"a heading of the table ({', '.join(grid.headings)}), then =", place="--column")
        try:
            meanings[place] = meaning_of(meaning)
        except KeyError:
            raise BadInput(
                pair, "after = what it means, such as colour, weighed or nothing", place="--column"
            ) from None
    return meanings


def _unclear(grid: Grid, heading: str) -> FileFault:
    return FileFault.make(
        f"the column “{heading}”",
        "a heading in plain words, such as yarn, colour, dye lot, balls or weighed",
        file=grid.name,
        line=grid.line,
        hint=f'say --column "{heading}=colour", or "{heading}=nothing" to leave it aside',
    )


def _make_key(name: str, taken: Container[str]) -> str:
    return free_key(key_from_name(name), taken)


def _tell_taking(taken: TakenIn, there: Choice, *, as_json: bool) -> None:
    if as_json:
        said = {
            "added": [{"line": one.line, "key": one.key, **one.fields} for one in taken.added],
            "yarns": {key: dict(fields) for key, fields in taken.yarns.items()},
            "there": [{"line": one.line, "key": one.key, "differs": one.differs} for one in taken.matched],
        }
        typer.echo(json.dumps(said, indent=2, ensure_ascii=False))
        return
    out = console()
    out.print(f"New lots: {len(taken.added)}; new yarns: {len(taken.yarns)}; there already: {len(taken.matched)}.")
    for one in taken.added:
        out.print(Text(f"  line {one.line}: {one.yarn_name}, {one.fields.get('colour', '')}: new"))
    done = {"leave": "left as it is", "update": "given these amounts", "add": "added again"}[there]
    for same in taken.differing:
        says = "; ".join(
            f"{COMPARED[name]} here {here or '–'}, in the table {new or '–'}" for name, here, new in same.differs
        )
        out.print(Text(f"  line {same.line}: {same.key} is there: {says}; {done}"))


def _with(season: Season, added: Entries, changed: Entries) -> Season:
    tables = tables_with_entries(season, added, changed)
    try:
        return Season.model_validate(tables, context=FROM_FILE)
    except ValidationError as error:
        raise SeasonFileFaults(faults_of(error, tables)) from error
