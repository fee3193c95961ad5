"""What a colour from a photo is for: a lot of the cupboard, or a role of a garment and what she tries on its bench."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final
from urllib.parse import urlencode

from django.http import QueryDict
from django.urls import reverse

from loopwright.garment import Garment
from loopwright.season import Season
from loopwright.web.photo.lots import drawn_lot, lot_name, lots_of
from loopwright.web.pictures.asked import COLOUR
from loopwright.web.trial.fields import TRIAL_FIELDS

__all__ = ["ANSWER", "Purpose", "purpose_of"]

ANSWER: Final = "look-answer"
"""Where a bench shows how a garment will look."""
_LONGEST: Final = 120


@dataclass(frozen=True, slots=True)
class Purpose:
    """What the colour is for.

    :ivar lot: the lot whose likeness it becomes unless another is chosen; empty where none is named.
    :ivar lot_colour: what the colour of that lot is called.
    :ivar garment, role: empty where it is for a lot alone; :ivar garment_name: what the garment is called.
    :ivar yarn: the role's yarn and colour, or the lot alone, in words.
    :ivar lots: those that it can be kept for; None for every lot.
    :ivar tried: what she tries on the bench that she came from, by name of its field.
    """

    lot: str = ""
    lot_colour: str = ""
    garment: str = ""
    garment_name: str = ""
    role: str = ""
    yarn: str = ""
    lots: tuple[str, ...] | None = None
    tried: tuple[tuple[str, str], ...] = ()

    @property
    def fields(self) -> tuple[tuple[str, str], ...]:
        """Give what its forms pass on beside the lot."""
        return (("garment", self.garment), ("role", self.role), *self.tried) if self.garment else ()

    def page(self, key: str) -> str:
        """Give the address of the photo's page for this purpose."""
        fields = {name: text for name, text in (("lot", self.lot), *self.fields) if text}
        return _address(reverse("colour-photo", args=[key]), fields)

    def bench_trying(self, key: str, shade: str) -> str:
        """Give the address of the garment's pictures with the role in this colour, which is not kept."""
        return self._bench(key, {f"{COLOUR}{self.role}": shade})

    def bench_kept(self, key: str, lot: str, shade: str) -> str:
        """Give the address of the garment's pictures once the colour is kept for a lot."""
        return self._bench(key, {"lot": lot, "kept": shade})

    def _bench(self, key: str, new: Mapping[str, str]) -> str:
        others = {name: text for name, text in self.tried if name != f"{COLOUR}{self.role}"}
        return f"{_address(reverse('garment', args=[key, self.garment]), {**others, **new})}#{ANSWER}"


def _address(place: str, fields: Mapping[str, str]) -> str:
    return f"{place}?{urlencode(fields)}" if fields else place


def purpose_of(season: Season, sent: QueryDict) -> Purpose:
    """Read what a colour is for; a garment, role or lot that is not there is none."""
    lot = next((one for one in season.cupboard if one.key == sent.get("lot")), None)
    garment = season.garment_by_key.get(sent.get("garment", ""))
    role = next((one for one in garment.yarns if one.key == sent.get("role")), None) if garment else None
    if garment is None or role is None:
        return Purpose(lot=lot.key, lot_colour=lot.colour, yarn=lot_name(season, lot)) if lot else Purpose()
    strands = [(role.yarn, role.colour), *((held.yarn, held.colour) for held in role.held_with)]
    lots = tuple(one.key for yarn, colour in strands for one in lots_of(season, yarn, colour, role.lots))
    drawn = drawn_lot(season, role.yarn, role.colour, role.lots)
    return Purpose(
        lot=lot.key if lot and lot.key in lots else drawn.key if drawn else "",
        garment=garment.key,
        garment_name=garment.name,
        role=role.key,
        yarn=" with ".join(f"{season.yarn_by_key[yarn].name}, {colour}" for yarn, colour in strands),
        lots=lots,
        tried=tuple(_tried(sent, garment)),
    )


def _tried(sent: QueryDict, garment: Garment) -> Iterator[tuple[str, str]]:
    names = (*TRIAL_FIELDS, "edges", *(f"{COLOUR}{role.key}" for role in garment.yarns))
    for name in names:
        if name in sent:
            yield name, str(sent[name])[:_LONGEST]
