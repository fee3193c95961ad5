"""What the page of the people shows: one person after the other, doubts first."""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.body import MEASURES, Body, body_doubts, complete
from loopwright.body.doubt import BodyDoubt, name_of
from loopwright.season import Caution, Season
from loopwright.season.bodies import OldMeasures, old_measures
from loopwright.season.cautions import body_cautions
from loopwright.season.wording import Wording
from loopwright.web.bodies.rows import MeasureRow, measure_groups

__all__ = ["PersonView", "people_view", "person_view"]


@dataclass(frozen=True, slots=True)
class PersonView:
    """One person.

    :ivar doubts: measures that do not agree, what cannot be first.
    :ivar old: what a child must be measured again for.
    :ivar refused: why nothing is estimated.
    """

    key: str
    name: str
    about: str
    known: str
    note: str
    doubts: tuple[BodyDoubt, ...]
    old: tuple[str, ...]
    refused: str
    groups: tuple[tuple[str, tuple[MeasureRow, ...]], ...]
    cautions: tuple[Caution, ...]


def people_view(season: Season, wording: Wording) -> tuple[PersonView, ...]:
    """Lay out everyone of a season, in the season's order."""
    return tuple(person_view(season, body, wording) for body in season.bodies)


def person_view(season: Season, body: Body, wording: Wording) -> PersonView:
    """Lay out one person."""
    doubts = body_doubts(body, wording.reader)
    filled = complete(body, leave_out={key for doubt in doubts for key in doubt.suspects})
    return PersonView(
        key=body.key,
        name=body.name,
        about=_about(body, wording),
        known=_known(body, wording),
        note=body.note,
        doubts=doubts,
        old=tuple(_old(one, wording) for one in old_measures(season, body.key)),
        refused=filled.refused or "",
        groups=measure_groups(body, filled, wording),
        cautions=body_cautions(body),
    )


def _about(body: Body, wording: Wording) -> str:
    parts = [str(body.wearer)]
    if body.age_years is not None:
        parts.append(wording.counted(int(body.age_years), "year") if body.age_years >= 1 else "under a year")
    return " · ".join(parts)


def _known(body: Body, wording: Wording) -> str:
    known = [key for key in body.known() if key in MEASURES]
    if not known:
        return "Nothing is measured yet."
    count = wording.counted(len(known), "measure")
    when = f", taken {wording.date(body.measured_on)}" if body.measured_on else ""
    undated = [key for key in known if body.taken(key) is None]
    others = (
        f", {wording.counted(len(body.taken_on), 'of them', 'of them')} on another day"
        if body.taken_on and when
        else ""
    )
    unknown = "; nobody noted on which day" if len(undated) == len(known) else ""
    return f"{count[:1].upper()}{count[1:]}{when}{others}{unknown}."


def _old(one: OldMeasures, wording: Wording) -> str:
    names = [name_of(key) for key in one.ages_days]
    more = len(names) - 3
    listed = wording.listed([*names[:3], f"{more} more"] if more > 0 else names)
    oldest = max(one.ages_days.values())
    when = f"When {one.garment} is due, {wording.date(one.on)}," if one.garment else f"On {wording.date(one.on)}"
    whose = "is" if len(names) == 1 else "are"
    return (
        f"{when} {listed} {whose} up to {oldest} days old. A child outgrows measures: take them again after about "
        "three months (our judgement)."
    )
