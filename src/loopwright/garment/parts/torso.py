"""The body between its hem edge and the underarm: how many rows, and how it is shaped at the sides."""

from __future__ import annotations

from dataclasses import dataclass, replace

from loopwright.garment.draft import Needle
from loopwright.garment.draft.section import Side
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.taper import BOTH_EDGES, like_count, taper
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, told

__all__ = ["TorsoPlan", "rows_below", "torso_plan", "torso_up"]

PLAIN_CM = 2.5
"""Left plain at the waist and under the arm, so that the shaping does not crowd them; common practice, no source."""


@dataclass(frozen=True, slots=True)
class TorsoPlan:
    """Counts and rows of the body below the underarm, all round or of one flat piece.

    :ivar edges: of a flat piece that are shaped; None for a tube, shaped at its two sides.
    :ivar below: rows from the top of the hem to the waist; 0 where there is no waist.
    """

    hip: int
    waist: int | None
    bust: int
    rows: int
    below: int
    edges: tuple[Side, ...] | None

    @property
    def step(self) -> int:
        """Give the stitches per shaping row: two at each side of a tube, one at each edge of a flat piece."""
        return 4 if self.edges is None else len(self.edges)


def rows_below(brief: Brief, above: str, above_cm: float, measured: Measured, *, flat: bool) -> int:
    """Give the rows from the top of the hem edge to the underarm; even where the body is worked to and fro.

    Chosen after what lies above, so that the whole length comes out within half a row where it can.

    :param above: what lies above the underarm: ``an armhole`` or ``a yoke``.
    :param above_cm: from the neck end of the shoulder straight down to the underarm, as drafted.
    :raises BadInput: it takes, with the hem edge, more than the length.
    """
    gauge, hem = brief.gauge, brief.options.hem
    length_cm, row_cm = brief.measures.need("length"), 10 / gauge.rows_or_usual_per_10cm
    hem_cm = hem.rows(gauge, even=flat) * 10 / hem.gauge(gauge).rows_or_usual_per_10cm
    wanted = (length_cm - hem_cm - above_cm) / row_cm
    rows = 2 * round(wanted / 2) if flat else round(wanted)
    if rows < 2:
        raise BadInput(
            found=told(f"a length of {{}} with {above} {{}} deep and a hem edge of {{}}", length_cm, above_cm, hem_cm),
            wanted=told("a length of at least {}", above_cm + hem_cm + 2 * row_cm),
            place="length",
        )
    measured.length("length", rows * row_cm + hem_cm + above_cm, "worked to and fro, the body has whole pairs of rows")
    return rows


def torso_plan(
    brief: Brief,
    bust: int,
    rows: int,
    measured: Measured,
    *,
    share: float,
    edges: tuple[Side, ...] | None,
    seam: int = 0,
) -> TorsoPlan:
    """Give the counts of hip and waist that go with a bust count by whole shapings.

    :param bust: stitches at the underarm, seam stitches included.
    :param rows: from the top of the hem edge to the underarm.
    :param share: of the whole girth that this piece goes round: 1 for a tube, a half for one of two flat pieces.
    :param seam: seam stitches of the piece.
    :raises BadInput: a waist that lies outside the body.
    """
    measures, options, gauge = brief.measures, brief.options, brief.gauge
    plan = TorsoPlan(bust, None, bust, rows, 0, edges)
    hip, waist, below = bust, None, 0
    reason = "the sides are shaped in pairs"
    if measures.hip_girth_cm is not None:
        hip = like_count(gauge.stitches_in(measures.hip_girth_cm) * share + seam, bust, plan.step)
        measured.width("hip_girth", (hip - seam) / share, reason)
    if measures.waist_girth_cm is not None:
        waist = like_count(gauge.stitches_in(measures.waist_girth_cm) * share + seam, bust, plan.step)
        measured.width("waist_girth", (waist - seam) / share, reason)
    if waist is not None:
        hem_cm = options.hem.depth_cm
        row_cm = 10 / gauge.rows_or_usual_per_10cm
        wanted = options.waist_above_hem_cm
        below = round((wanted - hem_cm) / row_cm) if wanted is not None else rows // 2
        if not 0 < below < rows:
            raise BadInput(
                found=told("a waist {} above the hem", wanted or hem_cm),
                wanted=told("between {} and {}", hem_cm + row_cm, hem_cm + (rows - 1) * row_cm),
                place="waist_above_hem",
            )
    return replace(plan, hip=hip, waist=waist, below=below)


def torso_up(needle: Needle, plan: TorsoPlan, brief: Brief) -> Needle:
    """Work the body from the top of its hem edge to the underarm."""
    plain = round(PLAIN_CM * brief.gauge.rows_or_usual_per_10cm / 10)
    if plan.waist is None:
        return _tapered(needle, plan.bust, plan.rows, plan, plain_after=plain, place="hip_girth")
    _tapered(needle, plan.waist, plan.below, plan, plain_after=plain // 2, place="waist_girth")
    return _tapered(needle, plan.bust, plan.rows - plan.below, plan, plain_after=plain, place="waist_girth")


def _tapered(needle: Needle, to: int, rows: int, plan: TorsoPlan, *, plain_after: int, place: str) -> Needle:
    plain = min(plain_after, rows // 3)
    if not needle.in_the_round:
        plain = plain // 2 * 2
    return taper(needle, to, rows - plain, step=plan.step, edges=plan.edges or BOTH_EDGES, place=place).plain(plain)
