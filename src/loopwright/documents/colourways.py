"""A page to print: one garment in all the colourways that are thought of, side by side."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Sequence
from dataclasses import dataclass

from jinja2 import FileSystemLoader

from loopwright.documents.environment import LOOK_DIR, TEMPLATE_DIR, page_environment
from loopwright.documents.look import LookOfGarment
from loopwright.pictures.chip import colour_chip
from loopwright.pictures.colourway import Colourway
from loopwright.season.cautions import caution
from loopwright.units import BadInput

__all__ = ["colourway_sheet"]

PICTURE_PX = 900


@dataclass(frozen=True, slots=True)
class _Shown:
    """One colourway as the page shows it."""

    name: str
    says: str
    front: str
    roles: tuple[tuple[str, str, str], ...]


def colourway_sheet(look: LookOfGarment, colourways: Sequence[Colourway], *, edges: str | None = None) -> str:
    """Give the page as one HTML text with nothing outside it.

    :param edges: another role for ribs and bands than the look's own.
    :raises BadInput: there is no colourway.
    """
    if not colourways:
        raise BadInput(found="no colourway", wanted="one colourway or more")
    garment = look.picture("front", edges=edges, longest_px=PICTURE_PX)
    shown = [
        _Shown(
            name=one.name,
            says=f"{look.name} in {one.name}",
            front="data:image/png;base64," + b64encode(garment.png(one.colours)).decode("ascii"),
            roles=tuple(
                (
                    "".join(colour_chip(shade, role) for shade in one.colours.get(role) or (None,)),
                    role,
                    _digits(one, role),
                )
                for role in garment.roles
            ),
        )
        for one in colourways
    ]
    style = "\n".join((LOOK_DIR / name).read_text(encoding="utf-8") for name in ("ground.css", "answers.css"))
    environment = page_environment(loader=FileSystemLoader(TEMPLATE_DIR))
    return environment.get_template("colourways.html").render(
        name=look.name, shown=shown, look=style, caution=caution("colour").text
    )


def _digits(one: Colourway, role: str) -> str:
    return " + ".join(one.colours.get(role, ())) or "not chosen, drawn grey"
