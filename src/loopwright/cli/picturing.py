"""Draws a garment into a file: what the verb ``picture`` does."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import typer

from loopwright.cli.writing import write_bytes, write_text
from loopwright.documents.colourways import colourway_sheet
from loopwright.documents.look import LookOfGarment, look_of
from loopwright.pictures.colourway import Colourway, read_colours, read_colourway
from loopwright.pictures.colourway_card import colourway_card
from loopwright.pictures.garment_svg import garment_svg
from loopwright.pictures.painting import painting_of
from loopwright.pictures.patch import Face
from loopwright.season import Season, plan
from loopwright.units import BadInput

__all__ = ["Wished", "draw"]

CARD_PX = 700
"""Most of the longer side of one picture among several."""


@dataclass(frozen=True, slots=True)
class Wished:
    """What is to be drawn, as it was written."""

    colours: tuple[str, ...] = ()
    colourways: tuple[str, ...] = ()
    face: Face = "front"
    fabric: bool = False
    edges: str | None = None
    size: int = 1200


def draw(season: Season, key: str, wished: Wished, out: Path) -> None:
    """Draw a garment into a file, and say what was drawn.

    :raises BadInput: there is no such garment, it cannot be drafted, a colour cannot be read, a role is none of its
        roles, or the file cannot be written.
    """
    if key not in season.garment_by_key:
        raise BadInput(found=f"the garment '{key}'", wanted=f"one of {', '.join(season.garment_by_key)}")
    suffix = out.suffix.lower()
    if suffix not in (".png", ".svg", ".html"):
        raise BadInput(out.name, "a name that ends in .png, .svg or .html", place=str(out))
    look = look_of(season, plan(season).garment(key))
    own = _known(read_colours(wished.colours), look)
    if wished.edges is not None:
        _known({wished.edges: ()}, look)
    colourways = [_filled(read_colourway(text), look, own) for text in wished.colourways]
    colours = colourways[0].colours if len(colourways) == 1 else {**look.colours, **own}
    if suffix == ".html":
        write_text(out, colourway_sheet(look, colourways, edges=wished.edges), ".html")
    elif suffix == ".svg":
        write_text(out, _svg(look, colours, wished, len(colourways)), ".svg")
    else:
        write_bytes(out, _png(look, colours, wished, colourways))
    _tell(look, colours, wished, out)


def _png(
    look: LookOfGarment, colours: Mapping[str, tuple[str, ...]], wished: Wished, colourways: list[Colourway]
) -> bytes:
    if wished.fabric:
        if len(colourways) > 1:
            raise BadInput(found="--fabric with several colourways", wanted="one colourway at a time")
        return look.fabric(colours, width_px=wished.size)
    if len(colourways) > 1:
        size = min(wished.size, CARD_PX)
        return colourway_card(look.picture(wished.face, edges=wished.edges, longest_px=size), colourways)
    return look.picture(wished.face, edges=wished.edges, longest_px=wished.size).png(colours)


def _svg(look: LookOfGarment, colours: Mapping[str, tuple[str, ...]], wished: Wished, colourways: int) -> str:
    if wished.fabric or colourways > 1:
        raise BadInput(found="the fabric or several colourways in an .svg", wanted="a name that ends in .png")
    painting = painting_of(look.draft, edges=wished.edges or look.edges)
    says = look.says(wished.face)
    return garment_svg(look.draft, colours, wished.face, painting=painting, body_cm=look.body_cm or None, says=says)


def _known(colours: Mapping[str, tuple[str, ...]], look: LookOfGarment) -> dict[str, tuple[str, ...]]:
    """Give the colours if every role is one of the garment's."""
    for role in colours:
        if role not in look.roles:
            raise BadInput(found=f"the role '{role}'", wanted=f"one of {', '.join(look.roles)}")
    return dict(colours)


def _filled(one: Colourway, look: LookOfGarment, own: Mapping[str, tuple[str, ...]]) -> Colourway:
    """Give a colourway with the garment's own colours where it names none."""
    return Colourway(one.name, {**look.colours, **own, **_known(one.colours, look)})


def _tell(look: LookOfGarment, colours: Mapping[str, tuple[str, ...]], wished: Wished, out: Path) -> None:
    typer.echo(f"Written: {out}")
    if len(wished.colourways) <= 1:
        for role in look.roles:
            typer.echo(f"{role}: {' + '.join(colours.get(role, ())) or 'no likeness given, drawn grey'}")
    edges = wished.edges or look.edges
    if edges is not None and not wished.fabric and len(look.roles) > 1:
        typer.echo(f"The draft does not say which rows each role knits: ribs and bands are drawn in {edges}.")
