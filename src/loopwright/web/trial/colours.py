"""What can be tried about where the colours of a garment go."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from loopwright.pattern import Construction, PatternFacts

__all__ = ["colour_fields"]

_YOKES = frozenset({Construction.RAGLAN, Construction.YOKE})


def colour_fields(
    pattern: PatternFacts, roles: Sequence[str], charts: Sequence[str] = ()
) -> Iterator[tuple[str, str, tuple[tuple[str, str], ...]]]:
    """Give path, hint and choices of each field that bears on a garment of several roles; none for one role.

    :param charts: keys of the charts that may lie on it; a hint names the first.
    """
    if len(roles) < 2:
        return
    first, second = roles[:2]
    stripes = f"such as 4 {first}, 2 {second}"
    construction = pattern.construction
    if construction.is_top:
        yield "colours.everywhere", stripes, ()
        yield "colours.edges", f"such as {second}", ()
    yield "colours.body", f"such as 6 {first}, chart {charts[0]}, {first}" if charts else stripes, ()
    if construction.has_sleeves:
        yield "colours.sleeves", stripes, ()
    if construction in _YOKES:
        yield "colours.yoke", stripes, ()
    yield "colours.hem", f"such as {second}", ()
    if construction.has_sleeves:
        yield "colours.cuff", f"such as {second}", ()
    if construction.is_top:
        yield "colours.neckband", f"such as {second}", ()
        if pattern.opens_in_front:
            yield "colours.band", f"such as {second}", ()
