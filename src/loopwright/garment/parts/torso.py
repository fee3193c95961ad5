"""The body from its hem to the underarm, or from the underarm down, shaped at the sides."""

from __future__ import annotations

from dataclasses import dataclass, replace

from loopwright.garment.draft import Needle
from loopwright.garment.draft.section import Side
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.taper import BOTH_EDGES, like_count, taper
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput

__all__ = ["TorsoPlan", "torso_down", "torso_plan", "torso_up"]

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
    hem_rows: int
    edges: tuple[Side, ...] | None

    @property
    def step(self) -> int:
        """Give the stitches per shaping row: two at each side of a tube, one at each edge of a flat piece."""
        return 4 if self.edges is None else len(self.edges)


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
    plan = TorsoPlan(bust, None, bust, rows, 0, options.hem.rows(gauge, even=edges is not None), edges)
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
                found=f"a waist {wanted or hem_cm:g} cm above the hem",
                wanted=f"between {hem_cm + row_cm:.3g} and {hem_cm + (rows - 1) * row_cm:.3g} cm",
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


def torso_down(needle: Needle, plan: TorsoPlan, brief: Brief) -> Needle:
    """Work the body from the underarm to the top of its hem edge."""
    plain = round(PLAIN_CM * brief.gauge.rows_or_usual_per_10cm / 10)
    if plan.waist is None:
        needle.plain(min(plain, plan.rows // 3))
        return taper(
            needle,
            plan.hip,
            plan.rows - min(plain, plan.rows // 3),
            step=plan.step,
            edges=plan.edges or BOTH_EDGES,
            place="hip_girth",
        )
    above = plan.rows - plan.below
    needle.plain(min(plain, above // 3))
    taper(
        needle,
        plan.waist,
        above - min(plain, above // 3),
        step=plan.step,
        edges=plan.edges or BOTH_EDGES,
        place="waist_girth",
    )
    rest = min(plain // 2, plan.below // 3)
    needle.plain(rest)
    return taper(
        needle, plan.hip, plan.below - rest, step=plan.step, edges=plan.edges or BOTH_EDGES, place="waist_girth"
    )


def _tapered(needle: Needle, to: int, rows: int, plan: TorsoPlan, *, plain_after: int, place: str) -> Needle:
    plain = min(plain_after, rows // 3)
    if not needle.in_the_round:
        plain = plain // 2 * 2
    return taper(needle, to, rows - plain, step=plan.step, edges=plan.edges or BOTH_EDGES, place=place).plain(plain)
