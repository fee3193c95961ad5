"""Yarn section by section, long tails, and what a remnant can still knit."""
