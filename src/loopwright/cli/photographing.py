"""Tells the colours of a yarn from a photo: what the verb ``photo`` does."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import typer
from rich.padding import Padding
from rich.text import Text

from loopwright.cli.show import console, table
from loopwright.colour import lab_from_srgb, write_hex
from loopwright.colour.photo import PHOTO_LIMITS, PhotoColours, measure_photo, read_point
from loopwright.files.picture_file import read_picture_file
from loopwright.season.photo_words import PHOTO_CAUTIONS, balance_text, doubt_text, share_text
from loopwright.units import BadInput, write_share

__all__ = ["tell_photo"]


def tell_photo(
    file: Path, *, white: str | None, yarn: str | None, most: int, exactly: int | None, as_json: bool
) -> None:
    """Print the colours that a photo shows.

    :param white, yarn: places, as :func:`~loopwright.colour.photo.point.read_point` reads them.
    :raises BadInput: the photo or a place cannot be read, the paper says nothing, or no yarn is found.
    """
    pixels = read_picture_file(file)
    height, width, _ = pixels.shape
    places = {}
    for name, text in (("white", white), ("yarn", yarn)):
        try:
            places[name] = None if text is None else read_point(text, width, height)
        except BadInput as error:
            raise error.at(f"--{name}") from error
    found = measure_photo(pixels, white=places["white"], yarn=places["yarn"], most=most, exactly=exactly)
    if as_json:
        typer.echo(json.dumps(_as_json(found), indent=2, ensure_ascii=False))
    else:
        _show(found)


def _show(found: PhotoColours) -> None:
    out = console()
    made = table("colour", "share", "L*", "off by perhaps", "spread within", numbers=("share", "L*", "spread within"))
    for one in found.colours:
        written = write_hex(one.srgb)
        chip = Text.assemble(("  ", f"on {written}"), f" {written}") if out.is_terminal else Text(written)
        light = f"{lab_from_srgb(one.srgb)[0]:.0f} ± {PHOTO_LIMITS['doubt_lightness'].value:g}"
        made.add_row(chip, share_text(one), light, f"{one.doubt:.0f} ΔE00", f"{one.spread:.1f} ΔE00")
    out.print(made)
    lines = [f"Yarn: {found.region.found_by}, {write_share(found.region.share)} of the picture."]
    lines += filter(None, (balance_text(found), doubt_text(found)))
    if found.left_out > 0.005:
        lines.append(f"Left out: {write_share(found.left_out)} of the yarn, in colours too small to tell.")
    for line in lines:
        out.print(Padding(Text(line), (0, 0, 0, 2), expand=False))
    out.print()
    out.print(Text("Take care", style="bold"))
    for said in PHOTO_CAUTIONS:
        out.print(Padding(Text(said.text), (0, 0, 0, 2), expand=False))


def _as_json(found: PhotoColours) -> dict[str, Any]:
    paper = found.paper
    return {
        "colours": [
            {
                "srgb": write_hex(one.srgb),
                "lab": [round(value, 1) for value in lab_from_srgb(one.srgb).tolist()],
                "share": one.told_share,
                "spread_delta_e_2000": round(one.spread, 1),
                "doubt_delta_e_2000": round(one.doubt, 1),
            }
            for one in found.colours
        ],
        "white_paper": None if paper is None else {"gains": [round(gain, 4) for gain in paper.gains]},
        "yarn": {"found_by": found.region.found_by, "share_of_picture": round(found.region.share, 3)},
        "left_out": round(found.left_out, 3),
        "cautions": [{"text": said.text, "source": said.source} for said in PHOTO_CAUTIONS],
    }
