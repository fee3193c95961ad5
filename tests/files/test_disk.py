"""Season files on the disk: what cannot be read, and that a save replaces the old file whole or not at all."""

import os
import re
from pathlib import Path

import pytest

from loopwright.files import SeasonFileFaults, read_season, read_season_text, save_season
from loopwright.season import Season
from loopwright.units import BadInput
from tests.files.texts import SEASON

UNREADABLE = {
    "binary": (b"\x7fELF\x00\x01\x02", "a file that is not text"),
    "picture": (b"\x89PNG\r\n\x1a\n\x00\xff", "a file that is not text"),
    "Latin-1": ('name = "Gr\xfcn"'.encode("latin-1"), "text in another encoding"),
    "UTF-16": ('name = "x"'.encode("utf-16"), "text in UTF-16"),
    "large": (b"#" * 5_000_001, "more than 5 MB"),
}


@pytest.fixture
def season() -> Season:
    return read_season_text(SEASON, "winter.toml", "toml")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "winter.toml"
    path.write_text(SEASON, encoding="utf-8")
    return path


def refusal(path: Path) -> str:
    with pytest.raises(BadInput) as caught:
        read_season(path)
    assert caught.value.place == str(path)
    return caught.value.found


def test_a_file_that_is_not_there_is_named_with_its_neighbour(path: Path) -> None:
    with pytest.raises(BadInput, match=re.escape('winer.toml: found "no such file"; wanted a season file')) as caught:
        read_season(path.with_name("winer.toml"))
    assert caught.value.hint == "did you mean 'winter.toml'?"


def test_a_file_in_a_folder_that_is_not_there(tmp_path: Path) -> None:
    assert refusal(tmp_path / "none" / "winter.toml") == "no such file"


def test_a_folder_is_no_season(tmp_path: Path) -> None:
    (tmp_path / "winter.toml").mkdir()
    assert refusal(tmp_path / "winter.toml") == "a folder"


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="there are no pipes by name here")
def test_a_pipe_is_no_season_and_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "winter.toml")
    assert refusal(tmp_path / "winter.toml") == "something that is no file"


@pytest.mark.parametrize(("content", "found"), UNREADABLE.values(), ids=UNREADABLE.keys())
def test_what_is_no_text_is_refused(path: Path, content: bytes, found: str) -> None:
    path.write_bytes(content)
    assert refusal(path) == found


@pytest.mark.parametrize(("name", "found"), [("w.yaml", "a name that ends in .yaml"), ("w", "a name without a suffix")])
def test_another_suffix_is_refused(tmp_path: Path, name: str, found: str) -> None:
    assert refusal(tmp_path / name) == found


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root may read everything")
def test_a_file_that_may_not_be_read(path: Path) -> None:
    path.chmod(0)
    assert refusal(path) == "permission denied"


def test_a_byte_order_mark_is_read_over(path: Path, season: Season) -> None:
    path.write_bytes(b"\xef\xbb\xbf" + SEASON.encode("utf-8"))
    assert read_season(path) == season


def test_line_ends_of_other_systems_are_read(path: Path, season: Season) -> None:
    path.write_bytes(SEASON.replace("\n", "\r\n").encode("utf-8"))
    assert read_season(path) == season


def test_faults_in_a_file_name_it_as_it_was_given(path: Path) -> None:
    path.write_text(SEASON.replace('"50 g"', '"50"'), encoding="utf-8")
    with pytest.raises(SeasonFileFaults, match=f"^{re.escape(str(path))}:16: yarns.fennock-dk.mass: "):
        read_season(str(path))


@pytest.mark.parametrize("name", ["spring.toml", "spring.JSON"])
def test_a_saved_season_is_read_back(tmp_path: Path, season: Season, name: str) -> None:
    save_season(season, tmp_path / name)
    assert read_season(tmp_path / name) == season
    assert [one.name for one in tmp_path.iterdir()] == [name]


def test_saving_keeps_the_permissions_of_the_old_file(path: Path, season: Season) -> None:
    path.chmod(0o640)
    save_season(season, path)
    assert path.stat().st_mode & 0o777 == 0o640


def test_a_new_file_has_the_usual_permissions(tmp_path: Path, season: Season) -> None:
    (tmp_path / "usual").touch()
    save_season(season, tmp_path / "spring.toml")
    assert (tmp_path / "spring.toml").stat().st_mode == (tmp_path / "usual").stat().st_mode


def test_saving_through_a_link_keeps_the_link(path: Path, season: Season) -> None:
    link = path.with_name("this-year.toml")
    link.symlink_to(path)
    save_season(season.model_copy(update={"name": "Three hats"}), link)
    assert link.is_symlink()
    assert read_season(path).name == "Three hats"


def test_a_season_that_would_not_read_back_leaves_the_old_file(path: Path, season: Season) -> None:
    with pytest.raises(SeasonFileFaults):
        save_season(season.model_copy(update={"hours_a_week": -1.0}), path)
    assert path.read_text("utf-8") == SEASON


def test_a_season_that_would_read_back_otherwise_leaves_the_old_file(path: Path, season: Season) -> None:
    with pytest.raises(BadInput, match="reads back differently"):
        save_season(season.model_copy(update={"name": " with blanks around "}), path)
    assert path.read_text("utf-8") == SEASON


def test_a_folder_is_never_replaced(tmp_path: Path, season: Season) -> None:
    (tmp_path / "winter.toml").mkdir()
    with pytest.raises(BadInput, match="a folder"):
        save_season(season, tmp_path / "winter.toml")


def test_a_place_that_cannot_be_written_to(tmp_path: Path, season: Season) -> None:
    with pytest.raises(BadInput, match=r"no such file or directory.*what stood there is unchanged"):
        save_season(season, tmp_path / "none" / "winter.toml")


def test_a_failed_write_leaves_the_old_file_and_nothing_else(path: Path, season: Season) -> None:
    """A limit of the system on file sizes stands in for a full disk."""
    resource = pytest.importorskip("resource")
    signal = pytest.importorskip("signal")
    before = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    try:
        resource.setrlimit(resource.RLIMIT_FSIZE, (100, limits[1]))
        with pytest.raises(BadInput, match="file too large"):
            save_season(season, path)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
        signal.signal(signal.SIGXFSZ, before)
    assert path.read_text("utf-8") == SEASON
    assert [one.name for one in path.parent.iterdir()] == [path.name]
