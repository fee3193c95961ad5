"""How tight a fabric is for its yarn."""

from __future__ import annotations

import math
from typing import Final

from loopwright.fabric.loop import LOOP_RELATIVE_SD, loop_length_mm
from loopwright.fabric.plausible import PLAIN
from loopwright.fabric.swatch import Swatch
from loopwright.records import Record

__all__ = ["TIGHTNESS_BANDS", "Tightness", "swatch_tightness", "tightness_word"]

TIGHTNESS_BANDS: Final = ((0.85, "open"), (1.0, "soft"), (1.2, "normal"), (1.35, "firm"), (math.inf, "board-like"))
"""Upper ends of tightness by word, for smooth wool in hand-knitted stocking stitch: our judgement. Machine-knitted
plain fabric runs about 1.3 to 1.5 (a textile note, read); typical hand-knit gauges 0.96 to 1.19 (derived)."""


class Tightness(Record):
    """Tightness of a plain fabric.

    :ivar factor: √tex over the loop length in mm.
    :ivar sd: one standard deviation: the loop length's error.
    :ivar word: in words.
    :ivar nearly: the word of the next band, where it lies within one standard deviation; else None.
    """

    factor: float
    sd: float
    word: str
    nearly: str | None


def tightness_word(factor: float) -> str:
    """Give the word for a tightness; a value on an edge belongs to the tighter band."""
    return next(word for end, word in TIGHTNESS_BANDS if factor < end)


def swatch_tightness(swatch: Swatch, grist_tex: float) -> Tightness | None:
    r"""Give the tightness of a swatch, :math:`K = \sqrt{tex}/l`, or None where it is not stocking stitch.

    :param grist_tex: of the strand, all yarns held together.
    Source: tightness factor, textile handbooks (from memory); the bands are our judgement and hold for smooth wool.
    """
    if swatch.fabric not in PLAIN:
        return None
    factor = math.sqrt(grist_tex) / loop_length_mm(
        swatch.gauge, grist_tex, "washed" if swatch.is_washed else "unwashed"
    )
    sd, word = factor * LOOP_RELATIVE_SD, tightness_word(factor)
    beside = {tightness_word(factor - sd), tightness_word(factor + sd)} - {word}
    return Tightness(factor=factor, sd=sd, word=word, nearly=beside.pop() if len(beside) == 1 else None)
