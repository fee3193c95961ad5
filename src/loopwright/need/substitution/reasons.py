"""Each trait of a substitute in words."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from loopwright.need.substitution.fibre_traits import CARE_NOT_STATED
from loopwright.need.substitution.limits import LIMITS, Trait
from loopwright.need.substitution.side import RANK_BASIS, Side
from loopwright.yarn import FIBRES

__all__ = ["range_words", "skin_notes", "trait_sentence"]

Say = Callable[[Side, Side, float, float], str]
NEW_FIBRE_FROM_PERCENT: Final = 1.0


def trait_sentence(trait: Trait, own: Side, other: Side, thickness_ratio: float, room: float) -> str:
    """Say how a trait of the substitute stands to the original's.

    :param own, other: the original's side and the substitute's.
    :param room: loop length over the shortest it can have.
    """
    return _SAY[trait](own, other, thickness_ratio, room)


def skin_notes(own: Side, other: Side) -> tuple[str, ...]:
    """Give what is known of each fibre on the skin that the substitute has and the original has not."""
    new = [
        fibre
        for fibre, percent in other.fibres.items()
        if percent >= NEW_FIBRE_FROM_PERCENT and fibre in FIBRES and fibre not in own.fibres
    ]
    notes = [f"New on the skin, {fibre}: {FIBRES[fibre].skin_note}." for fibre in new]
    if not other.fibres or "other" in other.fibres:
        notes.append("Not all of its fibres are stated: ask before someone with an allergy wears it.")
    return tuple(notes)


def _thickness(own: Side, other: Side, ratio: float, _room: float) -> str:
    sizes = f"{other.thickness_mm.mean:.2f} against {own.thickness_mm.mean:.2f} mm in the fabric"
    off = abs(ratio - 1)
    if off <= LIMITS["thickness"].close:
        return f"About as thick: {sizes}."
    way, lies = ("thicker", "tighter") if ratio > 1 else ("thinner", "more open")
    said = f"{off * 100:.0f} % {way}, {sizes}: the same stitches lie {lies}"
    return f"{said}; it covers alike at about {other.own_stitches_per_10cm.mean:.3g} sts to 10 cm."


def _squeeze(_own: Side, _other: Side, _ratio: float, room: float) -> str:
    if 1 - room <= LIMITS["squeeze"].close:
        return "The stitch has room for the yarn."
    return f"The stitch is short for the yarn, {room:.2f} of the shortest loop it lies in unsqueezed: a stiff fabric."


def _mass(own: Side, other: Side, _ratio: float, _room: float) -> str:
    change = other.mass_g_m2.mean / own.mass_g_m2.mean - 1
    sizes = f"{other.mass_g_m2.mean:.0f} against {own.mass_g_m2.mean:.0f} g/m²"
    if abs(change) < 0.005:
        return f"As heavy: {sizes}."
    return f"{abs(change) * 100:.0f} % {'heavier' if change > 0 else 'lighter'}: {sizes}."


def _wash(part: str) -> Say:
    def say(own: Side, other: Side, _ratio: float, _room: float) -> str:
        if own.wash is None or other.wash is None:
            return f"What washing does to its {part} is not known: {_whose(other.wash is None)} fibres are not stated."
        theirs, ours = (getattr(side.wash, f"{part}_pct") for side in (other, own))
        said = f"The first wash usually changes its {part} by {range_words(theirs)}"
        return f"{said}, the original's by {range_words(ours)}."

    return say


def _whose(substitute: bool) -> str:
    return "its" if substitute else "the original's"


def range_words(ends: tuple[float, float]) -> str:
    """Write a range of percent in whole points, with signs: ``−2 to +4 %``."""
    low, high = (round(end) for end in ends)
    return f"{_signed(low)} to {_signed(high)} %"


def _signed(points: int) -> str:
    return f"{'+' if points > 0 else '−' if points < 0 else ''}{abs(points)}"


def _rank(trait: Trait, more: str, less: str) -> Say:
    def say(own: Side, other: Side, _ratio: float, _room: float) -> str:
        theirs, ours = getattr(other, trait), getattr(own, trait)
        if theirs is None or ours is None:
            return f"{trait.capitalize()} cannot be compared: {_whose(theirs is None)} fibres are not stated."
        sizes = f"{trait} {theirs:.1f} against {ours:.1f} of 10"
        if abs(theirs - ours) <= LIMITS[trait].close:
            return f"Alike in {sizes}."
        return f"{more if theirs > ours else less}: {sizes} ({RANK_BASIS})."

    return say


def _care(own: Side, other: Side, _ratio: float, _room: float) -> str:
    if other.care.key == CARE_NOT_STATED:
        return "How it is washed is not known, for want of its fibres: by hand at 30 °C until the band says otherwise."
    if other.care.step > own.care.step:
        return f"More delicate to wash: {other.care.words}; the original: {own.care.words}."
    return f"Washed {'as the original' if other.care.step == own.care.step else 'with less care'}: {other.care.words}."


_SAY: Final[dict[Trait, Say]] = {
    "thickness": _thickness,
    "squeeze": _squeeze,
    "mass": _mass,
    "wash_length": _wash("length"),
    "wash_width": _wash("width"),
    "drape": _rank("drape", "It falls more softly", "It stands more stiffly"),
    "warmth": _rank("warmth", "Warmer", "Cooler"),
    "elasticity": _rank("elasticity", "It springs back more", "It springs back less, so ribs and cables sag sooner"),
    "care": _care,
}
