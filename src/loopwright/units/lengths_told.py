"""Words with lengths in them that are still numbers, so that each reader has them in her own measures."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from string import Formatter

__all__ = ["Told", "told"]


@dataclass(frozen=True, slots=True)
class Told:
    """A sentence, or a part of one, with lengths in it.

    Args:
        words: as a format string, `{}` where each length stands; braces of its own are doubled.
        lengths_cm: the lengths, in the order of the words.

    Raises:
        ValueError: there are not as many lengths as places for them.

    >>> cap = told("The cap is {} high.", 13.5)
    >>> str(cap), cap.written(lambda length_cm: f"{length_cm / 2.54:.2f} in")
    ('The cap is 13.5 cm high.', 'The cap is 5.31 in high.')
    """

    words: str = ""
    lengths_cm: tuple[float, ...] = ()

    def __post_init__(self) -> None:
        """Refuse words that the lengths do not fill."""
        places = [field for _, field, _, _ in Formatter().parse(self.words) if field is not None]
        if any(places) or len(places) != len(self.lengths_cm):
            raise ValueError(f"{len(self.lengths_cm)} lengths for {self.words!r}")

    @classmethod
    def of(cls, text: str | Told) -> Told:
        """The same with plain text taken as it stands, whatever is in it."""
        return text if isinstance(text, Told) else cls(text.replace("{", "{{").replace("}", "}}"))

    def written(self, write: Callable[[float], str]) -> str:
        """The words with each length as `write` writes it from cm."""
        return self.words.format(*map(write, self.lengths_cm))

    def __str__(self) -> str:
        """The words with each length in cm, to two decimals at the most."""
        return self.written(lambda length_cm: f"{round(length_cm, 2):g} cm")

    def __bool__(self) -> bool:
        """Whether anything is told."""
        return bool(self.words)

    def __add__(self, more: Told) -> Told:
        """Both, the one behind the other."""
        return Told(self.words + more.words, self.lengths_cm + more.lengths_cm)


def told(words: str, *lengths_cm: float) -> Told:
    """Words with their lengths, each standing where `{}` does.

    >>> told("a cuff of {} on a sleeve of {}", 6, 45).lengths_cm
    (6.0, 45.0)
    """
    return Told(words, tuple(map(float, lengths_cm)))
