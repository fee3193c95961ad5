"""What is said about colours from a photograph, the same at the command line and on the page."""

from __future__ import annotations

from typing import Final

from loopwright.colour.photo import PHOTO_LIMITS, PhotoColour, PhotoColours
from loopwright.season.cautions import caution
from loopwright.units import write_share

__all__ = ["PHOTO_CAUTIONS", "balance_text", "doubt_text", "share_text"]

PHOTO_CAUTIONS: Final = tuple(
    caution(key) for key in ("colour", "photo-light", "photo-dye-lot", "photo-screen", "photo-sheen")
)
"""Screens, daylight, dye lots, what a camera cannot see; in the order in which they matter."""


def share_text(colour: PhotoColour) -> str:
    """Write a share to the nearest 5 %, which is all that a photograph knows."""
    if colour.told_share == 1:
        return "all of it"
    step = PHOTO_LIMITS["share_step"].value
    return f"about {write_share(colour.told_share)}" if colour.told_share else f"under {write_share(step)}"


def doubt_text(found: PhotoColours) -> str:
    """Say how far to trust the colours."""
    if found.paper is None:
        return (
            "No white paper was pointed out: without it a colour is off by 10 ΔE00 or more on average, clearly another."
        )
    return "The paper about halves what a camera is off by; 5 ΔE00 is where people begin to speak of another colour."


def balance_text(found: PhotoColours) -> str:
    """Say what the paper did; nothing without it."""
    if found.paper is None:
        return ""
    red, green, blue = found.paper.gains
    return f"Balanced by the paper: red × {red:.2f}, green × {green:.2f}, blue × {blue:.2f}, in linear light."
