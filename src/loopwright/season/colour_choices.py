"""Her own colours in the roles of a garment: every way to give them, ranked by how they stand apart."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from loopwright.colour import MOST_ASSIGNMENTS, grade_of, rank_assignments, read_hex
from loopwright.garment import Garment
from loopwright.records import Record
from loopwright.season.facts import SeasonFacts
from loopwright.yarn import length_in_lot

__all__ = ["ColourChoice", "OwnColour", "colour_choices", "likeness"]

MOST_CHOICES: Final = 3


class OwnColour(Record):
    """A colour of her own in one role of a choice; ``enough`` is None where the need is not known."""

    role: str
    name: str
    shade: str
    enough: bool | None


class ColourChoice(Record):
    """Another way to give her own colours to the roles.

    :ivar worst_pair: the two roles that stand nearest to each other in lightness.
    """

    colours: tuple[OwnColour, ...]
    worst_delta_l: float
    worst_pair: tuple[str, str]
    grade: str


def likeness(season: SeasonFacts, yarn: str, colour: str, lots: Sequence[str] = ()) -> str | None:
    """Give the likeness of a yarn's colour: that of the first lot which has one, lots that she named first."""
    of_colour = [lot for lot in season.cupboard if (lot.yarn, lot.colour) == (yarn, colour)]
    of_colour.sort(key=lambda lot: lot.key not in lots)
    return next((lot.shade for lot in of_colour if lot.shade), None)


def colour_choices(season: SeasonFacts, garment: Garment, need_m: Mapping[str, float]) -> Iterator[ColourChoice]:
    """Rank the ways to give her own colours of this yarn to the roles."""
    yarns = {role.yarn for role in garment.yarns}
    roles = [role.key for role in garment.yarns]
    if len(yarns) > 1 or len(roles) < 2 or any(role.held_with for role in garment.yarns):
        return
    (yarn,) = yarns
    have_m = _own(season, yarn)
    names = sorted(have_m, key=lambda name: -have_m[name])
    while len(names) > len(roles) and math.perm(len(names), len(roles)) > MOST_ASSIGNMENTS:
        names.pop()
    if len(names) < len(roles):
        return
    shades = [likeness(season, yarn, name) or "" for name in names]
    planned = tuple(role.colour for role in garment.yarns)
    meeting = [(one, other) for at, one in enumerate(roles) for other in roles[at + 1 :]]
    ranked = rank_assignments([read_hex(shade) for shade in shades], roles, meeting, most=MOST_CHOICES + 1).ranked
    others = [one for one in ranked if tuple(names[place] for place in one.colours) != planned]
    for one in others[:MOST_CHOICES]:
        yield ColourChoice(
            colours=tuple(
                OwnColour(
                    role=role,
                    name=names[place],
                    shade=shades[place],
                    enough=have_m[names[place]] >= need_m[role] if role in need_m else None,
                )
                for role, place in zip(roles, one.colours, strict=True)
            ),
            worst_delta_l=one.worst_delta_l,
            worst_pair=one.worst_pair,
            grade=grade_of(one.worst_delta_l).name,
        )


def _own(season: SeasonFacts, yarn: str) -> dict[str, float]:
    """Give the metres at home of each colour of a yarn that has a likeness."""
    metres: dict[str, float] = {}
    for lot in season.cupboard:
        if lot.yarn == yarn and likeness(season, yarn, lot.colour) is not None:
            metres[lot.colour] = metres.get(lot.colour, 0.0) + length_in_lot(lot, season.yarn_by_key[yarn]).mean
    return metres
