"""The answer to *What else could I use?* in words."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.need.substitution import VERDICTS, Comparison
from loopwright.season.result import Answer, Tone

__all__ = ["swap_answer"]

MOST_REASONS = 5
_TONES: dict[str, Tone] = {"close": "yes", "works with care": "unsure", "another fabric": "no"}


def swap_answer(ranked: Sequence[Comparison]) -> Answer:
    """Answer from the ranked substitutes, the best first."""
    question = "What else could I use?"
    if not ranked:
        return Answer(key="swap", question=question, sentence="There is no other yarn to compare.", tone="no")
    best = ranked[0]
    works = [one for one in ranked if one.works]
    more = f" {len(works) - 1} more below." if len(works) > 1 else ""
    sentence = {
        VERDICTS[0]: f"{best.substitute.name} comes close to {best.original.name}.{more}",
        VERDICTS[1]: f"{best.substitute.name} works with care.{more}",
        VERDICTS[2]: f"Nothing here makes the same fabric; nearest is {best.substitute.name}.",
    }[best.verdict]
    return Answer(key="swap", question=question, sentence=sentence, tone=_TONES[best.verdict], reasons=_why(best))


def _why(best: Comparison) -> tuple[str, ...]:
    """Say what is off; where nothing is, what is alike."""
    off = [reason.sentence for reason in best.reasons if reason.verdict != VERDICTS[0]]
    return tuple(off or [reason.sentence for reason in best.reasons])[:MOST_REASONS]
