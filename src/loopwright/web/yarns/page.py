"""What the pages of the yarns show, ready to be laid out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from loopwright.files.cupboard_table.blend_text import blend_text
from loopwright.season import Season
from loopwright.season.wording import Wording
from loopwright.units import write_yarn_length
from loopwright.yarn import Yarn

__all__ = ["YarnRow", "yarn_row"]


@dataclass(frozen=True, slots=True)
class YarnRow:
    """One yarn.

    :ivar facts: label and text: fibres, put-up, grist, metres per 100 g, needle, plies.
    :ivar lots: how many lots of it are in the cupboard, in words.
    :ivar garments: key and name of each garment that is planned with it.
    """

    key: str
    name: str
    facts: tuple[tuple[str, str], ...]
    lots: str
    lot_count: int
    garments: tuple[tuple[str, str], ...]
    note: str


def yarn_row(season: Season, yarn: Yarn, lots_of_yarn: Mapping[str, int], wording: Wording) -> YarnRow:
    """Lay out one yarn."""
    count = lots_of_yarn.get(yarn.key, 0)
    return YarnRow(
        key=yarn.key,
        name=yarn.name or yarn.key,
        facts=_facts(yarn, wording),
        lots=wording.counted(count, "lot") if count else "none in the cupboard",
        lot_count=count,
        garments=tuple(
            (garment.key, garment.name)
            for garment in season.garments
            if any(yarn.key in (role.yarn, *(one.yarn for one in role.held_with)) for role in garment.yarns)
        ),
        note=yarn.note,
    )


def _facts(yarn: Yarn, wording: Wording) -> tuple[tuple[str, str], ...]:
    per_100g_m = yarn.length_m / yarn.mass_g * 100
    facts = [
        ("Fibres", blend_text(yarn.fibres) or "not known"),
        ("A ball", f"{write_yarn_length(yarn.length_m, wording.reader)}, {wording.mass(yarn.mass_g)}"),
        ("Grist", f"{yarn.grist_tex:,.0f} tex"),
        _per_mass(per_100g_m, wording),
    ]
    if yarn.needle_mm is not None:
        facts.append(("Needle on the band", f"{yarn.needle_mm:g} mm"))
    if yarn.plies is not None:
        facts.append(("Plies", str(yarn.plies)))
    return tuple(facts)


def _per_mass(per_100g_m: float, wording: Wording) -> tuple[str, str]:
    """Give metres to 100 g, or for a reader of ounces yards to the ounce."""
    if wording.reader.measures == "imperial":
        return "To the ounce", wording.yarn(per_100g_m * 0.28349523125)
    return "To 100 g", wording.yarn(per_100g_m)
