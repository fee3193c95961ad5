"""The form that lays a chart on its garment: what she chose, and what stands in its fields."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from loopwright.season.chart_garment import ChartOnGarment, PartOfGarment
from loopwright.season.chart_place import ChartPlace
from loopwright.units import BadInput

__all__ = ["LayingForm", "choice_asked", "choice_typed", "laying_form"]

_MOST_DIGITS: Final = 5


@dataclass(frozen=True, slots=True)
class LayingForm:
    """What the form holds.

    :ivar parts: key and name of each part; one without a key first where the chart is kept in more words than the form
        holds.
    :ivar place, before, times: as she typed them, or as they are to begin with.
    :ivar to_end: whether the chart goes on to the end.
    :ivar rows: of the part that is chosen, 0 where none is.
    :ivar renewed: whether the numbers are others than those before her, since she chose another part.
    """

    parts: tuple[tuple[str, str], ...]
    place: str
    before: str
    times: str
    to_end: bool
    rows: int
    renewed: bool


def _number(text: str, label: str) -> int:
    if not text.strip().isdecimal() or len(text.strip()) > _MOST_DIGITS:
        raise BadInput(found=text, wanted="a whole number", place=label)
    return int(text)


def _part(on: ChartOnGarment, typed: Mapping[str, str]) -> PartOfGarment:
    try:
        return on.part(typed.get("place", ""))
    except BadInput as fault:
        raise fault.at("Where") from None


def choice_typed(on: ChartOnGarment, typed: Mapping[str, str]) -> ChartPlace:
    """Read what she typed, by name of the field.

    :raises BadInput: a part that the garment has not, or a number that is none or out of range.
    """
    part = _part(on, typed)
    times = None if typed.get("to_end") else _number(typed.get("times", ""), "How often")
    return part.laid(_number(typed.get("before", ""), "Rows before it"), times)


def choice_asked(on: ChartOnGarment, asked: Mapping[str, str]) -> ChartPlace | None:
    """Read what a page is asked to show, which need not say everything.

    A part that her numbers were not shown for takes them over where nothing is kept there and they fit; else it begins
    as it is kept or as is usual.

    :param asked: with the part that the numbers were shown for, as ``shown``.
    :returns: None for what the garment's own words say.
    :raises BadInput: as :func:`choice_typed`.
    """
    if "place" not in asked:
        return on.start
    if not asked["place"] and on.held:
        return None
    if not _is_for_another(asked):
        return choice_typed(on, asked)
    part = _part(on, asked)
    if all(one.place != part.place for one in on.kept):
        try:
            return choice_typed(on, asked)
        except BadInput:
            return part.usual(on.high)
    return on.at(part)


def _is_for_another(asked: Mapping[str, str]) -> bool:
    """Say whether the numbers stand for another part than the one that is asked for."""
    return "before" not in asked or asked.get("shown", asked.get("place")) != asked.get("place")


def laying_form(on: ChartOnGarment, choice: ChartPlace | None, asked: Mapping[str, str]) -> LayingForm | None:
    """Give what the form holds, or None where there is no part to choose.

    :param choice: what is shown; None leaves in the fields what was asked for.
    """
    if not on.parts:
        return None
    none = (("", "as it is kept"),) if on.held else ()
    usual = on.parts[0].usual(on.high)
    if choice is None:
        place, before = asked.get("place", ""), asked.get("before", str(usual.before))
        times, to_end = asked.get("times", str(usual.times)), bool(asked.get("to_end"))
    else:
        place, before, to_end = choice.place, str(choice.before), choice.times is None
        times = asked.get("times", "1") if choice.times is None else str(choice.times)
    return LayingForm(
        parts=(*none, *((part.place, part.name) for part in on.parts)),
        place=place,
        before=before,
        times=times,
        to_end=to_end,
        rows=next((part.rows for part in on.parts if part.place == place), 0),
        renewed="shown" in asked and _is_for_another(asked),
    )
