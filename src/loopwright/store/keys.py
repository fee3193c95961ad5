"""Keys of seasons: made from a name, and checked."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Container
from typing import Final

from loopwright.units import BadInput

__all__ = ["LONGEST_KEY", "check_key", "free_key", "key_from_name"]

LONGEST_KEY: Final = 60
"""As for every key of a season file."""

_KEY = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_WANTED = f"a key of small letters, digits and single hyphens, at most {LONGEST_KEY}, such as winter"


def key_from_name(name: str) -> str:
    """Make a key from a name: ``Winter at Hút!`` → ``winter-at-hut``; ``season`` where nothing is left of it."""
    plain = unicodedata.normalize("NFKD", name.casefold()).encode("ascii", "ignore").decode("ascii")
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST_KEY].strip("-") or "season"


def free_key(wanted: str, taken: Container[str]) -> str:
    """Give a key that is not taken: the wanted one, or with a number behind it."""
    key, number = wanted, 1
    while key in taken:
        number += 1
        key = f"{wanted[: LONGEST_KEY - len(str(number)) - 1].strip('-')}-{number}"
    return key


def check_key(key: str) -> str:
    """Give a key back if it is one.

    :raises BadInput: it is none.
    """
    if _KEY.fullmatch(key) and len(key) <= LONGEST_KEY:
        return key
    raise BadInput(key, _WANTED, place="key", hint=f"did you mean '{key_from_name(key)}'?")
