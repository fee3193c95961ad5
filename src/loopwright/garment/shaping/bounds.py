"""What every count of stitches or rows has to be before a shaping is worked out."""

from __future__ import annotations

from loopwright.units import BadInput

__all__ = ["at_least"]


def at_least(value: int, least: int, what: str) -> None:
    """Refuse a count below ``least``.

    :param what: the thing that is counted, in the plural, such as ``stitches``.
    :raises BadInput: when ``value`` is under ``least``.
    """
    if value < least:
        raise BadInput(found=f"{value} {what}", wanted=f"{least} or more")
