"""Singles and packs: the cheapest way to have at least so many balls."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.records import Record

__all__ = ["PackChoice", "cheapest_packs"]


class PackChoice(Record):
    """How many of each pack, what they cost in minor units, and how many balls come."""

    packs: tuple[int, ...]
    cost_minor: int
    balls: int


def cheapest_packs(balls: int, packs: Sequence[tuple[int, int]]) -> PackChoice:
    """Give the cheapest mix of packs that holds at least ``balls``.

    Exact, by dynamic programming over the number of balls; of equal costs the one with fewer balls, then with
    fewer packs.

    :param packs: (balls in the pack, price in minor units of money), at least one.
    :raises ValueError: no packs, or a pack without balls.
    """
    if not packs or any(size < 1 for size, _ in packs):
        raise ValueError(f"found the packs {packs}; wanted at least one, each with a ball or more")
    most = balls + max(size for size, _ in packs)
    best: list[tuple[int, int, tuple[int, ...]] | None] = [(0, 0, tuple(0 for _ in packs))]
    for count in range(1, most + 1):
        reached = []
        for number, (size, price) in enumerate(packs):
            before = best[count - size] if size <= count else None
            if before is not None:
                cost, pieces, mix = before
                grown = tuple(n + (1 if place == number else 0) for place, n in enumerate(mix))
                reached.append((cost + price, pieces + 1, grown))
        best.append(min(reached) if reached else None)
    found = [(reach[0], count, reach[1], reach[2]) for count, reach in enumerate(best) if reach and count >= balls]
    cost, count, _, mix = min(found)
    return PackChoice(packs=mix, cost_minor=cost, balls=count)
