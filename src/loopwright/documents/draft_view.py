"""What a page shows of a draft: the schematic, every piece section by section, and the measures."""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.documents.fit_view import drawn_body
from loopwright.garment.wanted import MEASURE_NAMES
from loopwright.pictures.schematic import schematic
from loopwright.season import GarmentPlan, Season
from loopwright.season.draft_answer import section_words
from loopwright.season.drafted import DraftedSection
from loopwright.season.remake import draft_of
from loopwright.season.wording import Wording

__all__ = ["DraftView", "MeasureRowView", "PieceView", "SectionView", "draft_view", "schematic_of"]


@dataclass(frozen=True, slots=True)
class SectionView:
    """One section in words: its name, what it begins with, how long it is, what is done, what it leaves."""

    name: str
    fabric: str
    begins: str
    rows: str
    ends: str
    shaping: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PieceView:
    """One piece with its sections; ``made`` is empty where it is made once."""

    name: str
    made: str
    sections: tuple[SectionView, ...]


@dataclass(frozen=True, slots=True)
class MeasureRowView:
    """One finished measure as the reader reads it."""

    name: str
    wanted: str
    drafted: str
    why: str


@dataclass(frozen=True, slots=True)
class DraftView:
    """A draft as the bench and the report show it.

    :ivar wide, narrow: the same schematic laid out for a desk and for a phone.
    """

    wide: str
    narrow: str
    pieces: tuple[PieceView, ...]
    measures: tuple[MeasureRowView, ...]


def schematic_of(season: Season, garment: GarmentPlan, wording: Wording, *, narrow: bool = False) -> str:
    """Draw the pieces of a garment, the wearer's outline behind the body; empty where nothing is drafted."""
    made = draft_of(season, garment)
    if made is None:
        return ""
    wearer = season.garment_by_key[garment.key].wearer
    body = drawn_body(season.body_by_key[wearer]) if wearer is not None else {}
    says = f"The pieces of {garment.name} with their measures: {garment.answer('draft').sentence}"
    return schematic(made, wording.reader, narrow=narrow, body_cm=body if "bust_girth" in body else None, says=says)


def draft_view(season: Season, garment: GarmentPlan, wording: Wording) -> DraftView | None:
    """Lay out the draft of a garment, or give None where there is none."""
    drafted = garment.drafted
    if drafted is None:
        return None
    by_piece: dict[str, list[DraftedSection]] = {}
    for section in drafted.sections:
        by_piece.setdefault(section.piece, []).append(section)
    return DraftView(
        wide=schematic_of(season, garment, wording),
        narrow=schematic_of(season, garment, wording, narrow=True),
        pieces=tuple(
            PieceView(
                name=sections[0].piece_name,
                made=f"make {sections[0].made}" if sections[0].made > 1 else "",
                sections=tuple(_section(section, wording) for section in sections),
            )
            for sections in by_piece.values()
        ),
        measures=tuple(
            MeasureRowView(
                name=MEASURE_NAMES[measure.name],
                wanted=wording.cm(measure.wanted_cm) + (", the usual" if measure.usual else ""),
                drafted=wording.cm(measure.drafted_cm),
                why=wording.told(measure.reason),
            )
            for measure in drafted.measures
        ),
    )


def _section(section: DraftedSection, wording: Wording) -> SectionView:
    how = {
        "cast on": wording.word("cast on"),
        "picked up": "pick up",
        "carried on": "take",
    }[section.begins]
    ends = {"cast off": f", {wording.word('cast off')}", "drawn together": ", draw together"}.get(section.ends, "")
    noun = "round" if section.in_the_round else "row"
    return SectionView(
        name=section.name,
        fabric=wording.fabric(section.fabric),
        begins=f"{how} {section.first:,}",
        rows=f"{section.rows} {noun}{'' if section.rows == 1 else 's'}",
        ends=f"{section.last + section.resting:,}{ends}",
        shaping=section_words(section, wording),
    )
