"""The schematic of a drafted garment: every piece in its true shape, all to one scale, with its measures and counts."""

from __future__ import annotations

from collections.abc import Mapping

from loopwright.garment.draft import Draft
from loopwright.pictures.schematic_layout import lay_out
from loopwright.pictures.schematic_views import View
from loopwright.pictures.svg import element, picture
from loopwright.units import Reader

__all__ = ["schematic"]


def schematic(
    draft: Draft,
    reader: Reader,
    *,
    narrow: bool = False,
    body_cm: Mapping[str, float] | None = None,
    says: str = "",
) -> str:
    """Draw the schematic of a draft as SVG: pieces once each, to one scale, with dimension lines and counts.

    A tube is drawn as it lies, half its stitches wide; of a tube that divides, the front is drawn in full lines and
    the back behind it in dashes. Widths and heights are of the drawn fabric, seam stitches included.

    :param reader: decides centimetres or inches.
    :param narrow: stacked in one column for a phone; else side by side as far as they go.
    :param body_cm: measures of a body in cm by point, at least ``bust_girth``: it stands behind the body piece to the
        same scale, its girths laid flat like the piece.
    :param says: read aloud instead of the drawing; left out, the pieces are named.
    """
    sheet = lay_out(draft, reader, narrow=narrow, body_cm=body_cm)
    inside = "".join(drawing.drawn(right, down) for drawing, right, down in sheet.placed)
    inside += "".join(one.drawn() for one in sheet.notes)
    words = says or f"Schematic, {draft.construction}: {', '.join(_named(one.view) for one, _, _ in sheet.placed)}."
    drawing = element("g", inside, font_variant="tabular-nums")
    return picture(drawing, sheet.look.width, sheet.height, words, class_="schematic", keep_shape=True)


def _named(view: View) -> str:
    return f"{view.name} ({view.made})" if view.made else view.name
