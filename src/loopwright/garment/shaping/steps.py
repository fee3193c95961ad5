"""Steps along an edge: shoulders cast off in steps, and curves of an underarm or a neck.

Sources: 44 stitches over 16 rows as four sixes and four fives (a printed example); 36 stitches with an inch of slope as
four nines; armholes that begin 4, 3, 2, 1 (the magazine form).
"""

from __future__ import annotations

from math import isqrt

from loopwright.garment.shaping.bounds import at_least
from loopwright.units import BadInput

__all__ = ["cast_off_curve", "even_steps", "shoulder_steps"]

_Tail = tuple[int, tuple[int, ...]]
"""Cost of the steps that are still to come, and these steps negated: the least tail is the best one."""
_FINE = 10**6
"""The ellipse is taken to the millionth of a stitch, so that curves compare exactly."""


def even_steps(stitches: int, steps: int, *, larger_first: bool = True) -> tuple[int, ...]:
    """Part ``stitches`` into ``steps`` that differ by one at most, the larger together.

    :param larger_first: larger steps before smaller ones.
    :raises BadInput: when there are more steps than stitches.
    Source: 44 over 8 steps is four sixes and four fives, a printed example.
    """
    at_least(steps, 1, "steps")
    at_least(stitches, 0, "stitches")
    if steps > stitches:
        raise BadInput(found=f"{steps} steps of {stitches} stitches", wanted=f"at most {stitches} steps")
    size, larger = divmod(stitches, steps)
    parts = (size + 1,) * larger + (size,) * (steps - larger)
    return parts if larger_first else parts[::-1]


def shoulder_steps(stitches: int, slope_rows: int) -> tuple[int, ...]:
    """Part a shoulder into the steps of its slope: one for every two rows, at least one, none empty.

    :param slope_rows: rows by which the neck end lies higher than the arm end.
    Source: steps = slope rows ÷ 2; an inch, 8 rows, is the usual slope: 36 stitches as four nines.
    """
    at_least(stitches, 1, "stitches")
    at_least(slope_rows, 0, "rows")
    return even_steps(stitches, min(stitches, max(1, slope_rows // 2)))


def cast_off_curve(stitches: int, rows: int) -> tuple[int, ...]:
    """Give the stitches to take away at the start of every second row for a rounded edge, such as 5, 3, 1, 1.

    The ideal is a quarter ellipse, ``stitches`` wide and ``rows`` high, flat where it begins and upright where it ends:
    at height y it has taken ``stitches`` · √(1 − (1 − y ÷ H)²) with H = 2K, K = ``rows`` ÷ 2 rounded down. Step j is
    held for rows 2j − 2 and 2j − 1 and is compared at its middle, y = 2j − 1.

    Must hold: the sum is ``stitches``; at most K steps; no step larger than the one before; the last step is 1, unless
    K is 1. Preferred, in this order: least sum over the K heights of the squared difference between what is taken and
    the ideal; then the larger first step, the larger second step, and so on.

    :param rows: rows of the curve, 2 or more.
    :raises BadInput: for a curve of no stitches or under two rows.
    Source: ours; that steps fall off to ones is common practice (4, 3, 2, 1 in a magazine).
    """
    at_least(stitches, 1, "stitches")
    at_least(rows, 2, "rows")
    steps = rows // 2
    if steps == 1 or stitches == 1:
        return (stitches,)
    ideal = [_ellipse(stitches, steps, step) for step in range(1, steps + 1)]
    return _best_curve(stitches, ideal)


def _ellipse(stitches: int, steps: int, step: int) -> int:
    """Give what the ellipse has taken at the middle of ``step``, in millionths of a stitch, rounded down."""
    double = 2 * steps
    left = double - (2 * step - 1)
    return isqrt((stitches * _FINE) ** 2 * (double**2 - left**2)) // double


def _best_curve(stitches: int, ideal: list[int]) -> tuple[int, ...]:
    """Solve the small integer problem of :func:`cast_off_curve` from its last step back.

    ``after[taken][cap]`` is the best way to go on when ``taken`` are gone and no step may be over ``cap``.
    """
    after: dict[int, list[_Tail | None]] = {}
    done_cost = 0
    for step in reversed(range(len(ideal))):
        done_cost += (stitches * _FINE - ideal[step]) ** 2
        now: dict[int, list[_Tail | None]] = {}
        for taken in range(step, stitches) if step else (0,):
            widest = min(stitches - taken, taken // step) if step else stitches
            tails: list[_Tail | None] = [None]
            for size in range(1, widest + 1):
                tail: _Tail | None = (done_cost, (-1,)) if size == stitches - taken == 1 else None
                if (reached := taken + size) in after:
                    tail = _joined(size, (reached * _FINE - ideal[step]) ** 2, after[reached])
                tails.append(_better(tails[-1], tail))
            now[taken] = tails
        after = now
    best = after[0][stitches]
    assert best is not None  # all but one, then one, is always a curve
    return tuple(-size for size in best[1])


def _joined(size: int, cost: int, further: list[_Tail | None]) -> _Tail | None:
    """Put a step before the best way to go on from it."""
    rest = further[min(size, len(further) - 1)]
    return None if rest is None else (cost + rest[0], (-size, *rest[1]))


def _better(one: _Tail | None, other: _Tail | None) -> _Tail | None:
    return min((tail for tail in (one, other) if tail is not None), default=None)
