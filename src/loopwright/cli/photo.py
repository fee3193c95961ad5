"""The verb ``photo``."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from loopwright.cli.options import AsJson

__all__ = ["photo"]

PhotoFile = Annotated[
    Path, typer.Argument(metavar="FILE", help="A photo as JPEG, PNG or WebP, of at most 20 MB.", show_default=False)
]
_PLACE = 'pixels from the left and from the top, or shares as in "20%,75%"'
WhiteOption = Annotated[
    str | None, typer.Option("--white", metavar="X,Y", help=f"A place on white paper in the same light: {_PLACE}.")
]
YarnOption = Annotated[
    str | None, typer.Option("--yarn", metavar="X,Y", help="A place on the yarn, where it is not found by itself.")
]
MostOption = Annotated[int, typer.Option("--most", metavar="N", help="At most so many colours, 1 to 6.")]
ExactlyOption = Annotated[
    int | None, typer.Option("--exactly", metavar="N", help="Just so many colours, none joined to another.")
]


def photo(
    file: PhotoFile,
    white: WhiteOption = None,
    yarn: YarnOption = None,
    most: MostOption = 6,
    exactly: ExactlyOption = None,
    as_json: AsJson = False,
) -> None:
    """Say which colours a yarn has, from a photo of the skein with white paper beside it.

    Lay the skein on a plain ground of another colour with ground all round it, white paper beside it, by a window out
    of the sun, without flash. What comes out is about the colour, good for planning; it proves no dye lot.
    """
    from loopwright.cli.photographing import tell_photo

    tell_photo(file, white=white, yarn=yarn, most=most, exactly=exactly, as_json=as_json)
