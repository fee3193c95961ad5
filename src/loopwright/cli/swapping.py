"""Tells what else a garment could be knitted in: what the verb ``swap`` does."""

from __future__ import annotations

from collections.abc import Sequence

import typer
from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from loopwright.cli.show import console, show_answer, table
from loopwright.need.substitution import FIBRE_NAMES, VERDICTS, Side, YarnCatalogue
from loopwright.need.substitution.reasons import range_words
from loopwright.season import Season
from loopwright.season.swap import Swap, swap
from loopwright.season.swap_options import SwapOption
from loopwright.season.wording import Wording
from loopwright.units import BadInput, Measures, Reader, Words, write_money, write_share

__all__ = ["tell_swap"]

MOST_EXPLAINED = 3
NAME_WIDTH = 14
_SHORT = {"close": "close", "works with care": "with care", "another fabric": "another"}


def tell_swap(
    season: Season,
    garment: str,
    role: str,
    *,
    catalogue: YarnCatalogue | None,
    held: bool,
    without: Sequence[str],
    top: int,
    as_json: bool,
    measures: Measures | None,
    words: Words | None,
) -> None:
    """Print the substitutes of one role, the best first.

    :raises BadInput: no such garment, role or fibre.
    :raises typer.Exit: with code 1 where none makes the same fabric.
    """
    for fibre in without:
        if fibre not in FIBRE_NAMES[:-1]:
            raise BadInput(f"the fibre '{fibre}'", f"one of {', '.join(FIBRE_NAMES[:-1])}", place="--without")
    found = swap(season, garment, role, catalogue=catalogue, held=held, without=without, top=top)
    if as_json:
        once = {"options": {"__all__": {"comparison": {"original"}}}}  # it stands beside the options
        typer.echo(found.model_dump_json(indent=2, exclude=once))
    else:
        reader = Reader(measures=measures or season.measures, words=words or season.words)
        _show(found, Wording(reader, season.today.year))
    if not any(option.comparison.works for option in found.options):
        raise typer.Exit(1)


def _show(found: Swap, wording: Wording) -> None:
    out = console()
    out.rule(Text.assemble((found.garment_name, "bold"), f", {found.role}"), align="left", characters="─")
    show_answer(out, found.answer)
    out.print()
    gauge = wording.gauge(found.stitches_per_10cm, found.rows_per_10cm)
    whose = "your swatch's" if found.by_swatch else "the pattern's"
    out.print(Text(f"All at {whose} {gauge}, {wording.fabric(found.fabric)}; {found.compared:,} compared."))
    if not found.options:
        return
    out.print()
    out.print(Padding(_side_by_side(found, wording), (0, 0, 0, 2), expand=False))
    for option in [option for option in found.options if option.comparison.works][:MOST_EXPLAINED]:
        _explain(out, option, wording)
    out.print()
    out.print(Text("Take care", style="bold"))
    for caution in found.cautions:
        _indented(out, caution.text)


def _side_by_side(found: Swap, wording: Wording) -> Table:
    numbers = ("thick", "g/m²", "wash, length", "mass", "put-ups", "price")
    made = table("yarn", "from", "verdict", *numbers, numbers=numbers)
    made.columns[0].min_width = NAME_WIDTH
    own = found.original
    made.add_row(Text(own.name), "", "original", "1.00 ×", *_figures(own, wording), "", "")
    for option in found.options:
        made.add_row(
            Text(option.name),
            option.source,
            _SHORT[option.comparison.verdict],
            f"{option.comparison.thickness_ratio.mean:.2f} ×",
            *_figures(option.comparison.substitute, wording),
            " + ".join(str(number) for number in option.put_ups.values()) if option.put_ups else "?",
            write_money(option.price) if option.price else "–",
        )
    return made


def _figures(side: Side, wording: Wording) -> tuple[str, str, str]:
    return (
        f"{side.mass_g_m2.mean:.0f}",
        range_words(side.wash.length_pct) if side.wash else "?",
        wording.mass(side.garment_g.mean) if side.garment_g else "?",
    )


def _explain(out: Console, option: SwapOption, wording: Wording) -> None:
    one = option.comparison
    out.print()
    out.print(Text.assemble((option.name, "bold"), f": {one.verdict}"))
    off = [reason.sentence for reason in one.reasons if reason.verdict != VERDICTS[0]]
    for sentence in off or ["Nothing is off by more than the limits of what is called close."]:
        _indented(out, sentence)
    for sentence in one.skin:
        _indented(out, sentence)
    for key, colours in option.free.items():
        lengths = wording.listed([f"{row.colour} {wording.estimate(row.length_m)}" for row in colours])
        name = f" of {key}" if len(option.free) > 1 else ""
        _indented(out, f"Free{name} at home or on its way: {lengths}.")
    if option.p_enough is not None:
        _indented(out, f"That it suffices, each yarn in one colour: {write_share(option.p_enough)} sure.")


def _indented(out: Console, sentence: str) -> None:
    for line in Text(sentence).wrap(out, out.width - 2):
        line.rstrip()
        out.print(Text("  ").append_text(line))
