"""Colourways as text: which colours play which role, under a name."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from loopwright.colour import read_hex, write_hex
from loopwright.units import BadInput

__all__ = ["Colourway", "read_colour", "read_colours", "read_colourway"]

_QUOTES = 'put it in quotes, such as "main=#a43c2b": without them the shell drops what follows #'


@dataclass(frozen=True, slots=True)
class Colourway:
    """Colours for the roles of a garment.

    :ivar colours: the strands of each role as ``#rrggbb``; several are held together.
    """

    name: str
    colours: Mapping[str, tuple[str, ...]]


def read_colour(text: str) -> tuple[str, tuple[str, ...]]:
    """Read ``role=#rrggbb``, or ``role=#rrggbb+#rrggbb`` of strands held together.

    :raises BadInput: it is written in another way.
    """
    role, equals, colours = text.partition("=")
    if not equals or not role.strip() or not colours.strip():
        raise BadInput(text, "a role and its colour, such as main=#a43c2b", hint=_QUOTES)
    return role.strip(), tuple(write_hex(read_hex(one)) for one in colours.split("+"))


def read_colours(texts: Iterable[str]) -> dict[str, tuple[str, ...]]:
    """Read several colours, each role once.

    :raises BadInput: one is written in another way, or a role has two.
    """
    colours: dict[str, tuple[str, ...]] = {}
    for text in texts:
        role, strands = read_colour(text)
        if role in colours:
            raise BadInput(f"the role '{role}' twice", "each role once; strands held together joined by +")
        colours[role] = strands
    return colours


def read_colourway(text: str) -> Colourway:
    """Read ``name: role=#rrggbb, role=#rrggbb``.

    :raises BadInput: it is written in another way.
    """
    name, colon, colours = text.partition(":")
    if not colon or not name.strip():
        raise BadInput(text, 'a name and its colours, such as "harbour: main=#4f7583, contrast=#d8c7a3"')
    return Colourway(name.strip(), read_colours(part for part in colours.split(",") if part.strip()))
