"""What the room shows, and that the examples in its docstrings are true."""

import ast
import doctest
import importlib
import pkgutil
import sys
from pathlib import Path

import pytest

from loopwright import units

MODULES = [f"loopwright.units.{module.name}" for module in pkgutil.iter_modules(units.__path__)]


def test_names_are_sorted_and_exist() -> None:
    capitals = [name for name in units.__all__ if name.isupper()]
    classes = [name for name in units.__all__ if name[0].isupper() and not name.isupper()]
    rest = [name for name in units.__all__ if name[0].islower()]
    assert list(units.__all__) == sorted(capitals) + sorted(classes) + sorted(rest)
    assert all(hasattr(units, name) for name in units.__all__)


def test_every_public_name_stands_in_the_table_of_contents() -> None:
    assert [name for name in units.__all__ if f"`{name}`" not in (units.__doc__ or "")] == []


@pytest.mark.parametrize("name", MODULES)
def test_examples_in_docstrings_hold(name: str) -> None:
    module = importlib.import_module(name)
    assert doctest.testmod(module).failed == 0
    assert module.__all__ == sorted(module.__all__, key=lambda n: (not n.isupper(), not n[0].isupper(), n))


@pytest.mark.parametrize("name", MODULES)
def test_only_the_standard_library_is_imported(name: str) -> None:
    source = Path(importlib.import_module(name).__file__ or "").read_text(encoding="utf-8")
    imports = [node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.Import | ast.ImportFrom)]
    roots = [n.module or "" if isinstance(n, ast.ImportFrom) else n.names[0].name for n in imports]
    own = [root for root in roots if root.startswith("loopwright.units")]
    assert {root.split(".")[0] for root in roots if root not in own} <= sys.stdlib_module_names
