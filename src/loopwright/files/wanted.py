"""What is wanted at a place of a season file, in words drawn from its schema."""

from __future__ import annotations

from loopwright.files.places import Path
from loopwright.files.schema import Schema, season_schema

__all__ = ["SchemaReader"]


class SchemaReader:
    """Answers what the schema says of a path."""

    def __init__(self) -> None:
        self.root = season_schema()

    def resolved(self, schema: Schema) -> Schema:
        """Give a schema with its reference followed; what stands beside the reference wins."""
        if "$ref" not in schema:
            return schema
        target: Schema = self.root["$defs"][schema["$ref"].rpartition("/")[2]]
        return {**target, **{name: value for name, value in schema.items() if name != "$ref"}}

    def at(self, path: Path) -> Schema | None:
        """Give the schema of what stands at ``path``, references not followed; None where nothing may stand."""
        schema: Schema = self.root
        for part in path:
            here, below = self.resolved(schema), None
            if isinstance(part, int) and "items" in here:
                below = here["items"]
            elif part in here.get("properties", {}):
                below = here["properties"][part]
            elif isinstance(here.get("additionalProperties"), dict):
                below = here["additionalProperties"]
            if below is None:
                return None
            schema = below
        return schema

    def wanted(self, path: Path) -> str:
        """Say what to write at ``path``, in words that follow "wanted"."""
        schema = self.at(path)
        return self.words(schema) if schema is not None else "a field of this table"

    def words(self, schema: Schema) -> str:
        """Say what to write for a schema, in words that follow "wanted"."""
        if "$ref" in schema:  # what is meant is said at the reference, what is to be written at its target
            return self.words(self.root["$defs"][schema["$ref"].rpartition("/")[2]])
        if "enum" in schema:
            return f"one of {', '.join(str(value) for value in schema['enum'])}"
        if "examples" in schema:
            examples = " or ".join(f'"{example}"' for example in schema["examples"])
            return f"{schema['description']}, such as {examples}"
        if "anyOf" in schema:
            return self.words(schema["anyOf"][0])
        if schema["type"] == "array":
            return f"a list in brackets, each entry {self.words(schema['items'])}"
        return self._table_words(schema) if schema["type"] == "object" else _plain_words(schema)

    def _table_words(self, schema: Schema) -> str:
        rows = schema["additionalProperties"]
        if not rows:
            return "a table of fields"
        if "$ref" in rows:
            return "tables, each under its own key"
        return f"names, each with {self.words(rows)}"


def _plain_words(schema: Schema) -> str:
    if schema.get("format") == "date":
        return "a date, such as 2027-03-01"
    words = {
        "string": "text in quotes",
        "integer": f"a whole number{_range(schema)}",
        "number": f"a number{_range(schema)}",
        "boolean": "true or false",
    }
    return words[schema["type"]]


def _range(schema: Schema) -> str:
    low, above, high = schema.get("minimum"), schema.get("exclusiveMinimum"), schema.get("maximum")
    if low is not None and high is not None:
        return f" from {low:g} to {high:g}"
    words = [f"above {above:g}"] if above is not None else [f"of {low:g} or more"] if low is not None else []
    words += [f"at most {high:g}"] if high is not None else []
    return f" {', '.join(words)}" if words else ""
