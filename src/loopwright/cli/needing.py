"""Tells whether there is enough yarn, section by section: what the verb ``need`` does."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

import typer
from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from loopwright.cli.show import console, show_answer, table
from loopwright.need import SectionNeed, Tail
from loopwright.season import GarmentPlan, RolePlanned, Season, plan
from loopwright.season.remnant_report import remnant_report, tails_of
from loopwright.season.remnant_words import remnant_lines
from loopwright.season.wording import Wording
from loopwright.uncertainty import Estimate, Origin
from loopwright.units import BadInput, Reader, read_mass_g

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
    if not garment.sections:
        out.print(f"  Not by section: {garment.answer('draft').sentence}")
    else:
        _show_sections(out, garment, wording)
    for tail in tails:
        of = tail.section if tail.piece in tail.section else f"{tail.piece}, {tail.section}"
        each = f", {tail.made} times" if tail.made > 1 else ""
        out.print(
            f"  {wording.word('cast on').capitalize()} {tail.stitches:,} stitches for {of}{each}: "
            f"a long tail of {wording.cm(tail.tail_cm)}."
        )
    if in_full:
        _show_working(out, garment.roles, wording)


def _show_sections(out: Console, garment: GarmentPlan, wording: Wording) -> None:
    roles = list(dict.fromkeys(one.role for one in garment.sections))
    by_place: dict[tuple[str, str], dict[str, SectionNeed]] = {}
    for one in garment.sections:
        by_place.setdefault((one.piece, one.section), {})[one.role] = one
    made = table("section", *roles, "mass", numbers=(*roles, "mass"))
    for needs in by_place.values():
        first = next(iter(needs.values()))
        made.add_row(
            first.name + (f" × {first.made}" if first.made > 1 else ""),
            *("" if role not in needs else _metres(needs[role], wording) for role in roles),
            wording.mass(math.fsum(one.mass_g or 0.0 for one in needs.values())),
        )
    out.print(Padding(made, (1, 0, 0, 2), expand=False))
    if len(roles) > 1:
        out.print("  Which rows each role knits is not known: shared out as the pattern's amounts are.")


def _metres(need: SectionNeed, wording: Wording) -> str:
    return wording.estimate(Estimate(mean=need.length_m, sd=need.sd_m, unit="m", origin=Origin.COMPUTED))


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
        _read_mass_g(asked.mass, "--remnant"),
        done=asked.row,
        role=asked.role,
        then_g=None if asked.then is None else _read_mass_g(asked.then, "--then"),
    )
    if as_json:
        typer.echo(report.model_dump_json(indent=1))
    else:
        for line in remnant_lines(report, wording):
            console().print(Text(line))
    finishes = report.p_finish >= report.sureness or report.change_after is not None
    if not finishes:
        raise typer.Exit(1)


def _read_mass_g(text: str, place: str) -> float:
    try:
        mass_g = read_mass_g(text)
    except BadInput as fault:
        raise fault.at(place) from fault
    if mass_g <= 0:
        raise BadInput(found=text, wanted="a mass above nothing, such as 38 g", place=place)
    return mass_g
