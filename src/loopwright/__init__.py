"""Loopwright: plan and make a season of hand-knitted garments, with the working shown."""

__all__ = ["__version__"]

__version__ = "0.1.0"
