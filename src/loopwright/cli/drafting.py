"""Tells what is knitted: what the verb ``draft`` does."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import typer
from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from loopwright.body import SizeTable
from loopwright.cli.show import console, show_answer, table
from loopwright.cli.writing import write_text
from loopwright.documents import schematic_of
from loopwright.documents.sizes_view import sizes_view
from loopwright.garment.draft import plain_draft
from loopwright.garment.grading import count_table
from loopwright.garment.wanted import MEASURE_NAMES
from loopwright.season import GarmentPlan, Season, plan
from loopwright.season.draft_answer import section_words
from loopwright.season.drafted import Drafted
from loopwright.season.grading import Graded, graded
from loopwright.season.remake import draft_of
from loopwright.season.wording import Wording
from loopwright.units import BadInput, Reader

__all__ = ["tell_draft", "tell_sizes"]


def _chosen(season: Season, key: str | None) -> list[str]:
    if key is not None and key not in season.garment_by_key:
        raise BadInput(found=f"the garment '{key}'", wanted=f"one of {', '.join(season.garment_by_key)}")
    return [key] if key is not None else list(season.garment_by_key)


def tell_draft(season: Season, key: str | None, reader: Reader, *, as_json: bool, schematic: Path | None) -> None:
    """Print the draft of one garment or of all.

    :param schematic: where to draw the one garment's pieces.
    :raises BadInput: there is no such garment; a drawing of more than one is asked for, or of one without a draft.
    :raises typer.Exit: with code 1 where a garment cannot be drafted.
    """
    keys = _chosen(season, key)
    if schematic is not None and len(keys) != 1:
        raise BadInput(found="a schematic of several garments", wanted="the key of one garment", place="--schematic")
    planned = [garment for garment in plan(season, reader).garments if garment.key in keys]
    if as_json:
        typer.echo(json.dumps([_as_json(season, garment) for garment in planned], indent=1, ensure_ascii=False))
    else:
        wording = Wording(reader, season.today.year)
        for garment in planned:
            _show(garment, wording)
    if schematic is not None:
        drawing = schematic_of(season, planned[0], Wording(reader))
        if not drawing:
            raise BadInput(
                found=planned[0].answer("draft").sentence, wanted="a garment that can be drafted", place="--schematic"
            )
        write_text(schematic, drawing, ".svg")
    if any(garment.drafted is None for garment in planned):
        raise typer.Exit(1)


def _as_json(season: Season, garment: GarmentPlan) -> dict[str, Any]:
    made = draft_of(season, garment)
    return {
        "garment": garment.key,
        "sentence": garment.answer("draft").sentence,
        "draft": None if made is None else plain_draft(made),
    }


def _show(garment: GarmentPlan, wording: Wording) -> None:
    out = console()
    out.print()
    out.rule(Text.assemble((garment.name, "bold"), f", {garment.construction}"), align="left", characters="─")
    show_answer(out, garment.answer("draft"))
    if garment.drafted is None:
        return
    _show_pieces(out, garment.drafted, wording)
    made = table("measure", "wanted", "drafted", numbers=("wanted", "drafted"))
    for measure in garment.drafted.measures:
        made.add_row(MEASURE_NAMES[measure.name], wording.cm(measure.wanted_cm), wording.cm(measure.drafted_cm))
    out.print(Padding(made, (1, 0, 0, 2), expand=False))


def _show_pieces(out: Console, drafted: Drafted, wording: Wording) -> None:
    before = ""
    for section in drafted.sections:
        if section.piece != before:
            times = f", make {section.made}" if section.made > 1 else ""
            out.print()
            out.print(f"  {section.piece_name}{times}", style="bold")
            before = section.piece
        noun = "round" if section.in_the_round else "row"
        out.print(
            f"    {section.name}: {section.first:,} stitches, {wording.fabric(section.fabric)}, "
            f"{wording.counted(section.rows, noun)}, {section.last + section.resting:,} at the end"
        )
        for words in section_words(section, wording):
            out.print(f"      {words}")


def tell_sizes(season: Season, key: str | None, bodies: SizeTable | None, reader: Reader, *, as_json: bool) -> None:
    """Print the counts of a garment in every size.

    :param bodies: of this table of bodies; None for the pattern's own sizes.
    :raises BadInput: no garment is named, or there is none of that key.
    :raises typer.Exit: with code 1 where a size cannot be drafted.
    """
    if key is None:
        raise BadInput(found="no garment", wanted="the key of the garment whose sizes are drafted", place="GARMENT")
    (chosen,) = _chosen(season, key)
    found = graded(season, season.garment_by_key[chosen], bodies)
    if as_json:
        typer.echo(json.dumps(_sizes_json(found), indent=1, ensure_ascii=False))
    else:
        _show_sizes(season.garment_by_key[chosen].name, found, Wording(reader), from_memory=bodies is not None)
    if found.faults:
        raise typer.Exit(1)


def _sizes_json(found: Graded) -> dict[str, Any]:
    return {
        "sizes": list(found.finished_cm),
        "finished_cm": {size: dict(measures) for size, measures in found.finished_cm.items()},
        "stitches": {size: draft.stitches for size, draft in found.drafts.items()},
        "counts": [
            {"piece": row.piece, "section": row.section, "what": row.what, "by_size": row.by_size}
            for row in count_table(found.drafts)
        ],
        "not_drafted": {size: str(fault) for size, fault in found.faults.items()},
    }


def _show_sizes(name: str, found: Graded, wording: Wording, *, from_memory: bool) -> None:
    out, view = console(), sizes_view(found, wording)
    out.rule(Text(name, style="bold"), align="left", characters="─")
    made = table("", "", *view.sizes, numbers=view.sizes)
    for row in (*view.measures, *view.counts):
        made.add_row(row.label, row.what, *row.figures)
    out.print(made)
    for size, fault in view.faults:
        out.print(f"Size {size} is not drafted: {fault}.")
    if from_memory:
        out.print(
            "The table of bodies is partly from memory and is no substitute for a tape: measure whom you knit for. "
            "Children's sizes say little about one child."
        )
