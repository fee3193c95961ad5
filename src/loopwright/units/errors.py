"""What goes wrong, said so that the reader can put it right.

The family::

    LoopwrightError
    ├── BadInput (also a ValueError)        something that a person wrote
    │   └── UnreadableQuantity              a number, a quantity, a gauge, a price
    └── MixedCurrencies (also a TypeError)  two currencies in one sum
"""

from typing import Self

from loopwright.units.lengths_told import Told

__all__ = ["BadInput", "LoopwrightError", "MixedCurrencies", "UnreadableQuantity"]

_LONGEST_SHOWN = 80


class LoopwrightError(Exception):
    """The root of every error that this package raises on purpose."""


class BadInput(LoopwrightError, ValueError):
    """Something in the input is not what it should be.

    Args:
        found: the text that was found, as it was written, or words with lengths in them.
        wanted: what should stand there, in words that can follow "wanted"; they may have lengths in them.
        place: where it stands: a field path such as `body.bust_girth` or `season.toml:12`.
        hint: one thing to try, in words, such as `did you mean "in"?`.

    >>> print(BadInput("14 inchs", "a length", place="bust_girth", hint='did you mean "in"?'))
    bust_girth: found "14 inchs"; wanted a length (did you mean "in"?)
    """

    found: str
    wanted: str
    place: str | None
    hint: str | None

    def __init__(
        self, found: str | Told, wanted: str | Told, *, place: str | None = None, hint: str | None = None
    ) -> None:
        self.found = str(found)
        self.wanted = str(wanted)
        self.place = place
        self.hint = hint
        self._told = (found, wanted)
        super().__init__(self.found, self.wanted)

    @property
    def told(self) -> Told:
        """What was found and what is wanted, for a reader with measures of her own; no place and no hint.

        >>> BadInput(Told("a cuff of {}", (50,)), "a shallower cuff").told.written(lambda cm: f"{cm / 2.54:.1f} in")
        'a cuff of 19.7 in; wanted a shallower cuff'
        """
        found, wanted = map(Told.of, self._told)
        return found + Told("; wanted ") + wanted

    def __str__(self) -> str:
        """One line: place, found, wanted, hint."""
        before = f"{self.place}: " if self.place else ""
        after = f" ({self.hint})" if self.hint else ""
        return f"{before}found {_shown(self.found)}; wanted {self.wanted}{after}"

    def at(self, place: str) -> Self:
        """The same fault with `place` put in front; the fault itself is left as it was.

        >>> print(BadInput("x", "a number", place="row 3").at("yarns.csv"))
        yarns.csv: row 3: found "x"; wanted a number
        """
        whole = f"{place}: {self.place}" if self.place else place
        return type(self)(*self._told, place=whole, hint=self.hint)


class UnreadableQuantity(BadInput):
    """A text that should hold a number, a quantity with its unit, a gauge or a price, and does not."""


class MixedCurrencies(LoopwrightError, TypeError):
    """Two amounts of money in different currencies were added, subtracted or compared."""

    def __init__(self, first: str, second: str) -> None:
        super().__init__(first, second)
        self.first = first
        self.second = second

    def __str__(self) -> str:
        """One line that names both currencies and the way out."""
        return f"{self.first} and {self.second} do not mix; convert one of them at a stated rate first"


def _shown(found: str) -> str:
    """The found text in quotes, on one line and not too long."""
    line = " ".join(found.split())
    if not line:
        return "nothing"
    if len(line) > _LONGEST_SHOWN:
        line = line[:_LONGEST_SHOWN] + "…"
    return f'"{line}"'
