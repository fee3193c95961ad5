"""Lays a chart on the garment that it is for, and draws it there: a part of what the verb ``chart`` does."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from loopwright.cli.writing import write_bytes, write_text
from loopwright.documents.look import LookOfGarment, look_of
from loopwright.pictures.garment_svg import garment_svg
from loopwright.pictures.painting import painting_of
from loopwright.season import Season, plan, with_garment
from loopwright.season.chart_garment import ChartOnGarment, NotLaid, chart_on_garment
from loopwright.season.chart_garment_words import choice_in_words, held_in_words, lying_in_words
from loopwright.season.chart_place import ChartPlace
from loopwright.season.wording import Wording
from loopwright.units import BadInput

__all__ = ["LaidOnGarment", "laid_on_garment"]

_ENDINGS: Final = (".png", ".svg")
_LONGEST_PX: Final = 1200


@dataclass(frozen=True, slots=True)
class LaidOnGarment:
    """A chart on its garment.

    :ivar choice: None where the garment's own words lay it, and hold more than a choice does.
    """

    on: ChartOnGarment
    choice: ChartPlace | None
    words: tuple[str, ...]

    def as_json(self) -> dict[str, Any]:
        """Give where and how it lies, for other programs."""
        return {
            "garment": self.on.garment.key,
            "place": None if self.choice is None else self.choice.place,
            "colours": None if self.choice is None else self.on.text(self.choice),
            "says": list(self.words),
        }

    def draw(self, out: Path) -> None:
        """Draw the front of the garment in the colours of its yarns.

        :raises BadInput: the file cannot be written.
        """
        look = self._look()
        if out.suffix.lower() == ".png":
            write_bytes(out, look.picture(longest_px=_LONGEST_PX).png(look.colours))
            return
        painting = painting_of(look.draft, edges=look.edges)
        body = look.body_cm or None
        drawn = garment_svg(look.draft, look.colours, "front", painting=painting, body_cm=body, says=look.says("front"))
        write_text(out, drawn, ".svg")

    def _look(self) -> LookOfGarment:
        season, key = self.on.season, self.on.garment.key
        if self.choice is not None:
            season = with_garment(season, key, {f"colours.{self.choice.place}": self.on.text(self.choice)})
        return look_of(season, plan(season).garment(key))


def laid_on_garment(season: Season | None, key: str, place: str | None, out: Path, wording: Wording) -> LaidOnGarment:
    """Lay a chart of a season on its garment: on a part of it, as it is kept there or as is usual.

    :param season: None where the chart comes from elsewhere.
    :param place: the part; None for where its colours have it, else where it usually goes.
    :raises BadInput: it cannot be laid, the garment has no such part, or the file has another ending.
    """
    if out.suffix.lower() not in _ENDINGS:
        raise BadInput(out.name, "a name that ends in .png or .svg", place=str(out))
    if season is None:
        raise BadInput(found="a chart that is in no season", wanted="a season file", place="--on-garment")
    on = chart_on_garment(season, key)
    if isinstance(on, NotLaid):
        wanted = "a chart that can be laid on its garment"
        raise BadInput(found=key, wanted=wanted, place="--on-garment", hint=wording.told(on.why))
    try:
        choice = on.start if place is None else on.at(on.part(place))
    except BadInput as fault:
        raise fault.at("--place") from None
    first = held_in_words(on) if choice is None else (choice_in_words(on, choice),)
    return LaidOnGarment(on, choice, (*first, *lying_in_words(on, choice, wording)))
