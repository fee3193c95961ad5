"""The tables of fields in ``docs/season-file.md``, written from the schema.

``python -m loopwright.files.reference`` prints them, with ``--schema`` the JSON Schema itself; given the name of a
document it puts the tables between that document's markers.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Final

from loopwright.chart import SYMBOLS
from loopwright.fabric import STRUCTURES
from loopwright.files.schema import Schema, season_schema
from loopwright.files.wanted import SchemaReader
from loopwright.yarn import FIBRES

__all__ = ["BEGIN", "END", "field_tables", "main", "with_field_tables"]

BEGIN: Final = "<!-- fields: written by python -m loopwright.files.reference -->"
END: Final = "<!-- fields: end -->"
_HEAD: Final = "| field | needed | what to write | what it is |\n|---|---|---|---|"


def field_tables() -> str:
    """Give every table of a season file as Markdown, outermost first."""
    reader = SchemaReader()
    sections = []
    for title, schema in _tables(reader, (), reader.root):
        rows = [_row(reader, schema, name) for name in schema["properties"]]
        sections.append("\n".join([f"### {title}", "", schema["description"], "", _HEAD, *rows]))
    sections.append(f"### Fabrics\n\n{', '.join(STRUCTURES)}. The American names of these are read too.")
    marks = "\n".join(f"| `{one.mark}` | {one.name} |" for one in SYMBOLS)
    sections.append(f"### Marks of stitches in a chart\n\n| mark | stitch |\n|---|---|\n{marks}")
    sections.append(f"### Fibres\n\n{', '.join(FIBRES)}, other.")
    return "\n\n".join(sections)


def with_field_tables(document: str) -> str:
    """Put the tables between the markers of a document.

    :raises ValueError: the document has no markers.
    """
    before, begin, rest = document.partition(BEGIN)
    _, end, after = rest.partition(END)
    if not begin or not end:
        raise ValueError(f"the document has no lines {BEGIN} and {END}")
    return f"{before}{BEGIN}\n\n{field_tables()}\n\n{END}{after}"


def main(arguments: Sequence[str] | None = None) -> None:
    """Print the tables or the schema, or put the tables into a document."""
    parser = argparse.ArgumentParser(prog="python -m loopwright.files.reference", description=__doc__)
    parser.add_argument("document", nargs="?", type=Path, help="put the tables into this document")
    parser.add_argument("--schema", action="store_true", help="print the JSON Schema")
    chosen = parser.parse_args(arguments)
    if chosen.document is not None:
        text = chosen.document.read_text(encoding="utf-8")
        chosen.document.write_text(with_field_tables(text), encoding="utf-8")
    elif chosen.schema:
        sys.stdout.write(json.dumps(season_schema(), indent=2, ensure_ascii=False) + "\n")
    else:
        sys.stdout.write(field_tables() + "\n")


def _tables(reader: SchemaReader, path: tuple[str, ...], schema: Schema) -> Iterator[tuple[str, Schema]]:
    """Give each table with its heading, a table before those inside it."""
    yield f"`[{'.'.join(path)}]`" if path else "At the top", schema
    for name, field in schema["properties"].items():
        inside = reader.resolved(field)
        where = (*path, name)
        if inside.get("type") == "array":
            inside = reader.resolved(inside["items"])
            if "properties" in inside:
                yield f"An entry of `{'.'.join(where)}`", inside
        elif "properties" in inside:
            yield from _tables(reader, where, reader.resolved({"$ref": field["$ref"]}))
        elif "$ref" in (inside.get("additionalProperties") or ()):
            key = "ROLE" if name in {"yarn", "yarns"} and path else "KEY"
            yield from _tables(reader, (*where, key), reader.resolved(inside["additionalProperties"]))


def _row(reader: SchemaReader, schema: Schema, name: str) -> str:
    field = schema["properties"][name]
    needed = "yes" if name in schema["required"] else ""
    meaning = field["description"]
    if "default" in field and field["default"] is not False:
        meaning += f"; left out, {field['default']}"
    cells = (f"`{name}`", needed, reader.words(field), meaning)
    return f"| {' | '.join(cell.replace('|', chr(92) + '|') for cell in cells)} |"


if __name__ == "__main__":
    main()
