"""One thing about a body's measures that cannot be, or hardly can be, and how it is told."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from loopwright.body.body import Wearer
from loopwright.body.measures import MEASURES
from loopwright.records import Record
from loopwright.units import Reader, write_length

__all__ = ["BodyDoubt", "Sureness", "capital", "name_of", "usual_text"]

Sureness = Literal["cannot be", "unlikely"]


class BodyDoubt(Record):
    """Measures that do not agree.

    :ivar measures: the keys of the measures involved, the most doubtful first.
    :ivar suspects: those of them that may be wrong; nothing should be worked out from them.
    :ivar sentence: what was found and what would be usual, naming every measure.
    :ivar to_do: what to measure again, and where.
    :ivar source: of what is called usual.
    """

    measures: tuple[str, ...]
    suspects: tuple[str, ...]
    sentence: str
    sureness: Sureness
    to_do: str
    source: str


def name_of(measure: str) -> str:
    """Give the name of a measure as it stands inside a sentence."""
    name = MEASURES[measure].name.partition(" (")[0]
    if measure.startswith("waist_natural"):
        name = "natural waist"
    return name[0].lower() + name[1:]


def capital(sentence: str) -> str:
    """Give a sentence with a capital letter in front."""
    return sentence[:1].upper() + sentence[1:]


def usual_text(measures: Sequence[str], wearer: Wearer, reader: Reader) -> str:
    """Say where nine in ten grown-ups lie, for those measures of which it is known; else nothing."""
    ranges = [(name_of(key), MEASURES[key].usual.get(wearer)) for key in measures]
    said = [
        f"{name} {write_length(usual.p5_cm, reader)} to {write_length(usual.p95_cm, reader)}"
        for name, usual in ranges
        if usual is not None
    ]
    return f"Nine in ten {'women' if wearer is Wearer.WOMAN else 'men'} have: {', '.join(said)}." if said else ""
