"""Singles and packs: the cheapest way to have at least so many balls."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.records import Record

__all__ = ["PackChoice", "cheapest_packs", "pack_mixes"]

MOST_MORE_PACKS = 60
"""No more packs than this are looked at beyond the need: balls for a cent would make the search endless."""


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


def pack_mixes(
    balls: int, packs: Sequence[tuple[int, int]], *, extra_minor: int = 0, in_stock: int | None = None
) -> tuple[PackChoice, ...]:
    """Give every way to have at least ``balls`` that costs little more than the cheapest, the cheapest first.

    Of several mixes with the same number of balls and the same cost the one with the fewest packs stands. A mix that is
    dearer by more than that than another of as many balls leads to nothing and is dropped on the way.

    :param packs: (balls in the pack, price in minor units of money), at least one.
    :param extra_minor: how much more than the cheapest a mix may cost.
    :param in_stock: balls on the shelf; a mix with more is left out. None when not known.
    :returns: nothing when the shelf does not hold enough.
    """
    cheapest = min((price for _, price in packs if price), default=extra_minor + 1)
    more_packs = min(1 + extra_minor // cheapest, MOST_MORE_PACKS)
    most = balls + max(size for size, _ in packs) * more_packs
    if in_stock is not None:
        most = min(most, in_stock)
    reached: list[dict[int, tuple[int, tuple[int, ...]]]] = [{0: (0, tuple(0 for _ in packs))}]
    for count in range(1, most + 1):
        here: dict[int, tuple[int, tuple[int, ...]]] = {}
        for number, (size, price) in enumerate(packs):
            for before, (pieces, mix) in reached[count - size].items() if size <= count else ():
                cost = before + price
                if cost not in here or pieces + 1 < here[cost][0]:
                    here[cost] = (pieces + 1, tuple(n + (place == number) for place, n in enumerate(mix)))
        dearest = min(here, default=0) + extra_minor
        reached.append({cost: way for cost, way in here.items() if cost <= dearest})
    found = [
        (cost, count, mix) for count, here in enumerate(reached[balls:], start=balls) for cost, (_, mix) in here.items()
    ]
    least = min(found, default=(0, 0, ()))[0]
    near = sorted(row for row in found if row[0] <= least + extra_minor)
    return tuple(PackChoice(packs=mix, cost_minor=cost, balls=count) for cost, count, mix in near)
