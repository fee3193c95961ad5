"""Reads and writes the season file, in TOML or JSON."""

from __future__ import annotations

import os
import stat
import tempfile
from difflib import get_close_matches
from pathlib import Path
from typing import Final, Literal

from pydantic import ValidationError

from loopwright.files.explain import explain
from loopwright.files.faults import FileFault, SeasonFileFaults
from loopwright.files.json_places import json_places
from loopwright.files.season_json import json_text, parse_json
from loopwright.files.season_toml import parse_toml, toml_text
from loopwright.files.toml_places import toml_places
from loopwright.records import FROM_FILE
from loopwright.season import Season
from loopwright.units import BadInput

__all__ = ["Format", "read_season", "read_season_text", "save_season", "write_season_text"]

Format = Literal["toml", "json"]

MOST_BYTES: Final = 5_000_000
_FORMATS: Final[dict[str, Format]] = {".toml": "toml", ".json": "json"}
_PARSERS: Final = {"toml": parse_toml, "json": parse_json}
_PLACES: Final = {"toml": toml_places, "json": json_places}
_WRITERS: Final = {"toml": toml_text, "json": json_text}
_WANTED_FILE: Final = "a season file, .toml or .json"


def read_season_text(text: str, name: str, format: Format) -> Season:
    """Read a season from text.

    :param name: name of the file, for the faults.
    :param format: ``toml`` or ``json``.
    :raises SeasonFileFaults: one or more faults, each with its line and field.
    """
    text = text.removeprefix("\N{ZERO WIDTH NO-BREAK SPACE}")  # the byte order mark that some editors put first
    tables = _PARSERS[format](text, name)
    if not tables:
        wanted = "a season: its name, today, hours_a_week and currency, and its tables"
        raise SeasonFileFaults([FileFault.make("nothing", wanted, file=name, line=1)])
    try:
        return Season.model_validate(tables, context=FROM_FILE, by_alias=True, by_name=False)
    except ValidationError as error:
        raise explain(error, tables, _PLACES[format](text), name) from error


def write_season_text(season: Season, format: Format) -> str:
    """Write a season as text that :func:`read_season_text` reads back to an equal season.

    What is unknown or as usual is left out. Comments of a file that was read are not kept.
    """
    return _WRITERS[format](season)


def read_season(path: Path | str) -> Season:
    """Read a season file; its suffix says whether it is TOML or JSON.

    :raises BadInput: no such file, not a file, not readable, larger than 5 MB, not UTF-8 text, or another suffix.
    :raises SeasonFileFaults: faults in what it says.
    """
    path = Path(path)
    format = _format_of(path)
    return read_season_text(_text_of(path), str(path), format)


def save_season(season: Season, path: Path | str) -> None:
    """Write a season file whole or not at all: an old file stays as it was until the new one is on the disk.

    Before anything is replaced the new text is read back and compared with the season.

    :raises BadInput: another suffix than ``.toml`` or ``.json``, the place cannot be written to, or the text would
        not read back to the same season.
    :raises SeasonFileFaults: the text would not read back at all.
    """
    path = Path(path)
    format = _format_of(path)
    text = write_season_text(season, format)
    if read_season_text(text, str(path), format) != season:
        raise BadInput(
            "a season that reads back differently", "one made of values that a file can hold", place=str(path)
        )
    if path.exists() and not path.is_file():
        raise BadInput("a folder, or something that is no file", _WANTED_FILE, place=str(path))
    try:
        _replace(path.resolve(), text.encode("utf-8"))
    except OSError as error:
        raise BadInput(
            _reason(error), "a place that can be written to; what stood there is unchanged", place=str(path)
        ) from error


def _format_of(path: Path) -> Format:
    format = _FORMATS.get(path.suffix.lower())
    if format is None:
        found = f"a name that ends in {path.suffix}" if path.suffix else "a name without a suffix"
        raise BadInput(found, _WANTED_FILE, place=str(path))
    return format


def _text_of(path: Path) -> str:
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            found = "a folder" if path.is_dir() else "something that is no file"
            raise BadInput(found, _WANTED_FILE, place=str(path))
        with path.open("rb") as file:
            content = file.read(MOST_BYTES + 1)
    except FileNotFoundError as error:
        raise BadInput("no such file", _WANTED_FILE, place=str(path), hint=_near(path)) from error
    except OSError as error:
        raise BadInput(_reason(error), _WANTED_FILE, place=str(path)) from error
    if len(content) > MOST_BYTES:
        raise BadInput("more than 5 MB", "a season file of at most 5 MB", place=str(path))
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError as error:
        raise _not_text(content, path) from error
    if "\0" in text:
        raise _not_text(content, path)
    return text


def _not_text(content: bytes, path: Path) -> BadInput:
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return BadInput("text in UTF-16", "text in UTF-8", place=str(path), hint="save it as UTF-8 in your editor")
    if b"\0" in content:
        return BadInput("a file that is not text", _WANTED_FILE, place=str(path))
    hint = "save it as UTF-8 in your editor"
    return BadInput("text in another encoding", "text in UTF-8", place=str(path), hint=hint)


def _near(path: Path) -> str | None:
    """Suggest a season file in the same folder with a similar name."""
    try:
        names = [one.name for one in path.parent.iterdir() if one.suffix.lower() in _FORMATS]
    except OSError:
        return None
    near = get_close_matches(path.name, names, n=1)
    return f"did you mean '{near[0]}'?" if near else None


def _reason(error: OSError) -> str:
    return (error.strerror or type(error).__name__).lower()


def _replace(path: Path, content: bytes) -> None:
    """Put a file in the place of another in one step, with the old one's permissions."""
    descriptor, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=".part")
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        Path(temporary).chmod(_mode_for(path))
        Path(temporary).replace(path)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise
    _sync_folder(path.parent)


def _mode_for(path: Path) -> int:
    """Give the permissions of the file that is replaced, or those of a new file."""
    if path.exists():
        return stat.S_IMODE(path.stat().st_mode)
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def _sync_folder(folder: Path) -> None:
    """Make the new name last through a power cut, where the system lets a folder be synced."""
    if os.name != "posix":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)
