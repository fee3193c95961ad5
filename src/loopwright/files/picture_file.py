"""A picture in a file, read within bounds into plain pixels."""

from __future__ import annotations

from pathlib import Path

from loopwright.colour.pixels import MOST_BYTES, PICTURE_WANTED, Pixels, read_picture
from loopwright.units import BadInput

__all__ = ["read_picture_file"]


def read_picture_file(path: Path) -> Pixels:
    """Read a picture from a file, as :func:`~loopwright.colour.pixels.read_picture` does.

    :raises BadInput: it cannot be read.
    """
    try:
        with path.open("rb") as file:
            content = file.read(MOST_BYTES + 1)
    except OSError as error:
        found = (error.strerror or "a file that cannot be read").lower()
        raise BadInput(found, PICTURE_WANTED, place=str(path)) from error
    try:
        return read_picture(content)
    except BadInput as error:
        raise error.at(str(path)) from error
