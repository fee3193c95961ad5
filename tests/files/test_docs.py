"""The page on the season file: its example is read, its messages are true, its tables are up to date."""

import re
from pathlib import Path

import pytest

from loopwright.files import SeasonFileFaults, read_season_text
from loopwright.files.reference import main, with_field_tables
from loopwright.season import plan

PAGE = Path(__file__).parents[2] / "docs" / "season-file.md"
TEXT = PAGE.read_text("utf-8")
EXAMPLE: str = re.findall(r"```toml\n(.*?)```", TEXT, re.DOTALL)[0]
MESSAGES: list[tuple[str, str]] = re.findall(r"```diff\n(.*?)```\n```text\n(.*?)```", TEXT, re.DOTALL)


def changed(diff: str) -> str:
    """Give the example with the first line that a diff takes away replaced by the one that it adds."""
    lines = diff.splitlines()
    old = next(line[1:] + "\n" for line in lines if line.startswith("-"))
    new = "".join(line[1:] + "\n" for line in lines if line.startswith("+"))
    assert f"\n{old}" in EXAMPLE
    return EXAMPLE.replace(f"\n{old}", f"\n{new}", 1)


def test_the_example_is_a_season_that_can_be_planned() -> None:
    season = read_season_text(EXAMPLE, "winter.toml", "toml")
    assert {garment.name for garment in plan(season).garments} == {"Lichen pullover", "Ember hat"}


@pytest.mark.parametrize(("diff", "message"), MESSAGES, ids=[diff.split("\n")[0] for diff, _ in MESSAGES])
def test_a_mistake_is_met_as_the_page_says(diff: str, message: str) -> None:
    with pytest.raises(SeasonFileFaults) as caught:
        read_season_text(changed(diff), "winter.toml", "toml")
    assert str(caught.value) == message.rstrip("\n")


def test_the_page_shows_ten_mistakes() -> None:
    assert len(MESSAGES) == 10


def test_the_tables_of_fields_are_up_to_date() -> None:
    assert with_field_tables(TEXT) == TEXT, "run python -m loopwright.files.reference docs/season-file.md"


def test_a_page_without_markers_is_left_alone() -> None:
    with pytest.raises(ValueError, match="has no lines"):
        with_field_tables("# A page")


def test_the_command_prints_the_tables(capsys: pytest.CaptureFixture[str]) -> None:
    main([])
    assert "### `[yarns.KEY]`" in capsys.readouterr().out


def test_the_command_writes_the_tables_into_a_page(tmp_path: Path) -> None:
    page = tmp_path / "page.md"
    page.write_text(TEXT.replace("| `today` |", "| `tomorrow` |"), encoding="utf-8")
    main([str(page)])
    assert page.read_text("utf-8") == TEXT
