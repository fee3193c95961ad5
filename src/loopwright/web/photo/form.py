"""What is sent with a photo: the picture itself, where the paper and the yarn are, how many colours."""

from __future__ import annotations

import base64
import binascii
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from django.conf import settings
from django.core.files.uploadedfile import UploadedFile
from django.http import HttpRequest

from loopwright.colour import srgb_from_linear
from loopwright.colour.photo import MOST_COLOURS, Bytes, Point, linear_light, read_point
from loopwright.colour.pixels import read_picture, write_jpeg
from loopwright.units import BadInput

__all__ = ["PLACES", "Sent", "nothing_sent", "read_sent"]

PLACES: Final = {"white": "White paper", "yarn": "Yarn"}
"""What can be tapped, and how it is called."""
SHOWN: Final = 1200
"""Pixels on the longer side of the picture that is measured and shown."""


_FIELDS: Final = ("number", *(f"{place}_{way}" for place in PLACES for way in ("across", "down")))
_LONGEST_TYPED: Final = 60


@dataclass(slots=True)
class Sent:
    """What was sent, as far as it can be read.

    :ivar typed: by field name, as it was written.
    :ivar picture: JPEG, made small and written anew; empty where none could be read.
    :ivar pixels: the same as pixels.
    :ivar faults: what is wrong; nothing is measured then.
    """

    typed: Mapping[str, str]
    picture: str = ""
    pixels: Bytes | None = None
    points: dict[str, Point | None] = field(default_factory=dict)
    exactly: int | None = None
    faults: list[str] = field(default_factory=list)


def nothing_sent(picture: bytes = b"", faults: Sequence[str] = ()) -> Sent:
    """Give the form before anything was sent.

    :param picture: a JPEG that is at hand already.
    """
    return Sent(dict.fromkeys(_FIELDS, ""), picture=base64.b64encode(picture).decode(), faults=[*faults])


def read_sent(request: HttpRequest) -> Sent:
    """Read what was sent; a photo that comes with it goes before the one that is on the page already."""
    sent = Sent({name: request.POST.get(name, "").strip()[:_LONGEST_TYPED] for name in _FIELDS})
    try:
        sent.picture = _picture(request)
        sent.pixels = read_picture(base64.b64decode(sent.picture))
    except BadInput as error:
        sent.faults.append(str(error))
    for place, label in PLACES.items():
        try:
            sent.points[place] = _point(sent.typed[f"{place}_across"], sent.typed[f"{place}_down"])
        except BadInput as error:
            sent.faults.append(str(error.at(label)))
    number = sent.typed["number"]
    if number:
        if number in {str(count) for count in range(1, MOST_COLOURS + 1)}:
            sent.exactly = int(number)
        else:
            sent.faults.append(str(BadInput(number, f"1 to {MOST_COLOURS}", place="How many colours")))
    return sent


def _picture(request: HttpRequest) -> str:
    """Give the picture as JPEG in base 64, made small and written anew: nothing but its points is handed on."""
    sent = (request.FILES.get(name) for name in ("photo", "camera"))
    uploaded = next((file for file in sent if isinstance(file, UploadedFile) and file.size), None)
    if uploaded is None:
        try:
            content = base64.b64decode(request.POST.get("picture", ""), validate=True)
        except binascii.Error as error:
            raise BadInput("a picture that came back damaged", "the photo once more") from error
        if not content:
            raise BadInput("", "a photo of the skein", place="Photo")
    else:
        content = uploaded.read()
    pixels = read_picture(content, most_bytes=settings.UPLOAD_LIMIT_BYTES)
    small = np.clip(srgb_from_linear(linear_light(pixels, SHOWN)), 0, 1)
    return base64.b64encode(write_jpeg(np.floor(small * 255 + 0.5).astype(np.uint8), SHOWN)).decode()


def _point(across: str, down: str) -> Point | None:
    """Read a place from its two fields, per cent of the sides; None where both are empty."""
    if not across and not down:
        return None
    shares = [text.rstrip("% ").replace(",", ".") for text in (across, down)]
    try:
        return read_point(f"{shares[0]}%,{shares[1]}%", 1, 1)
    except BadInput as error:
        found = f"{across or 'nothing'} and {down or 'nothing'}"
        raise BadInput(found, "two numbers from 0 to 100, per cent from the left and from the top") from error
