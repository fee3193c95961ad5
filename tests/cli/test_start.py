"""The command starts at once, says what it can do, and its page is up to date."""

import subprocess
import sys
from pathlib import Path

import pytest

import loopwright
from loopwright.cli.reference import reference
from tests.cli.conftest import Run

ROOT = Path(__file__).parent.parent.parent

HELP = """
import sys
from loopwright.cli import main
try:
    main(sys.argv[1:])
except SystemExit:
    heavy = ("pydantic", "django", "numpy", "scipy", "rich", "jinja2", "waitress")
    print("loaded:", [name for name in heavy if name in sys.modules])
"""


@pytest.mark.parametrize(
    ("arguments", "loaded"),
    [
        (["--help"], []),
        (["--version"], []),
        (["plan", "--help"], ["pydantic"]),  # by typer itself, to describe the options
        (["serve", "--help"], ["pydantic"]),
    ],
)
def test_nothing_heavy_is_loaded_to_help(arguments: list[str], loaded: list[str]) -> None:
    done = subprocess.run([sys.executable, "-c", HELP, *arguments], capture_output=True, text=True, check=True)
    assert done.stdout.endswith(f"loaded: {loaded}\n")
    assert len(done.stdout.splitlines()) > 1


def test_the_package_can_be_run(run: Run) -> None:
    done = subprocess.run([sys.executable, "-m", "loopwright", "--version"], capture_output=True, text=True, check=True)
    assert done.stdout == run("--version").out == f"loopwright {loopwright.__version__}\n"


def test_without_arguments_it_says_what_it_can_do(run: Run) -> None:
    assert "Plan a season file and answer its questions." in run().out + run().err


def test_the_page_of_commands_is_up_to_date() -> None:
    page = (ROOT / "docs" / "commands.md").read_text(encoding="utf-8")
    assert page == reference(), "run: python -m loopwright.cli.reference > docs/commands.md"


def test_every_verb_and_option_has_help() -> None:
    lines = reference().splitlines()
    bare = [line for line in lines if line.startswith("  --") and len(line.split("  ")) < 3]
    assert [line for line in bare if not lines[lines.index(line) + 1].startswith(" " * 10)] == []


def test_the_root_gives_its_names_when_they_are_asked_for() -> None:
    assert loopwright.__all__ == sorted(loopwright.__all__)
    assert all(getattr(loopwright, name) is not None for name in loopwright.__all__)
    with pytest.raises(AttributeError, match="no attribute 'knit'"):
        loopwright.knit  # noqa: B018


def test_a_closed_pipe_is_no_fault() -> None:
    script = f"{sys.executable} -m loopwright schema | head -1"
    done = subprocess.run(["sh", "-c", script], capture_output=True, text=True, check=True)
    assert (done.stdout, done.stderr) == ("{\n", "")
