"""Cautions that apply to a garment or a season; each short, with its source, deferring to local rules."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from loopwright.body import Body, Wearer
from loopwright.data import table
from loopwright.season.result import Caution
from loopwright.season.settle import Settled
from loopwright.yarn import Yarn

__all__ = ["body_cautions", "caution", "fibre_cautions", "garment_cautions"]

CELLULOSE = frozenset({"cotton", "mercerised cotton", "linen", "hemp", "viscose", "bamboo viscose", "lyocell"})
SYNTHETIC = frozenset({"nylon", "acrylic", "polyester"})
HAIR = frozenset({"alpaca", "mohair", "cashmere", "yak", "camel", "silk"})
WOOL = frozenset({"wool", "longwool", "superwash wool"})


def caution(key: str) -> Caution:
    """Give one caution by its key.

    :raises KeyError: there is none.
    """
    for row in table("caution/cautions.csv"):
        if row["id"] == key:
            return Caution(key=key, text=row["text"], source=row["source"])
    raise KeyError(key)


def garment_cautions(one: Settled, yarns: Mapping[str, Yarn]) -> tuple[Caution, ...]:
    """Give the cautions for one garment: the wearer's age first, then its fibres."""
    keys = [*_for_child(one), *_for_fibres(_fibres(one, yarns))]
    return tuple(caution(key) for key in dict.fromkeys(keys))


def body_cautions(body: Body) -> tuple[Caution, ...]:
    """Give the cautions for whatever is knitted for a child of this age; none for grown-ups."""
    keys = _for_age(body)
    return tuple(caution(key) for key in (*keys, "neck-passes-head", "nightwear")) if keys else ()


def fibre_cautions(fibres: Iterable[str]) -> tuple[Caution, ...]:
    """Give the cautions for yarn of these fibres: skin first, then flame."""
    return tuple(caution(key) for key in _for_fibres(fibres))


def _for_age(body: Body | None) -> tuple[str, ...]:
    if body is None or body.wearer is not Wearer.CHILD:
        return ()
    age = body.age_years
    young = ("small-parts", "floats") if body.is_young_child else ()
    cord = "cord-neck" if age is None or age <= 7 else "cord-neck-older"
    return (cord, *young, *(("sleep",) if age is not None and age < 1 else ()))


def _for_child(one: Settled) -> Iterator[str]:
    for_age = _for_age(one.body)
    yield from for_age
    if "floats" in for_age and "lace" in one.pattern.fabric:
        yield "lace-holes"
    if for_age and one.pattern.construction.is_top:
        yield "neck-passes-head"
        yield "nightwear"


def _fibres(one: Settled, yarns: Mapping[str, Yarn]) -> set[str]:
    return {
        share.fibre
        for role in one.garment.yarns
        for key in (role.yarn, *(strand.yarn for strand in role.held_with))
        for share in yarns[key].fibres
    }


def _for_fibres(fibres: Iterable[str]) -> Iterator[str]:
    found = set(fibres)
    if found & WOOL:
        yield "itch"
    if found & HAIR:
        yield "animal-hair"
    if found & CELLULOSE:
        yield "flame-cellulose"
    if found & SYNTHETIC:
        yield "flame-synthetic"
