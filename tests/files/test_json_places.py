import json

import pytest

from loopwright.files.json_places import json_places
from loopwright.files.places import Path

CASES: dict[str, tuple[str, dict[Path, int]]] = {
    "fields": ('{\n"a": 1,\n\n"b" : "x"}', {("a",): 2, ("b",): 4}),
    "tables": ('{"a": {\n"b": {"c": true,\n"d": null}}}', {("a",): 1, ("a", "b", "c"): 2, ("a", "b", "d"): 3}),
    "lists": ('{"a": [\n1,\n[2, 3],\n{"b": 4}]}', {("a", 0): 2, ("a", 1, 1): 3, ("a", 2, "b"): 4}),
    "nothing inside": ('{"a": {}, "b": [\n],\n"c": 1}', {("a",): 1, ("b",): 1, ("c",): 3}),
    "marks within text": ('{"a": "}]\\",{\\n",\n"b\\u00e9": 1}', {("a",): 1, ("bé",): 2}),
    "a key of its own name": ('\n\n{"": 1}', {("",): 3}),
}


@pytest.mark.parametrize(("text", "lines"), CASES.values(), ids=CASES.keys())
def test_the_line_of_each_path(text: str, lines: dict[Path, int]) -> None:
    json.loads(text)
    places = json_places(text)
    assert {path: places.line_of(path) for path in lines} == lines
    assert not places.repeats


def test_something_missing_is_placed_at_the_table_above() -> None:
    assert json_places('{"a":\n{"b":\n{}}}').line_of(("a", "b", "c")) == 2


def test_what_is_given_twice_is_found_with_both_lines() -> None:
    repeats = json_places('{"a": 1,\n"b": {"a": 2},\n"a": 3}').repeats
    assert [(one.path, one.first_line, one.line) for one in repeats] == [(("a",), 1, 3)]
