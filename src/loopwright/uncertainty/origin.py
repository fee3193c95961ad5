"""Where a number came from."""

from __future__ import annotations

from enum import StrEnum

__all__ = ["Origin"]


class Origin(StrEnum):
    """Where a number came from, the surest first. Shown beside every figure."""

    MEASURED = "measured"
    """Counted, weighed or taped by the knitter."""
    STATED = "stated"
    """Printed by the pattern, the ball band or the shop."""
    COMPUTED = "computed"
    """Worked out from other numbers by a named formula."""
    TABLE = "table"
    """Read from a published table."""
    GUESS = "guess"
    """Common practice or our judgement; to be replaced by her own figure."""
