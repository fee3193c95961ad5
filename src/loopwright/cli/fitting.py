"""Tells how garments fit: what the verb ``fit`` does."""

from __future__ import annotations

import json
from typing import Any

import typer
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from loopwright.cli.show import console, show_answer, table
from loopwright.fit import SizeFit
from loopwright.season import GarmentPlan, Season, plan
from loopwright.season.wording import POINT_NAMES, Wording
from loopwright.units import BadInput, Measures, Reader, Words

__all__ = ["tell_fit"]


def tell_fit(season: Season, key: str | None, *, as_json: bool, measures: Measures | None, words: Words | None) -> None:
    """Print how one garment or all of them fit.

    :param key: of one garment; None for all that have a wearer to fit.
    :raises BadInput: the season has no such garment.
    :raises typer.Exit: with code 1 where something fits nobody well or has no size.
    """
    if key is not None and key not in season.garment_by_key:
        raise BadInput(found=f"the garment '{key}'", wanted=f"one of {', '.join(season.garment_by_key)}")
    reader = Reader(measures=measures or season.measures, words=words or season.words)
    planned = plan(season, reader)
    chosen = [garment for garment in planned.garments if garment.key == key or (key is None and garment.fits)]
    if as_json:
        typer.echo(json.dumps([_as_json(garment) for garment in chosen], indent=2, ensure_ascii=False))
    else:
        _show(chosen, Wording(reader, season.today.year))
    if any(garment.answer("fit").tone == "no" for garment in chosen):
        raise typer.Exit(1)


def _as_json(garment: GarmentPlan) -> dict[str, Any]:
    answer = garment.answer("fit")
    return {
        "garment": garment.key,
        "wearer": garment.wearer,
        "size": garment.size,
        "sentence": answer.sentence,
        "reasons": answer.reasons,
        "finished_cm": dict(garment.finished_cm),
        "sizes": [_size_json(fit) for fit in garment.fits],
    }


def _size_json(fit: SizeFit) -> dict[str, Any]:
    return {
        "size": fit.size,
        "score": round(fit.score, 4),
        "verdict": fit.verdict,
        "too_small_at": fit.too_small_at,
        "points": [
            {
                "point": point.point,
                "body_cm": point.body_cm,
                "garment_cm": point.garment_cm,
                "ease_cm": point.ease_cm,
                "intended_ease_cm": point.intended_cm,
                "penalty": round(point.penalty, 4),
                "estimated": point.estimated,
            }
            for point in fit.points
        ],
    }


def _show(garments: list[GarmentPlan], wording: Wording) -> None:
    out = console()
    if not garments:
        out.print("No garment has a wearer to fit.")
    for garment in garments:
        out.print()
        who = f" for {garment.wearer}" if garment.wearer else ""
        out.rule(Text.assemble((garment.name, "bold"), who), align="left", characters="─")
        show_answer(out, garment.answer("fit"))
        if garment.fits:
            out.print()
            out.print(Padding(_sizes(garment, wording), (0, 0, 0, 2), expand=False))


def _sizes(garment: GarmentPlan, wording: Wording) -> Table:
    unit = "cm" if wording.reader.measures == "metric" else "in"
    points = [f"{POINT_NAMES[point.point]}, {unit}" for point in garment.fits[0].points]
    made = table("size", *points, "off", "verdict", numbers=("off",))
    for fit in garment.fits:
        cells = [
            f"{wording.cm(point.garment_cm)} ({wording.signed(point.ease_cm)})".replace(f" {unit}", "")
            for point in fit.points
        ]
        mark = "*" if fit.size == garment.size else " "
        verdict = "too small" if fit.too_small_at else fit.verdict
        made.add_row(f"{mark} {fit.size}", *cells, f"{fit.score:.2f}", verdict)
    return made
