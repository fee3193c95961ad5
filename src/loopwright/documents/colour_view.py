"""What a page shows of a garment's colours: chips as they are, in grey and to other eyes; her own other choices."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from loopwright.colour import VISIONS
from loopwright.pictures import colour_chip
from loopwright.season.colour_choices import ColourChoice
from loopwright.season.colour_report import ColourOfRole, ColourReport
from loopwright.season.wording import Wording

__all__ = ["HEADINGS", "ChoiceView", "ColourRowView", "ColoursView", "colours_view"]

HEADINGS: Final = ("as it is", "in grey", *VISIONS)


@dataclass(frozen=True, slots=True)
class ColourRowView:
    """One colour.

    :ivar chips: drawings under :data:`HEADINGS`, as SVG.
    """

    roles: str
    name: str
    chips: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ChoiceView:
    """Her own colours in another order or others of hers."""

    chips: tuple[str, ...]
    says: str
    apart: str


@dataclass(frozen=True, slots=True)
class ColoursView:
    """A garment's colours; ``rows`` is empty where it has but one."""

    headings: tuple[str, ...]
    rows: tuple[ColourRowView, ...]
    choices: tuple[ChoiceView, ...]


def colours_view(report: ColourReport, wording: Wording) -> ColoursView:
    """Lay out a garment's colours."""
    rows = report.colours if len(report.colours) > 1 else ()
    return ColoursView(
        HEADINGS,
        tuple(ColourRowView(wording.listed(one.roles), one.name, _chips(one)) for one in rows),
        tuple(_choice(one, wording) for one in report.choices),
    )


def _chips(one: ColourOfRole) -> tuple[str, ...]:
    seen: Mapping[str, str | None] = {"as it is": one.shade, "in grey": one.grey, **one.seen}
    return tuple(colour_chip(seen.get(heading), f"{one.name} {heading}") for heading in HEADINGS)


def _choice(one: ColourChoice, wording: Wording) -> ChoiceView:
    short = [own.name for own in one.colours if own.enough is False]
    rest = f"; too little {wording.listed(short)} at home" if short else ""
    return ChoiceView(
        chips=tuple(colour_chip(own.shade, own.name) for own in one.colours),
        says=wording.listed([f"{own.name} as {own.role}" for own in one.colours]),
        apart=f"{one.grade}, {one.worst_delta_l:.0f} L* at the least{rest}",
    )
