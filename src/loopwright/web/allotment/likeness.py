"""The colour that a lot is drawn in."""

from __future__ import annotations

from typing import Final

from loopwright.season import Season

__all__ = ["NO_YARN", "UNKNOWN", "lot_shades"]

NO_YARN: Final = "#e4e4e3"
"""Of what no lot knits."""
UNKNOWN: Final = "#c9c9c8"
"""Of a lot without a likeness."""


def lot_shades(season: Season) -> dict[str, str]:
    """Give the likeness of every lot that has one; yarn on its way looks like the same colour of it at home."""
    at_home = {(lot.yarn, lot.colour): lot.shade for lot in season.cupboard if lot.shade}
    shades = {lot.key: lot.shade for lot in season.cupboard if lot.shade}
    for order in season.orders:
        for number, line in enumerate(order.lines, 1):
            shade = at_home.get((line.yarn, line.colour))
            if shade:
                shades[f"{order.key}-{number}"] = shade
    return shades
