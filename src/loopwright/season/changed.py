"""Finished measures with what she makes longer or shorter."""

from __future__ import annotations

from collections.abc import Mapping

from loopwright.garment import Garment

__all__ = ["changed_lengths"]


def changed_lengths(measures: Mapping[str, float], garment: Garment) -> dict[str, float]:
    """Give finished measures with what she makes longer or shorter, in cm."""
    changed = dict(measures)
    for name, longer in (
        ("length", garment.changes.body_longer_cm),
        ("sleeve_length", garment.changes.sleeves_longer_cm),
    ):
        if longer is not None and name in changed:
            changed[name] += longer
    return changed
