"""A season as JSON: text to plain tables and back. Source: RFC 8259."""

from __future__ import annotations

import json
from typing import Any, NoReturn

from loopwright.files.faults import FileFault, SeasonFileFaults, repeat_faults, too_deep
from loopwright.files.json_places import json_places
from loopwright.files.tables import season_tables
from loopwright.season import Season

__all__ = ["json_text", "parse_json"]

_WANTED = (
    ("Expecting property name", 'a field in double quotes, such as "name"', "no comma after the last field"),
    ("Illegal trailing comma", "no comma after the last field or entry", None),
    ("Expecting ':'", "a colon between a field and its value", None),
    ("Expecting ','", "a comma between fields or entries", None),
    ("Unterminated string", "a quote that closes the text", None),
    ("Invalid control", r"\n where a line ends inside text", None),
    ("Invalid \\", r"\\ for a backslash", None),
    ("Extra data", "nothing after the closing brace", None),
)
_USUAL = "text in double quotes, a number, true or false, a list or a table in braces"


def parse_json(text: str, name: str) -> Any:
    """Give the plain tables of a JSON text.

    :param name: name of the file, for the faults.
    :raises SeasonFileFaults: the text is no JSON, or a key is given twice.
    """
    repeated = False

    def table(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        nonlocal repeated
        fields = dict(pairs)
        repeated |= len(fields) < len(pairs)
        return fields

    try:
        tables = json.loads(text, object_pairs_hook=table, parse_constant=_refuse)
        faults = repeat_faults(json_places(text), name) if repeated else []
    except json.JSONDecodeError as error:
        faults = [_syntax_fault(error, name)]
    except RecursionError:
        faults = [too_deep(name)]
    except ValueError as error:
        faults = [FileFault.make(str(error), "a number of usual size", file=name, line=1)]
    if faults:
        raise SeasonFileFaults(faults)
    return tables


def _refuse(word: str) -> NoReturn:
    raise ValueError(f"the number {word}")


def _syntax_fault(error: json.JSONDecodeError, name: str) -> FileFault:
    wanted, hint = next(
        ((say, try_this) for start, say, try_this in _WANTED if error.msg.startswith(start)), (_USUAL, None)
    )
    row = error.doc.split("\n")[error.lineno - 1].strip()
    at_end = not error.doc[error.pos :].strip()
    found = "the end of the file" if at_end else f"'{row[:80]}', which is not JSON from column {error.colno} on"
    return FileFault.make(
        found, wanted, file=name, line=error.lineno, column=error.colno, hint=None if at_end else hint
    )


def json_text(season: Season) -> str:
    """Write a season as JSON with the same fields as TOML; what is unknown or as usual is left out."""
    return json.dumps(season_tables(season), indent=2, ensure_ascii=False) + "\n"
