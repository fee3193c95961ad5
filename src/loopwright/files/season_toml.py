"""A season as TOML: text to plain tables and back. Source: TOML v1.0.0, toml.io/en/v1.0.0."""

from __future__ import annotations

import datetime as dt
import re
import tomllib
from collections.abc import Mapping
from typing import Any

import tomli_w

from loopwright.files.faults import FileFault, SeasonFileFaults, repeat_faults, too_deep
from loopwright.files.tables import season_tables
from loopwright.files.toml_places import toml_places
from loopwright.records import Record
from loopwright.season import Season

__all__ = ["parse_toml", "toml_text"]

_POSITION = re.compile(
    r"(?P<message>.*) \(at (?:line (?P<line>\d+), column (?P<column>\d+)|end of document)\)", re.DOTALL
)
_REPEATED = ("Cannot overwrite", "Cannot declare", "Cannot mutate", "Cannot redefine", "Duplicate inline")
_WANTED = (
    ("Expected newline", "one field on a line, and text and quantities in quotes", 'such as length = "36 cm"'),
    ("Expected '=' after", 'a field, an equals sign and a value, such as name = "Winter"', None),
    ("Expected ']", "a table's name between brackets, such as [yarns.rust-dk]", None),
    ("Invalid value", "text in quotes, a number, a date, true or false, or a list in brackets", None),
    ("Unterminated string", "a quote that closes the text", None),
    ("Illegal character", "a quote that closes the text on the same line", None),
    ('Expected "', "a quote that closes the text", None),
    ("Expected '", "a quote that closes the text", None),
    ("Unclosed array", "a comma between the entries of a list and a ] at its end", None),
    ("Unclosed inline", "a comma between the fields of a table in braces and a } at its end", None),
    (
        "Invalid initial",
        "a name of letters, digits, _ and -; other signs in quotes",
        None,
    ),
    ("Unescaped", r"\\ for a backslash", None),
    ("Invalid hex", r"\\ for a backslash", None),
    ("Escaped character", r"\\ for a backslash", None),
    ("Invalid date", "a date that is in the calendar, such as 2027-03-01", None),
)
_USUAL = 'a field such as name = "Winter", or a table\'s name such as [yarns.rust-dk]'


def parse_toml(text: str, name: str) -> dict[str, Any]:
    """Give the plain tables of a TOML text.

    :param name: name of the file, for the faults.
    :raises SeasonFileFaults: the text is no TOML, or a key is given twice.
    """
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise SeasonFileFaults(_syntax_faults(str(error), text, name)) from error
    except RecursionError:
        raise SeasonFileFaults([too_deep(name)]) from None
    except ValueError as error:  # a whole number of thousands of digits
        fault = FileFault.make("a number too long to read", "a number of usual length", file=name, line=1)
        raise SeasonFileFaults([fault]) from error


def _syntax_faults(said: str, text: str, name: str) -> list[FileFault]:
    position = _POSITION.fullmatch(said)
    message = position["message"] if position else said
    if message.startswith(_REPEATED):
        repeated = repeat_faults(toml_places(text), name)
        if repeated:
            return repeated
    rows = text.replace("\r\n", "\n").rstrip().split("\n")
    if position and position["line"]:
        line, column = int(position["line"]), int(position["column"])
        row = rows[line - 1] if line <= len(rows) else ""
        found = f"{_quoted(row)}, which is not TOML from column {column} on" if row.strip() else "nothing more"
    else:
        line, column = len(rows), len(rows[-1]) + 1
        found = f"the end of the file after {_quoted(rows[-1])}"
        row = rows[-1]
    wanted, hint = _wanted(message, row)
    return [FileFault.make(found, wanted, file=name, line=line, column=column, hint=hint)]


def _quoted(row: str) -> str:
    return f"'{row.strip()[:80]}'"


def _wanted(message: str, row: str) -> tuple[str, str | None]:
    """Give what the parser missed in a knitter's words, and a hint drawn from the line."""
    if message == "Invalid value" and row.endswith(("[", ",")):
        message = "Unclosed array"
    wanted, hint = next(
        ((say, try_this) for start, say, try_this in _WANTED if message.startswith(start)), (_USUAL, None)
    )
    value = row.partition("=")[2].partition("#")[0].strip()
    if any(quote in row for quote in "“”„‘’"):
        hint = 'quotes must be straight: "'
    elif message.startswith("Invalid initial") and "{" in row:
        hint = "a table in braces keeps to one line"
    elif value.lower() in {"yes", "no"}:
        hint = f"write {'true' if value.lower() == 'yes' else 'false'}"
    elif message.startswith("Invalid value"):
        hint = f'write "{value}" in quotes' if value[:1].isalnum() and '"' not in value else None
    return wanted, hint


def toml_text(season: Season) -> str:
    """Write a season as TOML: plain fields first, then its tables in the order of :class:`Season`.

    What is unknown or as usual is left out; dates are TOML dates; text over several lines stays so.
    """
    tables = season_tables(season)
    _put_dates_back(season, tables)
    return tomli_w.dumps(tables, multiline_strings=not _holds_crlf(tables))


def _put_dates_back(record: Record, written: dict[str, Any]) -> None:
    """Put dates in the place of their text, in a record and all below it."""
    for name, field in type(record).model_fields.items():
        value, alias = getattr(record, name), field.alias or name
        if alias not in written:
            continue
        if isinstance(value, dt.date):
            written[alias] = value
        elif isinstance(value, Mapping) and isinstance(written[alias], dict):
            written[alias] |= {key: day for key, day in value.items() if isinstance(day, dt.date)}
        elif isinstance(value, Record) and isinstance(written[alias], dict):
            _put_dates_back(value, written[alias])
        elif isinstance(value, tuple) and value and isinstance(value[0], Record):
            below = written[alias]
            if isinstance(below, str):  # a lone record that is written as its text
                continue
            rows = below.values() if isinstance(below, dict) else below
            for row, row_written in zip(value, rows, strict=True):
                if isinstance(row_written, dict):
                    _put_dates_back(row, row_written)


def _holds_crlf(value: Any) -> bool:
    """Say whether a text has a line end that TOML would not give back from text over several lines."""
    if isinstance(value, dict):
        return any(_holds_crlf(below) for below in value.values())
    if isinstance(value, list):
        return any(_holds_crlf(below) for below in value)
    return isinstance(value, str) and "\r\n" in value
