"""Tells which lot knits what: what the verb ``allot`` does."""

from __future__ import annotations

import ctypes
import json
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import asdict
from typing import Any

import typer
from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from loopwright.allotment import Proof
from loopwright.cli.show import console, show_answer, table
from loopwright.season import GarmentPlan, Season, plan
from loopwright.season.allot_answer import allot_answer, lot_words
from loopwright.season.allotted import Allotted, allotted
from loopwright.season.wording import Wording
from loopwright.units import BadInput, Reader, write_percent, write_share

__all__ = ["tell_allotment", "without_solver_output"]


def tell_allotment(season: Season, key: str | None, reader: Reader, *, as_json: bool) -> None:
    """Print which lots knit one garment, or how all garments still to be made share the cupboard.

    :raises BadInput: there is no such garment.
    :raises typer.Exit: with code 1 where a section is left uncovered, or nothing is known of a garment.
    """
    if key is not None and key not in season.garment_by_key:
        raise BadInput(found=f"the garment '{key}'", wanted=f"one of {', '.join(season.garment_by_key)}")
    planned = plan(season, reader)
    chosen = [one for one in planned.garments if key == one.key or (key is None and one.is_open)]
    with without_solver_output():
        found = allotted(season, planned, key)
    if as_json:
        typer.echo(json.dumps(_as_json(found), indent=1, ensure_ascii=False))
    else:
        _show(found, chosen, Wording(reader, season.today.year))
    known = {one.garment for one in found.problem.sections}
    if found.allotment.uncovered or any(one.is_open and one.key not in known for one in chosen):
        raise typer.Exit(1)


@contextmanager
def without_solver_output() -> Iterator[None]:
    """Keep off standard output the line that HiGHS writes there by itself, past Python, when it mends a solution."""
    sys.stdout.flush()
    try:
        kept = os.dup(1)
    except OSError:  # there is no standard output
        yield
        return
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    try:
        yield
    finally:
        ctypes.CDLL(None if os.name == "posix" else "ucrtbase").fflush(None)
        os.dup2(kept, 1)
        os.close(kept)
        os.close(nowhere)


def _as_json(found: Allotted) -> dict[str, Any]:
    sections = {one.key: one for one in found.problem.sections}
    told = found.allotment
    return {
        "levels": asdict(told.levels),
        "proof": asdict(told.proof),
        "knits": [
            {
                "garment": sections[one.section].garment,
                "role": sections[one.section].role,
                "section": sections[one.section].name,
                "lots": one.lots,
                "share": round(one.share, 4),
                "length_m": round(one.length_m, 2),
                "changes_after_row": found.change_rows.get(one.section, (None,))[0],
            }
            for one in told.portions
        ],
        "lots": [{**asdict(one), "left_m": round(one.left_m, 2)} for one in told.uses],
        "changes": [{**asdict(one), "note": one.note} for one in told.changes],
        "uncovered": list(told.uncovered),
        "short": [
            {**asdict(one), "covered_when_alternating": (one.garment, one.role) in found.alternating}
            for one in told.lacks
        ],
        "hidden": [asdict(one) for one in found.hidden],
    }


def _show(found: Allotted, chosen: list[GarmentPlan], wording: Wording) -> None:
    out = console()
    for garment in chosen:
        out.print()
        out.rule(Text.assemble((garment.name, "bold"), f", {garment.construction}"), align="left", characters="─")
        show_answer(out, allot_answer(found, garment.key, wording))
        _show_portions(out, found, garment, wording)
    _show_lots(out, found, wording)
    out.print()
    out.print(_proof_words(found.allotment.proof))


def _show_portions(out: Console, found: Allotted, garment: GarmentPlan, wording: Wording) -> None:
    sections = {one.key: one for one in found.problem.sections if one.garment == garment.key}
    of_role: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    metres: dict[tuple[str, tuple[str, ...]], float] = {}
    for one in found.allotment.portions:
        if one.section not in sections:
            continue
        section = sections[one.section]
        row = section.role, one.lots
        share = "" if one.share == 1 else f" ({write_percent(one.share)})"
        of_role.setdefault(row, []).append(f"{section.name}{share}")
        metres[row] = metres.get(row, 0.0) + one.length_m
    if not of_role:
        return
    in_role: dict[str, int] = {}
    for section in sections.values():
        in_role[section.role] = in_role.get(section.role, 0) + 1
    made = table("role", "lot", "knits", "yarn", numbers=("yarn",))
    for (role, lots), names in of_role.items():
        knits = (
            "all of it" if len(names) == in_role[role] and not any("%" in name for name in names) else "; ".join(names)
        )
        made.add_row(Text(role), Text(lot_words(lots)), Text(knits), wording.yarn(metres[role, lots]))
    out.print()
    out.print(Padding(made, (0, 0, 0, 2), expand=False))


def _show_lots(out: Console, found: Allotted, wording: Wording) -> None:
    if not found.allotment.uses:
        return
    made = table("lot", "used", "put-ups opened", "left in them", "sure", numbers=("used", "left in them", "sure"))
    for use in found.allotment.uses:
        opened = ", ".join(wording.yarn(metres) for metres in use.put_ups)
        if len(set(use.put_ups)) == 1 and len(use.put_ups) > 1:
            opened = f"{len(use.put_ups)} × {wording.yarn(use.put_ups[0])}"
        made.add_row(
            Text(lot_words(use.lots)),
            wording.yarn(use.used_m),
            Text(opened),
            wording.yarn(use.left_m),
            write_share(use.p_enough),
        )
    out.print()
    out.print("The lots", style="bold")
    out.print(Padding(made, (0, 0, 0, 2), expand=False))


def _proof_words(proof: Proof) -> str:
    if proof.status != "proven":
        return (
            f"The best that was found in time; a better one could gain {proof.gap:.3g} in the first level not proven."
        )
    return "Proven: no allotment is better by the order of preferences."
