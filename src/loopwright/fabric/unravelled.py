"""A measured loop: so many stitches unravelled, and the yarn that came out."""

from __future__ import annotations

from typing import Annotated, Any, Final

from pydantic import BeforeValidator, PlainSerializer, WithJsonSchema

from loopwright.records import Record
from loopwright.units import BadInput, UnreadableQuantity, read_window_count

__all__ = ["Unravelled", "UnravelledField"]

PLAUSIBLE_MM: Final = (3.0, 150.0)
"""Yarn in one stitch that a hand-knitter can have, in mm; our judgement."""
_WANTED: Final = 'stitches and the yarn that they gave, such as "40 sts = 52 cm"'


class Unravelled(Record):
    """Stitches of the washed swatch, away from its edges, unravelled and the yarn measured straight, not stretched.

    :ivar text: as it was written; kept, so that a file comes back as it was.
    :ivar stitches: how many were unravelled.
    :ivar length_cm: the length of the strand that they gave.
    """

    text: str
    stitches: float
    length_cm: float

    def __eq__(self, other: object) -> bool:
        """Say whether the same was measured, in whatever words."""
        if not isinstance(other, Unravelled):
            return NotImplemented
        return (self.stitches, self.length_cm) == (other.stitches, other.length_cm)

    def __hash__(self) -> int:
        return hash((self.stitches, self.length_cm))

    @property
    def stitch_mm(self) -> float:
        """Give the yarn in one stitch in mm: ``10 × length / stitches``. Source: definition of loop length."""
        return 10 * self.length_cm / self.stitches

    @classmethod
    def read(cls, text: str) -> Unravelled:
        """Read a measurement such as ``40 sts = 52 cm`` or ``30 sts = 18 in``.

        :raises BadInput: it is none, it speaks of rows or of a rate, or no stitch of a hand-knitter is that long.
        """
        try:
            read = read_window_count(text)
        except UnreadableQuantity as fault:
            raise BadInput(found=text, wanted=_WANTED, hint=fault.hint) from fault
        if read.stitches_per_10cm is None or read.rows_per_10cm is not None or read.across_cm is None:
            raise BadInput(found=text, wanted=_WANTED)
        length_cm = read.across_cm
        stitches = round(read.stitches_per_10cm * length_cm / 10, 6)
        stitch_mm = 10 * length_cm / stitches
        low, high = PLAUSIBLE_MM
        if not low <= stitch_mm <= high:
            raise BadInput(
                found=f"{text}, that is {stitch_mm:.3g} mm a stitch",
                wanted=f"from {low:g} to {high:g} mm a stitch",
                hint="write the length of the yarn that came out, not the width of the knitting",
            )
        return cls(text=text.strip(), stitches=stitches, length_cm=length_cm)


def _read(value: Any) -> Any:
    if isinstance(value, Unravelled) or value is None:
        return value
    if not isinstance(value, str):
        raise BadInput(found=repr(value), wanted=_WANTED)
    return Unravelled.read(value)


UnravelledField = Annotated[
    Unravelled,
    BeforeValidator(_read),
    PlainSerializer(lambda measured: measured.text, return_type=str, when_used="json"),
    WithJsonSchema(
        {"type": "string", "description": "stitches unravelled and the yarn they gave", "examples": ["40 sts = 52 cm"]}
    ),
]
"""A measurement that reads ``40 sts = 52 cm``."""
