"""What a remnant can still knit of one section of a garment of the season."""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.garment import Garment
from loopwright.garment.draft import Piece, Section
from loopwright.need import (
    RowLengths,
    SectionNeed,
    Tail,
    change_rows,
    finishing_from_row,
    long_tails,
    p_rows,
    row_lengths,
    rows_possible,
)
from loopwright.records import Record
from loopwright.season.colour_work import work_of
from loopwright.season.garment_need import drafts_of
from loopwright.season.season import Season
from loopwright.season.settle import settle
from loopwright.uncertainty import Estimate, Origin
from loopwright.units import BadInput
from loopwright.yarn.lot import LABEL_RELATIVE_SD, SCALE_SD_G

__all__ = ["RemnantReport", "remnant_report", "tails_of"]

EVEN: float = 0.5


class RemnantReport(Record):
    """What a remnant can knit of one piece of a section, from a row on.

    :ivar section: its name; ``made`` how often it is made.
    :ivar role: whose yarn it is; its whole strand.
    :ivar rows: rows of the section; ``done`` those that are knitted.
    :ivar have_m: metres of strand in the remnant.
    :ivar need_m: metres from here to the end of the section, its edge included.
    :ivar sureness: chance that is wanted.
    :ivar rows_sure, rows_even: rows that it knits from here as surely as wanted, and as likely as not.
    :ivar p_finish: chance that it finishes the section.
    :ivar finishes_after: rows done from which it finishes the section as surely as wanted; all where it never does.
    :ivar change_after: first and last row after which to change to the other yarn so that both suffice; None where
        there is no other yarn, or no row serves.
    """

    section: str
    made: int
    role: str
    in_the_round: bool
    rows: int
    done: int
    have_m: Estimate
    need_m: Estimate
    sureness: float
    rows_sure: int
    rows_even: int
    p_finish: float
    finishes_after: int
    then_m: Estimate | None = None
    change_after: tuple[int, int] | None = None


def remnant_report(
    season: Season,
    key: str,
    section: str,
    remnant_g: float,
    *,
    done: int = 0,
    role: str | None = None,
    then_g: float | None = None,
) -> RemnantReport:
    """Say what a remnant on the scale can knit of one section.

    :param key: of the garment.
    :param section: a section by its name or key, such as ``sleeve``.
    :param remnant_g: grams of the role's strand, all yarns held together.
    :param done: rows of the section that are knitted.
    :param role: whose yarn; the garment's first when left out.
    :param then_g: grams of another colour of the same yarn, to change to.
    :raises BadInput: no such garment, section or role; a garment that is not drafted; more rows done than it has.
    """
    garment = _garment(season, key)
    played = role or garment.yarns[0].key
    piece, found, needs = _found(season, garment, section, played)
    if not 0 <= done <= found.rows:
        raise BadInput(found=f"{done} rows done", wanted=f"from 0 to {found.rows} of this section", place="--row")
    lengths = _lengths(found, needs, played)
    mass_g = math.fsum(need.mass_g or 0.0 for need in needs)
    tex = mass_g / math.fsum(need.length_m for need in needs) * 1000
    sureness = garment.sureness or season.sureness
    have, then = _metres(remnant_g, tex), None if then_g is None else _metres(then_g, tex)
    window = None if then is None else change_rows(have, then, lengths, done, sureness)
    return RemnantReport(
        section=needs[0].name,
        made=piece.made,
        role=played,
        in_the_round=found.in_the_round,
        rows=found.rows,
        done=done,
        have_m=have,
        need_m=lengths.need(done, found.rows),
        sureness=sureness,
        rows_sure=rows_possible(have, lengths, done, sureness),
        rows_even=rows_possible(have, lengths, done, EVEN),
        p_finish=p_rows(have, lengths, done, found.rows),
        finishes_after=finishing_from_row(have, lengths, sureness),
        then_m=then,
        change_after=None if window is None else (window[0], window[-1]),
    )


def _garment(season: Season, key: str) -> Garment:
    if key not in season.garment_by_key:
        raise BadInput(found=f"the garment '{key}'", wanted=f"one of {', '.join(season.garment_by_key)}")
    return season.garment_by_key[key]


def _found(season: Season, garment: Garment, name: str, role: str) -> tuple[Piece, Section, tuple[SectionNeed, ...]]:
    """Give the piece and section of that name, and what it takes as if nothing of it were knitted yet.

    Where the draft does not say whose yarn knits which rows, any role can knit whole rows, so all roles are summed.
    """
    settled = settle(season, garment.model_copy(update={"knitted": None}))
    if settled.choice is None or not settled.sections:
        raise BadInput(found=f"{garment.name}, not drafted", wanted="a garment whose need is known section by section")
    names = {(need.piece, need.section): need.name for need in settled.sections}
    chosen = [place for place, told in names.items() if name in (told, place[1], f"{place[0]} {place[1]}")]
    exact = [place for place in chosen if names[place] == name]
    if len(exact or chosen) != 1:
        raise BadInput(found=f"the section '{name}'", wanted=f"one of {'; '.join(names.values())}", place="--from")
    ((piece_key, section_key),) = exact or chosen
    swatch = season.swatch_by_key[garment.swatch] if garment.swatch else None
    drafts = drafts_of(garment, settled.pattern, settled.choice, swatch, settled.body, work_of(season, garment))
    assert drafts is not None  # its sections are known
    section = drafts.own.section(piece_key, section_key)
    here = [need for need in settled.sections if (need.piece, need.section) == (piece_key, section_key)]
    needs = tuple(need for need in here if need.role == role or not section.is_coloured)
    if garment.role(role) is None or not needs:
        raise BadInput(
            found=f"the role '{role}'", wanted=f"one of {', '.join(need.role for need in here)}", place="--role"
        )
    return drafts.own.piece(piece_key), section, needs


def _lengths(section: Section, needs: Sequence[SectionNeed], role: str) -> RowLengths:
    whole = needs[0].model_copy(
        update={
            "role": role,
            "length_m": math.fsum(need.length_m for need in needs),
            "own_sd_m": math.fsum(need.own_sd_m for need in needs),
            "shared_sd_m": math.fsum(need.shared_sd_m for need in needs),
        }
    )
    return row_lengths(section, whole)


def _metres(mass_g: float, grist_tex: float) -> Estimate:
    mean = mass_g / grist_tex * 1000
    return Estimate.worked(
        "the remnant",
        f"{mass_g:g} g / {grist_tex:.4g} tex",
        mean,
        math.hypot(SCALE_SD_G / mass_g, LABEL_RELATIVE_SD) * mean,
        "m",
        origin=Origin.MEASURED,
        source="arithmetic; scale ± 1 g and grist ± 3 % (our judgement)",
    )


def tails_of(season: Season, key: str) -> tuple[Tail, ...]:
    """Give the tails of a garment's long-tail cast-ons; none where it cannot be drafted."""
    garment = _garment(season, key)
    settled = settle(season, garment)
    if settled.choice is None:
        return ()
    drafts = drafts_of(garment, settled.pattern, settled.choice, settled.swatch, settled.body, None)
    needle = settled.swatch.needle_mm if settled.swatch else settled.pattern.needle_mm
    return () if drafts is None else long_tails(drafts.own, needle)
