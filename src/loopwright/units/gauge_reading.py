"""Reads a gauge (tension) line: stitches, and perhaps rows, over a measured window.

gauge   = group { separator group }            at most one count of stitches and one of rows in all
group   = count [ separator count ] link window
count   = number ( st | sts | stitches | rows | rounds | ridges … )
link    = "/" | "=" | "per" | "to" | "over" | "in" | "on" …
window  = span [ "x" span ] [ other ]          two spans: across stitches, then along rows
span    = [ number ] unit                      no number means one
other   = "(" window ")" | "/" window          the same field once more, in the other system
"""

from dataclasses import dataclass
from fractions import Fraction

from loopwright.units.errors import UnreadableQuantity
from loopwright.units.factors import Unit, find_unit
from loopwright.units.fraction import read_number
from loopwright.units.reading import exact_float, unit_hint
from loopwright.units.tokens import Cursor, lex

__all__ = ["GaugeCount", "WindowCount", "read_gauge", "read_window_count"]

_WANTED = "a gauge with its window, such as 22 sts × 30 rows to 10 cm or 28 sts / 4 in"
_STITCHES = ("st", "sts", "stitch", "stitches")
_ROWS = ("row", "rows", "round", "rounds", "rnd", "rnds")
_RIDGES = ("ridge", "ridges")
_BETWEEN_COUNTS = ("x", "×", "and", "&", "+", ",", ";", "by", "/")
_TIMES = ("x", "×", "by")
_LINKS = ("/", "=", ":", "per", "to", "over", "in", "on", "across", "for")
_FILLERS = ("the", "a", "an", "each", "every", "one")
_ONE_FIELD = Fraction(2, 100)
"""4 in is 1.6 % more than 10 cm; two windows that differ by more are not one field."""


@dataclass(frozen=True, slots=True)
class GaugeCount:
    """Stitches and rows in a field of 10 cm by 10 cm.

    Args:
        stitches_per_10cm: stitches in 10 cm of width, above zero.
        rows_per_10cm: rows or rounds in 10 cm of length, above zero; None where the text says nothing of
            rows.
    """

    stitches_per_10cm: float
    rows_per_10cm: float | None = None


@dataclass(frozen=True, slots=True)
class WindowCount:
    """One count on a swatch, with the window that it was taken in; stitches, rows, or both.

    Args:
        stitches_per_10cm: stitches in 10 cm of width; None where only rows were counted.
        rows_per_10cm: rows in 10 cm of length; None where only stitches were counted.
        across_cm: width of the window in which the stitches were counted; None where the text gives a rate
            (`5.5 st/in`) and so says nothing of the window.
        along_cm: length of the window of the rows, likewise.
    """

    stitches_per_10cm: float | None
    rows_per_10cm: float | None
    across_cm: float | None
    along_cm: float | None


@dataclass(frozen=True, slots=True)
class _Window:
    across_cm: Fraction
    along_cm: Fraction
    metric: bool
    stated: bool


def read_gauge(text: str) -> GaugeCount:
    """Stitches and rows per 10 cm from a gauge as patterns and ball bands print it.

    Read are, for example: `28 sts / 4 in`, `5.5 st/in`, `11 sts = 2 in`, `22 st x 30 rows = 10 cm`,
    `22 sts and 30 rows over 10cm`, `22 sts × 30 rows = 10 × 10 cm`, `50 st = 11 in, 25 rows = 3 in` and
    `20 sts, 28 rounds to 4" (10 cm)`. Rounds count as rows; a garter ridge counts as two rows.

    4 in is exactly 10.16 cm and is reckoned so when it stands alone. Where inches and centimetres are both
    printed the centimetre window wins: the trade treats 4 in and 10 cm as one field, and the person who
    knitted the sample measured only one of them; applying the 1.6 % between them would correct a difference
    that nobody measured.

    Raises:
        UnreadableQuantity: no stitches or no window, an unknown word, a count or a window of zero, stitches
            or rows told twice, or two windows more than 2 % apart.

    >>> read_gauge('20 sts, 28 rounds to 4" (10 cm)')
    GaugeCount(stitches_per_10cm=20.0, rows_per_10cm=28.0)
    """
    return _GaugeReader(text).read()


def read_window_count(text: str) -> WindowCount:
    """One count on a swatch, as `read_gauge` reads it, but rows may stand alone and the window is kept.

    Raises:
        UnreadableQuantity: as `read_gauge`, except that the stitches may be missing.

    >>> read_window_count("15 rows = 5 cm")
    WindowCount(stitches_per_10cm=None, rows_per_10cm=30.0, across_cm=None, along_cm=5.0)
    """
    return _GaugeReader(text).read_window()


class _GaugeReader:
    """Goes once through one gauge line."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.cursor = Cursor(lex(text))
        self.stitches_per_cm: Fraction | None = None
        self.rows_per_cm: Fraction | None = None
        self.across_cm: Fraction | None = None
        self.along_cm: Fraction | None = None

    def read(self) -> GaugeCount:
        self.groups()
        if self.stitches_per_cm is None:
            raise self.fault("the stitches are missing")
        return GaugeCount(self.exact(10 * self.stitches_per_cm), self.exact_or_none(self.rows_per_cm, 10))

    def read_window(self) -> WindowCount:
        self.groups()
        return WindowCount(
            self.exact_or_none(self.stitches_per_cm, 10),
            self.exact_or_none(self.rows_per_cm, 10),
            self.exact_or_none(self.across_cm),
            self.exact_or_none(self.along_cm),
        )

    def exact(self, value: Fraction) -> float:
        return exact_float(value, self.text, _WANTED)

    def exact_or_none(self, value: Fraction | None, times: int = 1) -> float | None:
        return None if value is None else self.exact(times * value)

    def groups(self) -> None:
        self.group()
        while not self.cursor.at_end:
            rest = self.cursor.peek()
            if not self.count_follows():
                raise self.fault(f'only counts and windows belong here, not "{self.text[rest.start :]}"')
            self.cursor.skip(*_BETWEEN_COUNTS)
            self.group()

    def fault(self, hint: str | None = None) -> UnreadableQuantity:
        return UnreadableQuantity(self.text, _WANTED, hint=hint)

    def number(self) -> Fraction:
        token = self.cursor.take()
        if token.kind != "number":
            raise self.fault(f'a number should stand before "{token.text}"' if token.text else None)
        try:
            value = read_number(token.text)
        except UnreadableQuantity as problem:
            raise self.fault(problem.hint) from problem
        if value <= 0:
            raise self.fault("counts and windows are above zero")
        return value

    def group(self) -> None:
        counts = [self.count()]
        while self.count_follows():
            self.cursor.skip(*_BETWEEN_COUNTS)
            counts.append(self.count())
        window = self.window_after_link()
        for value, of_stitches in counts:
            self.keep(value, window, of_stitches=of_stitches)

    def keep(self, value: Fraction, window: _Window, *, of_stitches: bool) -> None:
        already = self.stitches_per_cm if of_stitches else self.rows_per_cm
        if already is not None:
            raise self.fault("stitches or rows are told twice")
        if of_stitches:
            self.stitches_per_cm = value / window.across_cm
            self.across_cm = window.across_cm if window.stated else None
        else:
            self.rows_per_cm = value / window.along_cm
            self.along_cm = window.along_cm if window.stated else None

    def count(self) -> tuple[Fraction, bool]:
        """How many, and whether of stitches (else of rows)."""
        value = self.number()
        word = self.cursor.take()
        if word.name in _STITCHES:
            return value, True
        if word.name in _ROWS or word.name in _RIDGES:
            return value * (2 if word.name in _RIDGES else 1), False
        raise self.fault(f'say "sts" or "rows" after {value}')

    def count_follows(self) -> bool:
        """Whether a separator (or nothing) and then a number of stitches or rows come next."""
        here = self.cursor.peek()
        ahead = 1 if here.kind != "number" and here.name in _BETWEEN_COUNTS else 0
        word = self.cursor.peek(ahead + 1).name
        return self.cursor.peek(ahead).kind == "number" and word in (*_STITCHES, *_ROWS, *_RIDGES)

    def window_after_link(self) -> _Window:
        linked = self.cursor.skip(*_LINKS)
        while self.cursor.skip(*_FILLERS):
            linked = True
        if not linked:
            raise self.fault("over what width? add a window such as = 10 cm")
        return self.window()

    def window(self) -> _Window:
        first = self.field()
        if self.cursor.skip("("):
            second = self.field()
            if not self.cursor.skip(")"):
                raise self.fault("a bracket is not closed")
        elif self.other_field_follows():
            self.cursor.take()
            second = self.field()
        else:
            return first
        return self.same_field(first, second)

    def other_field_follows(self) -> bool:
        return self.cursor.peek().name in ("/", "or", "=") and not self.count_follows()

    def same_field(self, first: _Window, second: _Window) -> _Window:
        """One field printed twice: the metric one."""
        sides = ((first.across_cm, second.across_cm), (first.along_cm, second.along_cm))
        if any(abs(one - other) > _ONE_FIELD * max(one, other) for one, other in sides):
            raise self.fault("the two windows are not the same field")
        return second if second.metric else first

    def field(self) -> _Window:
        """One or two spans, such as `10 cm`, `10 x 10 cm`, `4" x 4"`, or a unit alone for one of it."""
        stated = self.cursor.peek().kind == "number"
        across = self.number() if stated else Fraction(1)
        unit = None if self.cursor.peek().name in _TIMES else self.unit()
        along, last_unit = across, unit
        if self.cursor.peek(1).kind == "number" and not self.count_follows() and self.cursor.skip(*_TIMES):
            along, last_unit = self.number(), self.unit()
        if last_unit is None:
            raise self.fault("the window needs a unit such as cm or in")
        self.cursor.skip("square", "sq")
        return _Window(across * (unit or last_unit).factor, along * last_unit.factor, last_unit.metric, stated)

    def unit(self) -> Unit:
        word = self.cursor.take()
        unit = find_unit(word.text)
        if unit is None or unit.kind != "length":
            raise self.fault(unit_hint(word.text, "length") or "the window needs a unit such as cm or in")
        return unit
