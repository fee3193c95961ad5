"""The season file that comes with the program."""

from __future__ import annotations

from importlib.resources import files

__all__ = ["demo_text"]


def demo_text() -> str:
    """Give the demo season's file as text, in TOML. Everything in it is invented."""
    return files("loopwright.data").joinpath("demo", "winter.toml").read_text(encoding="utf-8")
