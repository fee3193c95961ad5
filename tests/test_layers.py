"""The order of the rooms: the contracts in pyproject.toml hold, can fail, and say what layers.txt says."""

import os
import re
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PACKAGE = ROOT / "src" / "loopwright"

RUN_CONTRACTS = """
from importlinter.cli import lint_imports
raise SystemExit(lint_imports(no_cache=True, no_logo=True))
"""

BREACHES = {
    "a room imports a higher one": (
        {"units/length.py": "import loopwright.season\n", "season/__init__.py": ""},
        "loopwright.units is not allowed to import loopwright.season",
    ),
    "peers import one another": (
        {"body/__init__.py": "import loopwright.colour\n", "colour/__init__.py": ""},
        "loopwright.body is not allowed to import loopwright.colour",
    ),
    "a room stands in no layer": (
        {"attic/__init__.py": ""},
        "loopwright.attic",
    ),
    "the core knows a database": (
        {"yarn/__init__.py": "def rows():\n    import sqlite3\n"},
        "loopwright.yarn -> sqlite3",
    ),
    "two modules import one another": (
        {
            "yarn/__init__.py": "",
            "yarn/a.py": "import loopwright.yarn.b\n",
            "yarn/b.py": "import loopwright.yarn.a\n",
        },
        "No cycles are allowed in loopwright.yarn",
    ),
}


def check_contracts(root: Path) -> subprocess.CompletedProcess[str]:
    """Run the contracts of `root`/pyproject.toml over `root`/src in a process of its own."""
    environment = {**os.environ, "PYTHONPATH": str(root / "src")}
    return subprocess.run(
        [sys.executable, "-c", RUN_CONTRACTS],
        cwd=root,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )


def contract_layers() -> list[set[str]]:
    """Give the rooms of the first contract, highest first, peers together."""
    contracts = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["tool"]["importlinter"]["contracts"]
    return [set(re.findall(r"\w+", layer)) for layer in contracts[0]["layers"]]


def layers_in_words() -> list[set[str]]:
    """Give the same from layers.txt."""
    return [set(line.split()) for line in (ROOT / "layers.txt").read_text("utf-8").splitlines()]


def test_contracts_hold() -> None:
    done = check_contracts(ROOT)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize(("modules", "complaint"), BREACHES.values(), ids=BREACHES.keys())
def test_contracts_see_a_breach(tmp_path: Path, modules: dict[str, str], complaint: str) -> None:
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    for name, text in {"__init__.py": "", "units/__init__.py": "", **modules}.items():
        module = tmp_path / "src" / "loopwright" / name
        module.parent.mkdir(parents=True, exist_ok=True)
        module.write_text(text, encoding="utf-8")
    done = check_contracts(tmp_path)
    assert done.returncode == 1
    assert complaint in " ".join(done.stdout.split())


def test_shell_rooms_may_reach_out(tmp_path: Path) -> None:
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    for room, text in {
        "cli": "import typer, loopwright.web\n",
        "web": "import django.http\n",
        ".": "",
    }.items():
        (tmp_path / "src" / "loopwright" / room).mkdir(parents=True, exist_ok=True)
        (tmp_path / "src" / "loopwright" / room / "__init__.py").write_text(text, encoding="utf-8")
    done = check_contracts(tmp_path)
    assert done.returncode == 0, done.stdout + done.stderr


def test_layers_in_words_agree_with_the_contract() -> None:
    assert layers_in_words() == contract_layers()


def test_every_folder_with_modules_is_a_package() -> None:
    """The contracts do not see modules in a folder without __init__.py."""
    folders = {module.parent for module in PACKAGE.rglob("*.py")}
    assert [folder for folder in sorted(folders) if not (folder / "__init__.py").exists()] == []
