"""How a chart lies on its garment, in words."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.colouring import coloured, laid_charts
from loopwright.season.chart_garment import ChartOnGarment, PartOfGarment
from loopwright.season.chart_place import ChartPlace
from loopwright.season.colour_places import FIELD_NAMES, colour_names, lies_in_words, runs_in_words, stranded_in_words
from loopwright.season.wording import Wording

__all__ = ["choice_in_words", "held_in_words", "lying_in_words"]


def _names(on: ChartOnGarment) -> dict[str, str]:
    return {chart.key: chart.name for chart in on.season.charts}


def choice_in_words(on: ChartOnGarment, choice: ChartPlace) -> str:
    """Say what is chosen: ``On the body: 6 rows Oat, then the chart Tide line, then Oat.``."""
    said = runs_in_words(choice.runs(on.chart, on.main), _names(on), colour_names(on.garment))
    return f"On the {FIELD_NAMES[choice.place]}: {said}."


def held_in_words(on: ChartOnGarment) -> tuple[str, ...]:
    """Say which words of the garment's own lay the chart and hold more than can be chosen."""
    names = _names(on)
    return tuple(
        f"The words for the {FIELD_NAMES[field]} hold more than can be chosen here, and stay as they are: "
        f"{runs_in_words(getattr(on.garment.colours, field), names, colour_names(on.garment))}."
        for field in on.held
    )


def lying_in_words(on: ChartOnGarment, choice: ChartPlace | None, wording: Wording) -> tuple[str, ...]:
    """Say how the chart lies on the garment with a choice, the part that is chosen first.

    :param choice: None for what the garment's colours say.
    """
    work = on.work(choice)
    if work is None:
        return ()
    laid = [one for one in laid_charts(on.draft, work) if one.chart == on.chart]
    laid.sort(key=lambda one: choice is None or one.place != choice.place)
    return (
        *lies_in_words(laid, _names(on), wording),
        *(() if choice is None else _on_its_part(on, choice)),
        *stranded_in_words(coloured(on.draft, work), on.settled.swatch),
    )


def _on_its_part(on: ChartOnGarment, choice: ChartPlace) -> Iterator[str]:
    part = on.part(choice.place)
    yield from _room(part, choice, on.high)
    if part.from_top:
        yield f"Knitted from the top down: the chart hangs upside down on the {part.name}."
    yield from _giving_way(on, part)


def _room(part: PartOfGarment, choice: ChartPlace, high: int) -> Iterator[str]:
    """Say how often a chart of so many rows finds room, where it does not as often as is chosen."""
    rows = part.rows - choice.before
    whole, left = divmod(max(rows, 0), high)
    if rows <= 0:
        yield f"It does not show: the {part.name} {part.has} {part.rows} rows."
    elif choice.times is not None and choice.times * high <= rows:
        return
    elif not whole:
        yield f"There is room for its first {left} rows alone."
    elif choice.times is not None:
        yield f"There is room for {whole} of the {choice.times}" + (
            f", and for {left} rows of one more." if left else "."
        )
    elif left:
        yield f"The last one is cut off after row {left} of its {high}."


def _giving_way(on: ChartOnGarment, part: PartOfGarment) -> Iterator[str]:
    """Say what the garment's colours say of the part, where that is more than its first role and not this chart."""
    runs = on.garment.colours.runs(part.place)
    if any(run.role != on.main for run in runs) and all(one.place != part.place for one in on.kept):
        said = runs_in_words(runs, _names(on), colour_names(on.garment))
        yield f"What is said of the {part.name} until now gives way: {said}."
