"""Reads a season file with its very text, to keep both."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from loopwright.files import Format, read_season, read_season_text
from loopwright.season import Season

__all__ = ["Source", "read_source"]


@dataclass(frozen=True, slots=True)
class Source:
    """A season and the file that it was read from."""

    season: Season
    text: str
    format: Format
    name: str

    def keep(self, key: str | None = None) -> str:
        """Keep it; give the key that it is kept under. The database has to be ready."""
        from loopwright.store.changes import keep_season

        says = f"loaded {self.name}"
        return keep_season(self.season, key=key, text=self.text, text_format=self.format, says=says)


def read_source(path: Path) -> Source:
    """Read a season file.

    :raises LoopwrightError: it cannot be read, or says what cannot be.
    """
    read_season(path)  # for its faults: no such file, not text, too large
    text = path.read_bytes().decode("utf-8")
    format: Format = "json" if path.suffix.lower() == ".json" else "toml"
    return Source(read_season_text(text, name=str(path), format=format), text, format, path.name)
