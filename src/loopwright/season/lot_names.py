"""What a lot is called, at home or on its way."""

from __future__ import annotations

from loopwright.season.season import Season

__all__ = ["lot_names"]


def lot_names(season: Season) -> dict[str, str]:
    """Give every lot in words by its key: colour, yarn and dye lot, or that it is on its way."""
    names = {
        lot.key: f"{lot.colour}, {season.yarn_by_key[lot.yarn].name}"
        + (f", dye lot {lot.dye_lot}" if lot.dye_lot else "")
        for lot in season.cupboard
    }
    for order in season.orders:
        for number, line in enumerate(order.lines, 1):
            names[f"{order.key}-{number}"] = f"{line.colour}, {season.yarn_by_key[line.yarn].name}, on its way"
    return names
