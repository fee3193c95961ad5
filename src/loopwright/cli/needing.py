"""Tells whether there is enough yarn, section by section: what the verb ``need`` does."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

import typer
from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from loopwright.cli.show import console, show_answer, table
from loopwright.need import Tail
from loopwright.season import GarmentPlan, RolePlanned, Season, plan
from loopwright.season.remnant_report import remnant_report, tails_of
from loopwright.season.remnant_words import read_remnant_g, remnant_lines
from loopwright.season.section_table import SectionTable, section_table
from loopwright.season.wording import Wording
from loopwright.units import BadInput, Reader

__all__ = ["Remnant", "tell_need"]


@dataclass(frozen=True, slots=True)
class Remnant:
    """What is asked about a remnant, as a person writes it."""

    mass: str
    section: str | None
    row: int
    role: str | None
    then: str | None


def tell_need(season: Season, key: str | None, reader: Reader, asked: Remnant | None, *, as_json: bool) -> None:
    """Print what one garment or all of them take, section by section, or what a remnant can still knit.

    :raises BadInput: there is no such garment, section or role, or the remnant cannot be read.
    :raises typer.Exit: with code 1 where yarn is short, or a remnant does not finish its section.
    """
    wording = Wording(reader, season.today.year)
    if asked is not None:
        _tell_remnant(season, key, asked, wording, as_json=as_json)
        return
    if key is not None and key not in season.garment_by_key:
        raise BadInput(found=f"the garment '{key}'", wanted=f"one of {', '.join(season.garment_by_key)}")
    planned = [one for one in plan(season, reader).garments if key in (None, one.key)]
    if as_json:
        typer.echo(json.dumps([_as_json(season, one) for one in planned], indent=1, ensure_ascii=False))
    else:
        out = console()
        for one in planned:
            _show(out, one, tails_of(season, one.key), wording, in_full=key is not None)
    if any(one.is_open and _is_short(one) for one in planned):
        raise typer.Exit(1)


def _is_short(garment: GarmentPlan) -> bool:
    return garment.answer("yarn").tone == "no" or any(role.p_enough < role.sureness for role in garment.roles)


def _as_json(season: Season, garment: GarmentPlan) -> dict[str, Any]:
    return {
        "garment": garment.key,
        "sentence": garment.answer("yarn").sentence,
        "roles": [role.model_dump(mode="json") for role in garment.roles],
        "sections": [one.model_dump(mode="json") for one in garment.sections],
        "tails": [one.model_dump(mode="json") for one in tails_of(season, garment.key)],
    }


def _show(out: Console, garment: GarmentPlan, tails: Iterable[Tail], wording: Wording, *, in_full: bool) -> None:
    out.print()
    out.rule(Text.assemble((garment.name, "bold"), f", {garment.construction}"), align="left", characters="─")
    show_answer(out, garment.answer("yarn"))
    told = section_table(garment, tails, wording)
    if told.rows:
        _show_rows(out, told)
    else:
        out.print(f"  Not by section: {garment.answer('draft').sentence}")
    for tail in told.tails:
        out.print(f"  {tail}")
    if in_full:
        _show_working(out, garment.roles, wording)


def _show_rows(out: Console, told: SectionTable) -> None:
    made = table("section", *told.roles, "mass", numbers=(*told.roles, "mass"))
    for row in told.rows:
        made.add_row(row.name, *row.metres, row.mass)
    out.print(Padding(made, (1, 0, 0, 2), expand=False))
    if told.note:
        out.print(f"  {told.note}")


def _show_working(out: Console, roles: Iterable[RolePlanned], wording: Wording) -> None:
    for role in roles:
        made = table(f"working for {role.role}, {role.yarn_name}", "", "", numbers=("",))
        for step in role.need_m.steps:
            made.add_row(step.says, step.working, wording.step(step))
        out.print(Padding(made, (1, 0, 0, 2), expand=False))


def _tell_remnant(season: Season, key: str | None, asked: Remnant, wording: Wording, *, as_json: bool) -> None:
    if key is None or asked.section is None:
        raise BadInput(
            found="a remnant for no garment or no section",
            wanted='the key of a garment and --from with a section, such as --from "sleeve"',
            place="--remnant",
        )
    report = remnant_report(
        season,
        key,
        asked.section,
        read_remnant_g(asked.mass, "--remnant"),
        done=asked.row,
        role=asked.role,
        then_g=None if asked.then is None else read_remnant_g(asked.then, "--then"),
    )
    if as_json:
        typer.echo(report.model_dump_json(indent=1))
    else:
        for line in remnant_lines(report, wording):
            console().print(Text(line))
    finishes = report.p_finish >= report.sureness or report.change_after is not None
    if not finishes:
        raise typer.Exit(1)
