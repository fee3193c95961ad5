"""From what validation found wrong in a season to faults in a knitter's words, each with its line."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from loopwright.files.faults import FileFault, SeasonFileFaults, path_text, shown
from loopwright.files.places import Path, Places
from loopwright.files.wanted import SchemaReader
from loopwright.season import Faults
from loopwright.units import BadInput, UnreadableQuantity

__all__ = ["explain", "faults_of", "file_path"]

_MOST_FIELDS_LISTED = 12


@dataclass(frozen=True, slots=True)
class _Finding:
    """A fault whose line is not looked up yet.

    :ivar meant: the field that a misspelt one seems to stand for; it is then not missed as well.
    """

    path: Path
    found: str
    wanted: str
    hint: str | None = None
    meant: Path | None = None


def explain(error: ValidationError, tables: Any, places: Places, file: str) -> SeasonFileFaults:
    """Say everything that validation found wrong in a file.

    :param error: as raised by validating ``tables``.
    :param tables: the file's plain tables.
    :param places: lines by path.
    :param file: name of the file, as it was given.
    """
    return SeasonFileFaults(
        FileFault.make(
            finding.found,
            finding.wanted,
            file=file,
            line=places.line_of(finding.path),
            path=path_text(finding.path),
            hint=finding.hint,
        )
        for finding in _all_findings(error, tables)
    )


def faults_of(error: ValidationError, tables: Any = None) -> list[FileFault]:
    """Say everything that validation found wrong in a season that comes from no file, hence without lines.

    :param error: as raised by validating ``tables``, or by making a season in code.
    :param tables: what was validated, if it was plain tables; without them rows are numbered, not named.
    """
    return [
        FileFault.make(finding.found, finding.wanted, path=path_text(finding.path), hint=finding.hint)
        for finding in _all_findings(error, tables)
    ]


def _all_findings(error: ValidationError, tables: Any) -> list[_Finding]:
    reader = SchemaReader()
    details = error.errors(include_url=False)
    unknown = [_unknown(one, tables, reader) for one in details if one["type"] == "extra_forbidden"]
    meant = {finding.meant for finding in unknown}
    known = [one for one in details if one["type"] != "extra_forbidden"]
    return unknown + [
        finding for one in known for finding in _findings(one, tables, reader) if finding.path not in meant
    ]


def file_path(location: tuple[str | int, ...], tables: Any) -> Path:
    """Turn a place in the records into one in the file, where keyed rows stand under their keys.

    :param location: field names and, for rows, their numbers.
    :param tables: the file's plain tables; None if the season was never in a file.
    """
    if tables is None:
        return location[:-1] if location and location[-1] == "key" else location
    path: list[str | int] = []
    here = tables
    for part in location:
        if isinstance(here, Mapping):
            key = list(here)[part] if isinstance(part, int) and part < len(here) else part
            if isinstance(key, int) or (key == "key" and key not in here):
                break
            path.append(key)
            here = here.get(key)
        elif isinstance(here, list) and str(part).isdigit() and int(part) < len(here):
            path.append(int(part))
            here = here[int(part)]
        else:
            break
    return tuple(path)


def _at(path: Path, tables: Any) -> Any:
    """Give what the file has at a path."""
    here = tables
    for part in path:
        try:
            here = here[part]
        except (KeyError, IndexError, TypeError):
            return None
    return here


def _findings(one: ErrorDetails, tables: Any, reader: SchemaReader) -> Iterator[_Finding]:
    path = file_path(one["loc"], tables)
    kind = one["type"]
    cause = one.get("ctx", {}).get("error")
    if isinstance(cause, Faults):
        for fault in cause.faults:
            yield _said_by_us(fault, one["loc"], tables)
    elif isinstance(cause, BadInput):
        yield _said_by_us(cause, one["loc"], tables)
    elif kind == "missing":
        meaning = (reader.at(path) or {}).get("description")
        yield _Finding(path, "nothing", reader.wanted(path), meaning)
    elif one["loc"] and one["loc"][-1] == "key":
        yield _bad_key(path, one["input"])
    else:
        value = one["input"] if tables is None or not path else _at(path, tables)
        yield _Finding(path, shown(value), _wanted(one, path, reader), _nearest(value, path, reader))


def _said_by_us(fault: BadInput, location: tuple[str | int, ...], tables: Any) -> _Finding:
    """Take over a fault of our own; its place, if it has one, goes on from where it was raised."""
    parts = tuple(fault.place.split(".")) if fault.place else ()
    found = shown(fault.found) if isinstance(fault, UnreadableQuantity) else fault.found
    return _Finding(file_path((*location, *parts), tables), found, fault.wanted, fault.hint)


def _unknown(one: ErrorDetails, tables: Any, reader: SchemaReader) -> _Finding:
    path = file_path(one["loc"], tables)
    *above, name = path
    table = tuple(above)
    known = _fields_of(table, reader)
    near = _near(str(name).lower(), known)
    wanted = f"one of the fields {', '.join(known)}"
    if near:
        hint = f"did you mean '{near[0]}'?"
        wanted = "a field of this table" if len(known) > _MOST_FIELDS_LISTED else wanted
    elif table and name in _fields_of((), reader):
        hint = f"'{name}' belongs to the top of the file, above the first table"
    else:
        hint = None
    meant = (*table, near[0]) if near else None
    return _Finding(path, f"the field '{name}', which is not known here", wanted, hint, meant)


def _near(name: str, known: Sequence[str]) -> list[str]:
    """Give the fields that a name may stand for: those that hold all its words, else those spelt nearly so."""
    words = set(name.split("_"))
    holding = [field for field in known if words < set(field.split("_"))] if len(words) > 1 else []
    return holding or get_close_matches(name, known, n=1)


def _fields_of(table: Path, reader: SchemaReader) -> list[str]:
    schema = reader.at(table)
    return list(reader.resolved(schema).get("properties", {})) if schema is not None else []


def _bad_key(path: Path, value: Any) -> _Finding:
    key = str(value)
    plain = re.sub(r"[^a-z0-9]+", "-", key.lower()).strip("-")[:60].strip("-")
    wanted = "a key of small letters, digits and single hyphens, at most 60, such as rust-dk"
    return _Finding(path, f"the key '{key}'", wanted, f"did you mean '{plain}'?" if plain else None)


def _wanted(one: ErrorDetails, path: Path, reader: SchemaReader) -> str:
    if not one["loc"]:
        return "the fields and tables of a season"
    if one["type"] == "too_short":
        return f"{reader.wanted(path)}, and at least one"
    return reader.wanted(path)


def _nearest(value: Any, path: Path, reader: SchemaReader) -> str | None:
    """Give the nearest of the words that are allowed at a path, if it lists any."""
    schema = reader.at(path)
    if schema is None or not isinstance(value, str):
        return None
    allowed = [str(word) for word in reader.resolved(schema).get("enum", ())]
    near = get_close_matches(value.lower(), allowed, n=1)
    return f"did you mean '{near[0]}'?" if near else None
