"""How the colours of a garment stand together, from the likenesses that its yarns have."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from loopwright.colour import (
    LIMITS,
    VISIONS,
    PairContrast,
    as_seen,
    fade_order,
    grey_view,
    held_forward,
    judge_pairs,
    mix_strands,
    read_hexes,
    write_hex,
)
from loopwright.garment import Garment, RolePlan
from loopwright.records import Record
from loopwright.season.colour_choices import ColourChoice, colour_choices, likeness
from loopwright.season.facts import SeasonFacts

__all__ = [
    "BORDERLINE_L",
    "ColourOfRole",
    "ColourPair",
    "ColourReport",
    "FadeOrder",
    "colour_report",
]

STRANDED: Final = "stranded colourwork"
BORDERLINE_L: Final = LIMITS["borderline"].value
"""What a likeness may be off by in L*; a choice that gains less is not worth naming."""


class ColourOfRole(Record):
    """What plays one role or several, and its likeness.

    :ivar roles: the roles that this yarn in this colour plays.
    :ivar name: its colour by name; strands held together are joined by +.
    :ivar shade: ``#rrggbb``, mixed in linear light where strands are held together; None where one is not known.
    :ivar grey: the grey of the same lightness; ``seen``: as each kind of colour-vision deficiency sees it.
    :ivar missing: colours without a likeness.
    """

    roles: tuple[str, ...]
    name: str
    shade: str | None
    grey: str | None = None
    seen: Mapping[str, str] = {}
    missing: tuple[str, ...] = ()


class ColourPair(Record):
    """Two colours side by side.

    :ivar remarks: keys of :data:`loopwright.colour.REMARKS`.
    :ivar weaker_for: kinds of colour vision for which it has a lower grade.
    """

    names: tuple[str, str]
    delta_l: float
    delta_e: float
    grade: str
    remarks: tuple[str, ...]
    weaker_for: tuple[str, ...]


class FadeOrder(Record):
    """The order of the softest steps.

    :ivar stripes: pairs of neighbours whose step will read as a stripe.
    """

    names: tuple[str, ...]
    steps: tuple[float, ...]
    stripes: tuple[tuple[str, str], ...]


class ColourReport(Record):
    """Everything about the colours of one garment.

    :ivar pairs: of the known colours, the weakest lightness contrast first.
    :ivar held_below: roles to hold so that they come forward in stranded knitting; empty elsewhere.
    :ivar choices: the best first, without the one that is planned; empty where roles have different yarns.
    """

    colours: tuple[ColourOfRole, ...]
    pairs: tuple[ColourPair, ...] = ()
    fade: FadeOrder | None = None
    stranded: bool = False
    held_below: tuple[str, ...] = ()
    choices: tuple[ColourChoice, ...] = ()


def colour_report(
    season: SeasonFacts, garment: Garment, fabric: str, need_m: Mapping[str, float] | None = None
) -> ColourReport:
    """Work out how a garment's colours stand together.

    Every two roles are taken to meet. Shades are likenesses, as from a photograph, so a pair near a limit is marked.

    :param fabric: what it is knitted in; only in stranded colourwork does one colour come forward.
    :param need_m: metres that each role takes, where they are known.
    """
    need_m = need_m or {}
    colours = tuple(_colours(season, garment))
    known = [one for one in colours if one.shade is not None]
    srgb = read_hexes([one.shade or "" for one in known])
    pairs = [
        _pair(known[one].name, known[other].name, pair)
        for (one, other), pair in judge_pairs(srgb, from_photograph=True).items()
    ]
    stranded = fabric == STRANDED
    return ColourReport(
        colours=colours,
        pairs=tuple(sorted(pairs, key=lambda pair: pair.delta_l)),
        fade=_fade(known) if len(known) > 2 else None,
        stranded=stranded,
        held_below=_held_below(garment, need_m) if stranded else (),
        choices=tuple(colour_choices(season, garment, need_m)),
    )


def _colours(season: SeasonFacts, garment: Garment) -> Iterator[ColourOfRole]:
    """Give each colour once, with all the roles that it plays."""
    by_strands: dict[tuple[tuple[str, str, int], ...], list[RolePlan]] = {}
    for role in garment.yarns:
        strands = ((role.yarn, role.colour, role.strands), *((held.yarn, held.colour, 1) for held in role.held_with))
        by_strands.setdefault(strands, []).append(role)
    for strands, roles in by_strands.items():
        named = roles[0].lots
        shades = [likeness(season, yarn, colour, named) for yarn, colour, _ in strands]
        tex = [season.yarn_by_key[yarn].grist_tex * count for yarn, _, count in strands]
        yield _colour_of_role(tuple(role.key for role in roles), [colour for _, colour, _ in strands], shades, tex)


def _colour_of_role(
    roles: tuple[str, ...], names: Sequence[str], shades: Sequence[str | None], tex: Sequence[float]
) -> ColourOfRole:
    name = " + ".join(names)
    missing = tuple(one for one, shade in zip(names, shades, strict=True) if shade is None)
    if missing:
        return ColourOfRole(roles=roles, name=name, shade=None, missing=missing)
    srgb = read_hexes([shade for shade in shades if shade is not None])
    mixed = srgb[0] if len(srgb) == 1 else mix_strands(srgb, tex)
    return ColourOfRole(
        roles=roles,
        name=name,
        shade=write_hex(mixed),
        grey=write_hex(grey_view(mixed)),
        seen={kind: write_hex(as_seen(mixed, kind)) for kind in VISIONS},
    )


def _pair(one: str, other: str, pair: PairContrast) -> ColourPair:
    return ColourPair(
        names=(one, other),
        delta_l=pair.delta_l,
        delta_e=pair.delta_e,
        grade=pair.grade.name,
        remarks=pair.remarks,
        weaker_for=pair.weaker_for,
    )


def _fade(known: Sequence[ColourOfRole]) -> FadeOrder:
    fade = fade_order(read_hexes([one.shade or "" for one in known]))
    names = [known[place].name for place in fade.order]
    return FadeOrder(
        names=tuple(names),
        steps=fade.steps,
        stripes=tuple((names[at], names[at + 1]) for at in fade.blend_at),
    )


def _held_below(garment: Garment, need_m: Mapping[str, float]) -> tuple[str, ...]:
    """Give the role with the least yarn, as it has the fewest stitches; none where a need is not known."""
    metres = {role.key: round(need_m[role.key]) for role in garment.yarns if role.key in need_m}
    return held_forward(metres) if len(metres) == len(garment.yarns) > 1 else ()
