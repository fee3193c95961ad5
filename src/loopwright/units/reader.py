"""Who reads: the measures and the words that she is used to."""

from dataclasses import dataclass
from typing import Literal

__all__ = ["Measures", "Reader", "Words"]

Measures = Literal["metric", "imperial"]
Words = Literal["british", "american"]


@dataclass(frozen=True, slots=True)
class Reader:
    """How to write for one person.

    Args:
        measures: centimetres, metres and grams, or inches, yards and ounces.
        words: British trade terms (tension, cast off) or American ones (gauge, bind off).
    """

    measures: Measures = "metric"
    words: Words = "british"
