"""One count on a swatch: what she wrote, and what it comes to over 10 cm."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Annotated, Any, Final

from pydantic import AfterValidator, BeforeValidator, PlainSerializer, WithJsonSchema

from loopwright.fabric.gauge import PLAUSIBLE_PER_10CM, Gauge
from loopwright.records import Record
from loopwright.units import BadInput, read_window_count

__all__ = ["Count", "Counts"]

MOST_COUNTS: Final = 50
ONE_FIELD = (9.9, 10.3)
"""4 in is 10.16 cm; the trade takes it and 10 cm for one window. Source: common practice, cross-read."""


class Count(Record):
    """Stitches, rows or both, counted in one place.

    :ivar text: as it was written; kept, so that a file comes back as it was.
    :ivar stitches_per_10cm, rows_per_10cm: what it comes to over 10 cm; None where it was not counted.
    :ivar across_cm, along_cm: the window of the stitches and of the rows; None where a rate was written.
    """

    text: str
    stitches_per_10cm: float | None
    rows_per_10cm: float | None
    across_cm: float | None
    along_cm: float | None

    def __eq__(self, other: object) -> bool:
        """Say whether the same was counted, in whatever words: 4 in and 10.16 cm are one window."""
        return self._counted() == other._counted() if isinstance(other, Count) else NotImplemented

    def __hash__(self) -> int:
        return hash(self._counted())

    def _counted(self) -> tuple[float | None, ...]:
        return self.stitches_per_10cm, self.rows_per_10cm, self.across_cm, self.along_cm

    @classmethod
    def read(cls, text: str) -> Count:
        """Read a count such as ``22 sts x 30 rows = 10 cm``, ``11 sts / 2 in`` or ``15 rows = 5 cm``.

        :raises BadInput: it is no count, it counts nothing, or it is none that a hand-knitter can have.
        """
        read = read_window_count(text)
        low, high = PLAUSIBLE_PER_10CM
        for number in (read.stitches_per_10cm, read.rows_per_10cm):
            if number is not None and not low <= number <= high:
                raise BadInput(
                    found=f'"{text}", that is {number:.4g} to 10 cm', wanted=f"from {low:g} to {high:g} to 10 cm"
                )
        return cls(
            text=text.strip(),
            stitches_per_10cm=read.stitches_per_10cm,
            rows_per_10cm=read.rows_per_10cm,
            across_cm=read.across_cm,
            along_cm=read.along_cm,
        )

    @property
    def stitch_weight(self) -> float:
        """Give how much its stitches weigh against a count over 10 cm; see :func:`window_weight`."""
        return window_weight(self.across_cm)

    @property
    def row_weight(self) -> float:
        """Give how much its rows weigh against a count over 10 cm."""
        return window_weight(self.along_cm)


def window_weight(window_cm: float | None) -> float:
    """Give the weight of a count in a window of this length: ``window / 10 cm``.

    Reading the edges errs by the same part of a stitch in a short window as in a long one, which speaks for the square;
    the fabric itself differs from place to place, which speaks for none. Linear lies between them: our judgement.
    A rate, such as 5.5 st/in, says nothing of its window and weighs as 10 cm.
    """
    if window_cm is None or ONE_FIELD[0] <= window_cm <= ONE_FIELD[1]:
        return 1.0
    return window_cm / 10


def _read_one(value: Any) -> Any:
    if isinstance(value, Count):
        return value
    if isinstance(value, Gauge):
        return Count.read(_gauge_text(value))
    if not isinstance(value, str):
        raise BadInput(found=repr(value), wanted='a count such as "22 sts x 30 rows = 10 cm"')
    return Count.read(value)


def _gauge_text(gauge: Gauge) -> str:
    stitches = f"{gauge.stitches_per_10cm!r} sts".replace(".0 ", " ")
    rows = "" if gauge.rows_per_10cm is None else f" x {gauge.rows_per_10cm!r} rows".replace(".0 ", " ")
    return f"{stitches}{rows} = 10 cm"


def _read(value: Any) -> Any:
    if value is None:
        return ()
    if isinstance(value, str | Gauge | Count):
        value = (value,)
    if not isinstance(value, Sequence):
        raise BadInput(found=repr(value), wanted='a count such as "22 sts x 30 rows = 10 cm", or several in a list')
    if len(value) > MOST_COUNTS:
        raise BadInput(found=f"{len(value)} counts", wanted=f"at most {MOST_COUNTS}")
    return tuple(_read_one(one) for one in value)


def _with_stitches(counts: tuple[Count, ...]) -> tuple[Count, ...]:
    if counts and all(count.stitches_per_10cm is None for count in counts):
        raise BadInput(
            found=f"rows alone ({counts[0].text})", wanted='a count of stitches too, such as "22 sts = 10 cm"'
        )
    return counts


def _write(counts: Iterable[Count]) -> str | list[str]:
    texts = [count.text for count in counts]
    return texts[0] if len(texts) == 1 else texts


Counts = Annotated[
    tuple[Count, ...],
    BeforeValidator(_read),
    AfterValidator(_with_stitches),
    PlainSerializer(_write, when_used="json"),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "string"},
                {"type": "array", "items": {"type": "string"}, "minItems": 1, "maxItems": MOST_COUNTS},
            ],
            "description": "stitches and rows over a stated length, or several such counts in a list",
            "examples": ["22 sts x 30 rows = 10 cm", "11 sts / 2 in"],
        }
    ),
]
"""The counts of one side of a swatch's wash: one text, or a list of them. Empty when it was not counted."""
