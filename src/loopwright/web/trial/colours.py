"""What can be tried about where the colours of a garment go."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from loopwright.pattern import Construction, PatternFacts

__all__ = ["colour_fields"]

_YOKES = frozenset({Construction.RAGLAN, Construction.YOKE})


def colour_fields(
    pattern: PatternFacts, roles: Sequence[str]
) -> Iterator[tuple[str, str, tuple[tuple[str, str], ...]]]:
    """Give path, hint and choices of each field that bears on a garment of several roles; none for one role."""
    if len(roles) < 2:
        return
    first, second = roles[:2]
    stripes = f"such as 4 {first}, 2 {second}"
    construction = pattern.construction
    if construction.is_top:
        yield "colours.everywhere", stripes, ()
        yield "colours.edges", f"such as {second}", ()
    yield "colours.body", stripes if not construction.is_top else f"such as 12 {first}, chart waves, {first}", ()
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
