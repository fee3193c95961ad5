"""What cannot be done with what is kept, said so that the reader can put it right."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

from loopwright.files import FileFault
from loopwright.units import LoopwrightError

__all__ = [
    "ChangeRefused",
    "ChangedMeanwhile",
    "DamagedSeason",
    "NoSuchGarment",
    "NoSuchSeason",
    "NothingToRedo",
    "NothingToUndo",
    "SeasonIsThere",
]


class NoSuchSeason(LoopwrightError, LookupError):
    """No season is kept under this key."""

    def __init__(self, key: str, known: Iterable[str] = ()) -> None:
        super().__init__(_missing("season", key, known))
        self.key = key


class NoSuchGarment(LoopwrightError, LookupError):
    """The season has no garment under this key."""

    def __init__(self, key: str, known: Iterable[str] = ()) -> None:
        super().__init__(_missing("garment", key, known))
        self.key = key


class NothingToUndo(LoopwrightError):
    """The season is as it was when it was first kept."""

    def __init__(self, key: str) -> None:
        super().__init__(f"{key}: there is no change to undo")
        self.key = key


class NothingToRedo(LoopwrightError):
    """No change of the season was undone since the last one."""

    def __init__(self, key: str) -> None:
        super().__init__(f"{key}: no change was undone that could be made again")
        self.key = key


class SeasonIsThere(LoopwrightError):
    """A season was to be brought back that is not gone."""

    def __init__(self, key: str) -> None:
        super().__init__(f"{key}: this season is there; nothing has to be brought back")
        self.key = key


class ChangeRefused(LoopwrightError, ValueError):
    """A change would leave a season that does not hold together; nothing was changed.

    :ivar faults: what is wrong, each with its field in the words of the season file as ``path``.
    """

    def __init__(self, faults: Iterable[FileFault]) -> None:
        self.faults = tuple(faults)
        super().__init__(self.faults)

    def __str__(self) -> str:
        """One line for each fault."""
        return "\n".join(str(fault) for fault in self.faults)


class ChangedMeanwhile(LoopwrightError):
    """An entry is no longer as it was when it was last read; nothing was changed."""

    def __init__(self, kind: str, name: str) -> None:
        super().__init__(f"the {kind} '{name}' was changed elsewhere meanwhile")


class DamagedSeason(LoopwrightError):
    """What the database holds under this key does not make a season."""

    def __init__(self, key: str, faults: Iterable[FileFault]) -> None:
        super().__init__(f"{key}: the database holds a season that cannot be read:\n{ChangeRefused(faults)}")
        self.key = key


def _missing(kind: str, key: str, known: Iterable[str]) -> str:
    names = list(known)
    near = get_close_matches(key, names, n=1)
    there = f"there are {', '.join(names)}" if names else "there is none yet"
    return f"no {kind} '{key}'; {there}" + (f" (did you mean '{near[0]}'?)" if near else "")
