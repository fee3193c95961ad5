"""The lots that may be given a colour, and the garments that are drawn in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from loopwright.season import Season
from loopwright.yarn import Lot

__all__ = ["LotChoice", "SeenIn", "drawn_lot", "kept_words", "lot_choices", "lot_name", "lots_of", "seen_in"]


@dataclass(frozen=True, slots=True)
class LotChoice:
    """A lot that may be given a colour."""

    key: str
    name: str
    shade: str


@dataclass(frozen=True, slots=True)
class SeenIn:
    """A garment that takes from a lot's yarn and colour.

    :ivar instead: the lot whose likeness its pictures show, where that is another; else empty.
    """

    garment: str
    name: str
    instead: str


def lot_choices(season: Season, keys: Sequence[str] | None = None) -> tuple[LotChoice, ...]:
    """Give the lots of the cupboard by yarn, colour and dye lot.

    :param keys: only these; None for all.
    """
    return tuple(
        LotChoice(lot.key, lot_name(season, lot), lot.shade or "")
        for lot in season.cupboard
        if keys is None or lot.key in keys
    )


def lot_name(season: Season, lot: Lot) -> str:
    """Give what a lot is called: its yarn, colour and dye lot."""
    return f"{season.yarn_by_key[lot.yarn].name}, {lot.colour}" + (f", dye lot {lot.dye_lot}" if lot.dye_lot else "")


def kept_words(season: Season, lot_key: str, shade: str, garment: str = "") -> str:
    """Say what was kept a moment ago, as long as it stands; else nothing.

    :param garment: beside whose pictures it is said; they may show another lot.
    """
    lot = next((one for one in season.cupboard if one.key == lot_key), None)
    if lot is None or not shade or lot.shade != shade:
        return ""
    others = [one.instead for one in seen_in(season, lot_key) if one.garment == garment and one.instead]
    instead = f" The pictures show another lot: {others[0]}." if others else ""
    return f"Kept: {lot_name(season, lot)} is shown as {shade} from now on.{instead}"


def lots_of(season: Season, yarn: str, colour: str, named: Sequence[str] = ()) -> list[Lot]:
    """Give the lots of a yarn's colour, those that she named for a role first."""
    lots = [lot for lot in season.cupboard if (lot.yarn, lot.colour) == (yarn, colour)]
    return sorted(lots, key=lambda lot: lot.key not in named)


def drawn_lot(season: Season, yarn: str, colour: str, named: Sequence[str] = ()) -> Lot | None:
    """Give the lot whose likeness pictures show: the first that has one, else the first; None where there is none.

    The rule is that of :func:`loopwright.season.colour_choices.likeness`.
    """
    lots = lots_of(season, yarn, colour, named)
    return next((lot for lot in lots if lot.shade), lots[0] if lots else None)


def seen_in(season: Season, lot_key: str) -> tuple[SeenIn, ...]:
    """Give the garments whose pictures show a lot, or another of its yarn and colour."""
    lot = next((one for one in season.cupboard if one.key == lot_key), None)
    if lot is None:
        return ()
    found: dict[str, SeenIn] = {}
    for garment in season.garments:
        for role in garment.yarns:
            strands = {(role.yarn, role.colour), *((held.yarn, held.colour) for held in role.held_with)}
            drawn = drawn_lot(season, lot.yarn, lot.colour, role.lots)
            if drawn is not None and (lot.yarn, lot.colour) in strands:
                instead = "" if drawn == lot else lot_name(season, drawn)
                found.setdefault(garment.key, SeenIn(garment.key, garment.name, instead))
    return tuple(found.values())
