"""A garment drafted: what it is drafted from, and what comes out, for pages and machines."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from loopwright.body import Body
from loopwright.fabric import Swatch
from loopwright.garment import Garment
from loopwright.garment.constructions import draft
from loopwright.garment.draft import BrokenDraft, Draft, shaping_runs
from loopwright.garment.wanted import Brief, DraftWish, GarmentMeasures, usual_measures, with_sleeves
from loopwright.pattern import Construction, PatternFacts
from loopwright.records import Record
from loopwright.uncertainty import Estimate
from loopwright.units import BadInput, Told

__all__ = [
    "Drafted",
    "DraftedMeasure",
    "DraftedSection",
    "as_wished",
    "brief_for",
    "draft_for",
    "drafted_stitches",
    "summary_of",
]

draft_once = lru_cache(maxsize=256)(draft)
"""The same brief gives the same draft, so that a page which asks again while something else is moved need not wait."""

OWN_RELATIVE_SD = 0.01
PATTERN_RELATIVE_SD = 0.05
"""How far the stitches knitted stray from the draft's, as a share: of her own draft, and of our draft of a pattern,
whose maker shaped it in her own way; our judgement."""


class DraftedSection(Record):
    """One section: what it begins with, how long it is, what is done to it, what it leaves.

    :ivar made: how often its piece is made.
    :ivar rows: rows, or rounds where ``in_the_round``.
    :ivar shaping: runs of shaping as (kind, sides, stitches, places, first row, ((rows, times), …)).
    """

    piece: str
    piece_name: str
    made: int
    key: str
    name: str
    fabric: str
    in_the_round: bool
    begins: str
    ends: str
    first: int
    last: int
    resting: int
    closed: int
    rows: int
    stitches: int
    shaping: tuple[tuple[str, tuple[str, ...], int, int, int, tuple[tuple[int, int], ...]], ...] = ()


class DraftedMeasure(Record):
    """One finished measure, wanted and drafted, in cm.

    :ivar usual: whether nobody stated it and the usual was taken.
    :ivar reason: what kept it from lying within half a stitch or half a row; empty where it does.
    """

    name: str
    wanted_cm: float
    drafted_cm: float
    usual: bool
    reason: Told


class Drafted(Record):
    """A draft in plain figures: every section, every measure, and what to know while knitting."""

    construction: str
    direction: str
    stitches: int
    area_cm2: float
    sections: tuple[DraftedSection, ...]
    measures: tuple[DraftedMeasure, ...]
    notes: tuple[Told, ...] = ()


def as_wished(finished_cm: Mapping[str, float], wish: DraftWish | None) -> dict[str, float]:
    """Give finished measures with her own in their place and her sleeves."""
    known = {name: cm for name, cm in finished_cm.items() if f"{name}_cm" in GarmentMeasures.model_fields}
    measures = GarmentMeasures.model_validate(known)
    if wish is None:
        return dict(measures.known())
    return dict(with_sleeves(wish.measures.filled(measures), wish.sleeves, wish.measures).known())


def brief_for(
    garment: Garment,
    pattern: PatternFacts,
    finished_cm: Mapping[str, float],
    swatch: Swatch | None,
    body: Body | None,
) -> Brief:
    """Give what a garment is drafted from.

    Without its sleeves a garment with set-in ones is a sleeveless one, whose armholes are shaped for it.

    :param finished_cm: finished measures with all changes, as :func:`as_wished` gives them.
    """
    wish = garment.draft or DraftWish()
    options = wish.options.model_copy(update={"opens_in_front": wish.opens_in_front or pattern.opens_in_front})
    construction = wish.construction or pattern.construction
    if construction is Construction.SET_IN and wish.sleeves == "none":
        construction = Construction.SLEEVELESS
    return Brief(
        construction=construction,
        measures=GarmentMeasures.model_validate(dict(finished_cm)),
        gauge=swatch.gauge if swatch else pattern.gauge,
        options=options,
        fabric=swatch.fabric if swatch else pattern.fabric,
        head_girth_cm=None if body is None else body.head_girth_cm,
    )


def draft_for(brief: Brief) -> Draft:
    """Draft a garment, once for equal briefs.

    :raises BadInput: measures that cannot make it.
    """
    return draft_once(brief)


def try_draft(
    garment: Garment,
    pattern: PatternFacts,
    finished_cm: Mapping[str, float],
    swatch: Swatch | None,
    body: Body | None,
) -> tuple[Drafted | None, Told]:
    """Give the draft of a garment, or why it cannot be drafted."""
    brief = brief_for(garment, pattern, finished_cm, swatch, body)
    try:
        return summary_of(brief, draft_for(brief)), Told()
    except BadInput as fault:
        return None, fault.told
    except BrokenDraft as broken:
        return None, Told.of(f"these measures bring out a fault of ours ({broken}); please tell us")


def drafted_stitches(drafted: Drafted, *, own: bool) -> Estimate:
    """Give the stitches of a garment as drafted, with the doubt that she knits it otherwise.

    :param own: whether it is her own draft, and not ours of a pattern that has counts of its own.
    """
    relative = OWN_RELATIVE_SD if own else PATTERN_RELATIVE_SD
    pieces = {section.piece: section for section in drafted.sections}
    working = " + ".join(
        f"{piece.piece_name} {sum(one.stitches for one in drafted.sections if one.piece == key):,}"
        + (f" × {piece.made}" if piece.made > 1 else "")
        for key, piece in pieces.items()
    )
    return Estimate.worked(
        "stitches of the draft, row by row",
        working,
        drafted.stitches,
        relative * drafted.stitches,
        "sts",
        source="sum over the rows; doubt our judgement",
    )


def summary_of(brief: Brief, made: Draft) -> Drafted:
    """Give a draft in plain figures."""
    stated = {name for name, _ in brief.measures.known()}
    wanted = dict(usual_measures(brief).known())
    return Drafted(
        construction=made.construction,
        direction=made.direction,
        stitches=made.stitches,
        area_cm2=made.area_cm2,
        sections=tuple(
            DraftedSection(
                piece=piece.key,
                piece_name=piece.name,
                made=piece.made,
                key=one.key,
                name=one.name,
                fabric=one.fabric,
                in_the_round=one.in_the_round,
                begins=one.begins,
                ends=one.ends,
                first=one.first,
                last=one.last,
                resting=one.resting,
                closed=one.closed,
                rows=one.rows,
                stitches=one.worked,
                shaping=tuple(
                    (str(run.kind), run.sides, run.stitches, run.places, run.first_row, run.every)
                    for run in shaping_runs(one)
                ),
            )
            for piece, one in made.sections()
        ),
        measures=tuple(
            DraftedMeasure(
                name=check.name,
                wanted_cm=wanted.get(check.name, check.wanted_cm),
                drafted_cm=check.drafted_cm,
                usual=check.name not in stated,
                reason=check.reason,
            )
            for check in made.checks
        ),
        notes=made.notes,
    )
