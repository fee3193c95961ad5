"""Answers *Where do the colours go?*: stripes, edges and charts as she places them, and how charts come out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from loopwright.colouring import LaidChart, laid_charts
from loopwright.fabric import Swatch
from loopwright.garment import Garment
from loopwright.garment.draft import Draft
from loopwright.garment.wanted.colours import ColourRun
from loopwright.pattern import Construction, PatternFacts
from loopwright.season.chart_answers import fit_words, row_list
from loopwright.season.colour_work import work_of
from loopwright.season.remake import settled_draft
from loopwright.season.result import Answer, Figure
from loopwright.season.season import Season
from loopwright.season.settle import Settled
from loopwright.season.wording import Wording
from loopwright.units import write_share

__all__ = ["FIELD_NAMES", "colour_names", "lies_in_words", "places_answer", "runs_in_words", "stranded_in_words"]

FIELD_NAMES: Final = {
    "everywhere": "body, sleeves and yoke",
    "edges": "edges",
    "hem": "hem",
    "cuff": "cuffs",
    "neckband": "neckband",
    "band": "front bands",
    "body": "body",
    "sleeves": "sleeves",
    "yoke": "yoke",
}
MOST_TOLD: Final = 8


def places_answer(season: Season, one: Settled, wording: Wording) -> Answer | None:
    """Say where the colours go, or give None where she says nothing of it, or the garment is not drafted."""
    garment = one.garment
    work, draft = work_of(season, garment), settled_draft(season, one)
    if work is None or draft is None:
        return None
    laid = laid_charts(draft, work)
    is_even = all(lie.is_even for lie in laid)
    names, shown = {chart.key: chart.name for chart in season.charts}, colour_names(garment)
    figures = [
        Figure(label=_part(label, one.pattern), text=runs_in_words(getattr(garment.colours, field), names, shown))
        for field, label in FIELD_NAMES.items()
        if getattr(garment.colours, field)
    ]
    return Answer(
        key="colour-places",
        question="Where do the colours go?",
        sentence=_shares(draft, shown, wording),
        tone="plain" if is_even else "unsure",
        reasons=(
            f"What is not named is knitted in {shown[work.main]}. Rows are counted in the order of knitting.",
            *lies_in_words(laid, names, wording),
            *stranded_in_words(draft, one.swatch),
        ),
        figures=tuple(figures),
    )


def _part(label: str, pattern: PatternFacts) -> str:
    """Name a part as its garment does: the hem of a hat is its brim."""
    return "brim" if label == FIELD_NAMES["hem"] and pattern.construction is Construction.HAT else label


def colour_names(garment: Garment) -> dict[str, str]:
    """Give what each role is called to a reader: its colour, or the role itself where two have one colour's name."""
    colours = [role.colour for role in garment.yarns]
    return {role.key: role.colour if colours.count(role.colour) == 1 else role.key for role in garment.yarns}


def _shares(draft: Draft, shown: Mapping[str, str], wording: Wording) -> str:
    """Say what share of the stitches each role knits, roles in the order of the garment."""
    counts: dict[str, int] = {}
    for piece, section in draft.sections():
        for role, stitches in section.stitches_by_role().items():
            counts[role] = counts.get(role, 0) + int(stitches.sum()) * piece.made
    whole = sum(counts.values())
    (most, first), *others = [
        (name, write_share(counts[role] / whole)) for role, name in shown.items() if counts.get(role)
    ]
    told = [f"{most} knits {first}", *(f"{role} {share}" for role, share in others)]
    sentence = f"{wording.listed(told)} of the stitches."
    return sentence[0].upper() + sentence[1:]


def runs_in_words(runs: Sequence[ColourRun], names: Mapping[str, str], shown: Mapping[str, str]) -> str:
    """Write runs in words: ``4 rows Oat, then 2 rows Rust, again and again``.

    :param names: of charts, by key; ``shown`` of roles, as :func:`colour_names` gives them.
    """
    again = ", again and again" if len(runs) > 1 and runs[-1].times is not None else ""
    return ", then ".join(_run(run, names, shown) for run in runs) + again


def _run(run: ColourRun, names: Mapping[str, str], shown: Mapping[str, str]) -> str:
    if run.chart is not None:
        times = {None: " to the end", 1: ""}.get(run.times, f", {run.times} times")
        return f"the chart {names[run.chart]}{times}"
    colour = shown[run.role or ""]
    return colour if run.times is None else f"{run.times} row{'' if run.times == 1 else 's'} {colour}"


def lies_in_words(laid: Sequence[LaidChart], names: Mapping[str, str], wording: Wording) -> Iterator[str]:
    """Say of each stretch how the chart goes into its count, and where the count changes within it.

    :param names: of charts, by key.
    """
    told: dict[tuple[str, str], list[str]] = {}
    for one in laid:
        alone = one.section == "body" or one.piece.endswith(one.section)
        where = one.piece if alone else f"{one.piece}, {one.section}"
        told.setdefault((names[one.chart], _lie(one, wording)), []).append(where)
    for (name, lie), places in list(told.items())[:MOST_TOLD]:
        yield f"{name} on {wording.listed([f'the {place}' for place in dict.fromkeys(places)])}, {lie}"
    if len(told) > MOST_TOLD:
        yield f"And {len(told) - MOST_TOLD} more sections with charts."


def _lie(one: LaidChart, wording: Wording) -> str:
    noun = "rounds" if one.in_the_round else "rows"
    fit = f"each share centred by itself, {one.fit.count} stitches" if one.shared else fit_words(one.fit, wording)
    changes = ""
    if one.changes:
        at = noun if len(one.changes) > 1 else noun.removesuffix("s")
        changes = f"; the count changes within it, in {at} {row_list(row + 1 for row in one.changes)}"
    return f"{noun} {one.first + 1} to {one.first + one.rows}: {fit}{changes}."


def stranded_in_words(draft: Draft, swatch: Swatch | None) -> Iterator[str]:
    """Say what to swatch where a draft in its colours has stranded rows that no swatch is of."""
    floated = any(rows.any() for _, one in draft.sections() for rows in one.floated_by_role().values())
    if floated and (swatch is None or swatch.fabric != "stranded colourwork"):
        yield "Stranded rows draw in: swatch the chart itself before you trust its width."
