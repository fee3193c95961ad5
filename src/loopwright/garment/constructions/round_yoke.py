"""Round yoke: body and sleeves meet in one ring, which three or four rounds bring in to the neck.

Order of preference: bust, upper arm, depth of the yoke, neck, underarm, length. The depth is measured straight down
from the neck. The neck is one girth: a width that is stated is taken as that of a ring, else it is 40 % of the bust;
its front lies lower than its back by the short rows that raise the back, and by nothing else.

Sources: the percentage system (1971 and 1989) for every proportion; see
:mod:`loopwright.garment.parts.round_yoke_counts`.
"""

from __future__ import annotations

import math

from loopwright.garment.draft import Draft, lawful
from loopwright.garment.parts.back_neck import raise_rows
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.round_yoke_counts import RoundYokeCounts, round_yoke_counts
from loopwright.garment.parts.round_yoke_rows import neck_edge, raised_over, round_yoke
from loopwright.garment.parts.yoke_body import refuse_options
from loopwright.garment.parts.yoke_counts import bust_of_yoke
from loopwright.garment.parts.yoke_whole import garment_of_yoke
from loopwright.garment.shaping import ShortRows
from loopwright.garment.wanted import Brief
from loopwright.units import Told, told

__all__ = ["draft_round_yoke"]


def draft_round_yoke(brief: Brief) -> Draft:
    """Give the draft of a garment with a round yoke, from hem and cuffs up or, if so chosen, from the neck down.

    A closed one is worked in the round but for the short rows that raise its back; one that opens in front to and fro
    in one piece, its sleeves in the round.

    :param brief: bust, upper arm, wrist, sleeve, length and armhole depth stated
        (:func:`~loopwright.garment.wanted.usual_measures` fills in).
    :raises BadInput: measures that cannot make it, or options that it cannot honour: flat in pieces, no sleeves, short
        rows at the bust, any neckline but a round one, which is the only one that a ring can have.
    """
    refuse_options(brief, ("round",))
    measured = Measured(brief.measures, brief.gauge)
    counts = round_yoke_counts(brief, *bust_of_yoke(brief, measured))
    raised = raise_rows(brief, brief.options.back_neck_raise_cm, raised_over(counts))
    _note(brief, counts, raised, measured)
    yoke = round_yoke(brief, counts, raised, up=brief.options.direction != "top down")
    depth_cm, edge = counts.rows * 10 / brief.gauge.rows_or_usual_per_10cm, neck_edge(counts, yoke, brief)
    notes = _notes(brief, counts, raised)
    return lawful(garment_of_yoke(brief, yoke, counts.meeting, depth_cm, [edge], measured, notes))


def _note(brief: Brief, counts: RoundYokeCounts, raised: ShortRows, measured: Measured) -> None:
    measured.rows("armhole_depth", counts.rows, "worked to and fro, the yoke has whole pairs of rows")
    measured.width(
        "neck_width",
        (counts.neck + counts.meeting.band) / math.pi,
        "the neck is a ring, no narrower than lets the head pass",
    )
    measured.rows("front_neck_depth", raised.rows, "the front of a ring lies lower only by the raise of its back")
    measured.length("back_neck_depth", 0.0, "the back of a ring is raised by short rows, it does not dip")


def _notes(brief: Brief, counts: RoundYokeCounts, raised: ShortRows) -> list[Told]:
    base, *after = counts.plateaus
    notes = [
        told(f"The yoke goes from {base} stitches to {', '.join(map(str, after))} in {counts.rounds} shaping rounds.")
    ]
    off = base - counts.meeting.yoke
    if brief.options.repeat is not None:
        ease = f", {abs(off)} {'more' if off > 0 else 'fewer'} than meet there" if off else ""
        begins = f"All its counts but the neck's hold the repeat {brief.options.repeat}; it begins with {base}{ease}"
        width = f": {{}} {'wider' if off > 0 else 'narrower'}" if off else ""
        notes.append(told(f"{begins}{width}.", *([brief.gauge.width_cm(abs(off))] if off else [])))
    if raised.pairs:
        notes.append(told(f"Short rows over the back half of the neck raise the back by {raised.rows} rows."))
    return notes
