"""A substitute beside its original: every trait with a verdict and a reason in words."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.need.substitution.limits import VERDICTS, Trait, Verdict
from loopwright.need.substitution.original import Original, wish_of
from loopwright.need.substitution.reasons import skin_notes, trait_sentence
from loopwright.need.substitution.score import VERDICT_STEP, offs, predicted, rank_keys
from loopwright.need.substitution.side import Side, side_of, thickness_relative_sd, unlike_share
from loopwright.need.substitution.strands import strand_of
from loopwright.records import Record
from loopwright.uncertainty import Estimate
from loopwright.yarn import Yarn

__all__ = ["Comparison", "Reason", "compare"]


class Reason(Record):
    """One trait: how far off it is, the verdict on it, and why in words.

    :ivar off: difference from the original, in the unit of its limit.
    :ivar basis: where the limit comes from.
    """

    trait: Trait
    verdict: Verdict
    off: float
    sentence: str
    basis: str


class Comparison(Record):
    """A substitute beside its original.

    :ivar thickness_ratio: diameter within the fabric over the original's.
    :ivar verdict: the worst of the reasons'.
    :ivar score: 0 for the same, 9 at most; orders substitutes of one verdict.
    :ivar reasons: in the order of importance: the worst verdicts first.
    :ivar skin: what a fibre that the original has not may do on the skin; no verdict goes by it.
    """

    original: Side
    substitute: Side
    thickness_ratio: Estimate
    verdict: Verdict
    score: float
    reasons: tuple[Reason, ...]
    skin: tuple[str, ...]

    @property
    def works(self) -> bool:
        """Say whether the substitute makes the original's fabric, if with care."""
        return self.verdict != VERDICTS[-1]


def compare(original: Original, yarns: Sequence[Yarn]) -> Comparison:
    """Compare a strand, knitted to the original's gauge, with the original.

    :param yarns: the substitute's, one to three as a rule; name one twice for two strands of it.
    The score is that of :func:`~loopwright.need.substitution.score.rank_keys`, for one row.
    """
    wish, row = wish_of(original), strand_of(yarns)
    fabric = predicted(wish, row)
    own, other = side_of(original, original.strands), side_of(original, yarns)
    ratio = float(fabric.thickness_ratio[0])
    key = float(rank_keys(wish, row)[0])
    reasons = [
        Reason(
            trait=limit.trait,
            verdict=limit.verdict(float(off[0])),
            off=float(off[0]),
            sentence=trait_sentence(limit.trait, own, other, ratio, float(fabric.room[0])),
            basis=f"{limit.basis} ({limit.source})",
        )
        for limit, off in offs(wish, row, fabric, predicted(wish, wish.strand))
    ]
    place = int(key // VERDICT_STEP)
    unlike = unlike_share(own.fibres, other.fibres)
    return Comparison(
        original=own,
        substitute=other,
        thickness_ratio=Estimate.worked(
            "thickness against the original's",
            f"{other.thickness_mm.mean:.3g} / {own.thickness_mm.mean:.3g} mm",
            ratio,
            ratio * thickness_relative_sd(unlike),
            "×",
            source="grist ± 3 % each, spinning ± 4 %, bulk density ± 25 % for what lies another way "
            f"({unlike * 100:.0f} % of the yarn); our judgement",
        ),
        verdict=VERDICTS[place],
        score=key - place * VERDICT_STEP,
        reasons=tuple(sorted(reasons, key=lambda reason: -VERDICTS.index(reason.verdict))),
        skin=skin_notes(own, other),
    )
