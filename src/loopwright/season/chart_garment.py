"""A chart on the garment that it is for: on which parts it can be laid, and how its colours lay it so far."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from loopwright.colouring import ColourWork, place_of
from loopwright.colouring.places import rows_before
from loopwright.garment import Garment
from loopwright.garment.draft import Draft
from loopwright.garment.wanted.colours import MOST_TIMES, ColourPlace, ColourPlan, write_colour_runs
from loopwright.pattern import Construction
from loopwright.season.chart_place import ChartPlace, read_place
from loopwright.season.chart_report import named_chart
from loopwright.season.colour_places import FIELD_NAMES
from loopwright.season.colour_work import work_of
from loopwright.season.remake import settled_draft
from loopwright.season.season import Season
from loopwright.season.settle import Settled, settle
from loopwright.units import BadInput, Told

__all__ = ["ChartOnGarment", "NotLaid", "PartOfGarment", "chart_on_garment"]

FEW_ROWS: Final = 6
"""Rows before a chart where nothing is said of it, so that it stands off from an edge; our choice."""
_ORDER: Final[tuple[ColourPlace, ...]] = ("body", "sleeves", "yoke", "hem", "cuff", "neckband", "band")


@dataclass(frozen=True, slots=True)
class PartOfGarment:
    """A part of a garment that has rows of its own.

    :ivar name: as it is said in a sentence, such as ``front bands``.
    :ivar rows: by the longest way through it, where it divides.
    :ivar from_top: whether it is knitted from the top down, so that a chart hangs upside down on it.
    """

    place: ColourPlace
    name: str
    rows: int
    from_top: bool

    @property
    def has(self) -> str:
        """Give the verb that goes with its name."""
        return "have" if self.name.endswith("s") else "has"

    def laid(self, before: int, times: int | None) -> ChartPlace:
        """Give a choice on this part.

        :raises BadInput: no row of it is left for the chart, or it is worked less than once.
        """
        if not 0 <= before < self.rows:
            wanted = f"0 to {self.rows - 1}, since the {self.name} {self.has} {self.rows} rows"
            raise BadInput(found=f"{before}", wanted=wanted, place="Rows before it")
        if times is not None and not 1 <= times <= MOST_TIMES:
            raise BadInput(found=f"{times}", wanted=f"1 to {MOST_TIMES}, or on to the end", place="How often")
        return ChartPlace(self.place, before, times)

    def usual(self, high: int) -> ChartPlace:
        """Give what is usual for a chart of so many rows: once, a few rows in where it then still has room."""
        return ChartPlace(self.place, max(0, min(FEW_ROWS, self.rows - high)), 1)


@dataclass(frozen=True, slots=True)
class ChartOnGarment:
    """What can be chosen about laying a chart on its garment, and what the garment's own colours say of it.

    :ivar high: rows of the chart.
    :ivar draft: of the garment, without its colours; ``settled`` what it comes from.
    :ivar parts: those that it can be laid on, in the order of their weight.
    :ivar kept: how the garment's colours lay it, part by part.
    :ivar held: fields of the garment's colours that lay it in more words than a :class:`ChartPlace` holds.
    """

    season: Season
    chart: str
    high: int
    garment: Garment
    settled: Settled
    draft: Draft
    parts: tuple[PartOfGarment, ...]
    kept: tuple[ChartPlace, ...]
    held: tuple[str, ...]

    @property
    def main(self) -> str:
        """Give the garment's first role, which knits what is not named."""
        return self.garment.yarns[0].key

    @property
    def start(self) -> ChartPlace | None:
        """Give what to begin with: as it is kept, else as is usual; None where it is kept in more words."""
        places = [part.place for part in self.parts]
        for one in self.kept:
            if one.place in places:
                return one
        return None if self.held or not self.parts else self.at(self._usual_part)

    @property
    def _usual_part(self) -> PartOfGarment:
        wanted = "yoke" if self.draft.construction == Construction.YOKE.value else "body"
        return next((part for part in self.parts if part.place == wanted), self.parts[0])

    def part(self, place: str) -> PartOfGarment:
        """Give a part that the chart can be laid on.

        :raises BadInput: the garment has none of that name, or its words hold more than can be chosen.
        """
        for part in self.parts:
            if part.place == place:
                return part
        known = ", ".join(part.place for part in self.parts) or "a part whose colours say less"
        raise BadInput(found=place, wanted=f"one of {known}")

    def at(self, part: PartOfGarment) -> ChartPlace:
        """Give how the chart is kept on a part, else as is usual there."""
        return next((one for one in self.kept if one.place == part.place), part.usual(self.high))

    def text(self, choice: ChartPlace) -> str:
        """Write a choice as the garment's field of that part says it."""
        return write_colour_runs(choice.runs(self.chart, self.main))

    def plan(self, choice: ChartPlace | None) -> ColourPlan:
        """Give the garment's plan of colours with the choice in it; None leaves it as it is kept."""
        colours = self.garment.colours
        if choice is None:
            return colours
        return colours.model_copy(update={choice.place: choice.runs(self.chart, self.main)})

    def work(self, choice: ChartPlace | None) -> ColourWork | None:
        """Give the same with the charts in it; None where nothing is said of any colour."""
        return work_of(self.season, self.garment.model_copy(update={"colours": self.plan(choice)}))


@dataclass(frozen=True, slots=True)
class NotLaid:
    """Why a chart cannot be laid on a garment, and what to do.

    :ivar garment: its key; empty where the chart is for none.
    """

    why: Told
    garment: str = ""


def chart_on_garment(season: Season, key: str) -> ChartOnGarment | NotLaid:
    """Give what can be chosen about laying a chart on the garment that it is for, or why it cannot be laid.

    :raises BadInput: the season has no such chart.
    """
    named = named_chart(season, key)
    if named.garment is None:
        return NotLaid(Told("It is for no garment yet: choose one, and it can be laid on it."))
    garment = season.garment_by_key[named.garment]
    strange = [one.role for one in named.roles if garment.role(one.role) is None]
    if strange:
        known = ", ".join(role.key for role in garment.yarns)
        missing = f"{garment.name} has no yarn for {', '.join(strange)}, which the chart has: "
        return NotLaid(
            Told.of(f"{missing}give it one, or draw the chart in the garment's own roles, {known}."), garment.key
        )
    colours = garment.colours
    try:
        settled = settle(season, garment.model_copy(update={"colours": ColourPlan()}))
    except BadInput as fault:
        return _undrafted(garment, fault.told)
    draft = settled_draft(season, settled)
    if draft is None:
        return _undrafted(garment, settled.draft_fault)
    kept, held = _said(colours, key, garment.yarns[0].key)
    return ChartOnGarment(
        season=season,
        chart=key,
        high=named.chart.rows,
        garment=garment,
        settled=settled,
        draft=draft,
        parts=tuple(part for part in _parts(draft) if part.place not in held),
        kept=kept,
        held=held,
    )


def _undrafted(garment: Garment, fault: Told) -> NotLaid:
    why = Told.of(": ") + fault if fault else Told()
    whole = Told.of(f"{garment.name} cannot be drafted") + why + Told.of(". Its bench says what it needs.")
    return NotLaid(whole, garment.key)


def _said(colours: ColourPlan, chart: str, main: str) -> tuple[tuple[ChartPlace, ...], tuple[str, ...]]:
    """Give how colours lay a chart, and the fields whose words hold more."""
    kept, held = [], []
    for field in dict.fromkeys(field for field, run in colours.named() if run.chart == chart):
        place = next((one for one in _ORDER if one == field), None)
        found = None if place is None else read_place(place, colours.runs(place), chart, main)
        if found is None:
            held.append(field)
        else:
            kept.append(found)
    return tuple(sorted(kept, key=lambda one: _ORDER.index(one.place))), tuple(held)


def _parts(draft: Draft) -> Iterator[PartOfGarment]:
    """Give the parts of a draft that have a row, each with its rows as a plan that names it counts them."""
    found: dict[ColourPlace, list[tuple[int, bool]]] = {}
    for piece, section in draft.sections():
        if section.rows:
            place = place_of(piece, section)
            own = ColourPlan.model_validate({place: "main"})
            end = rows_before(draft, piece, section, own) + section.rows
            found.setdefault(place, []).append((end, piece.direction == "top down"))
    for place in sorted(found, key=_ORDER.index):
        ends, from_top = zip(*found[place], strict=True)
        yield PartOfGarment(place, FIELD_NAMES[place], max(ends), any(from_top))
