"""``loopwright plan`` and ``demo``."""

import json
import re
from pathlib import Path

import pytest

from loopwright.files import demo_text, read_season
from loopwright.season import SeasonPlan, plan
from tests.cli.conftest import Run


def test_every_question_is_answered_with_its_reasons(run: Run, winter: Path) -> None:
    done = run("plan", winter)
    assert (done.code, done.err) == (0, "")
    planned = plan(read_season(winter))
    printed = " ".join(done.out.split())
    for answer in (*planned.answers, *(one for garment in planned.garments for one in garment.answers)):
        for text in (answer.question, answer.sentence, *answer.reasons):
            assert " ".join(text.split()) in printed


def test_each_garment_stands_with_its_state_and_its_yarn(run: Run) -> None:
    out = run("demo").out
    assert re.search(r"^Cardigan for herself, short of yarn ─+$", out, re.MULTILINE)
    assert re.search(r"^ +main +Long Headland Aran +Tarn +\d+ ± \d+ m +680 m +under 1 % +6 +2 *$", out, re.MULTILINE)


def test_cautions_stand_below(run: Run, winter: Path) -> None:
    cautions = plan(read_season(winter)).cautions
    printed = " ".join(run("plan", winter).out.split())
    assert cautions
    assert all(" ".join(caution.text.split()) in printed for caution in cautions)


def test_what_is_piped_is_100_wide_and_without_colour(run: Run) -> None:
    lines = run("demo").out.splitlines()
    assert max(map(len, lines)) == 100
    assert not any("\x1b" in line for line in lines)


def test_a_terminal_has_colour_unless_it_wants_none(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    green, red = "\x1b[32m", "\x1b[31m"
    monkeypatch.setenv("FORCE_COLOR", "1")  # rich then takes what it prints to for a terminal
    monkeypatch.setenv("TERM", "xterm")
    assert green in run("demo").out
    monkeypatch.setenv("NO_COLOR", "1")
    out = run("demo").out
    assert green not in out
    assert red not in out


def test_text_in_square_brackets_is_printed_as_it_is(run: Run, winter: Path) -> None:
    winter.write_text(demo_text().replace("Winter at Wethers Reach", "Winter [red]:smile:[/x]"), encoding="utf-8")
    assert run("plan", winter).out.startswith("Winter [red]:smile:[/x]\n")


def test_measures_and_words_are_the_readers(run: Run) -> None:
    out = run("demo", "--measures", "imperial", "--words", "american").out
    assert "Is my gauge right?" in out
    assert "color" in out
    assert re.search(r"\d yd\b", out)
    assert not re.search(r"\d cm\b", out)


def test_json_is_the_plan(run: Run, winter: Path) -> None:
    done = run("plan", winter, "--json")
    assert SeasonPlan.model_validate_json(done.out) == plan(read_season(winter))
    assert json.loads(done.out)["garments"][0]["name"] == "Shawl for Wen"


def test_a_variable_stands_for_an_option(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LOOPWRIGHT_JSON", "1")
    assert json.loads(run("demo").out)["name"] == "Winter at Wethers Reach"


def test_check_says_what_falls_short(run: Run) -> None:
    done = run("demo", "--check")
    assert done.code == 1
    assert done.out == run("demo").out
    assert done.err == "Cardigan for herself: Tarn suffices under 1 % sure, 95 % is wanted\n"


def test_check_says_yes_when_all_is_there(run: Run, winter: Path) -> None:
    winter.write_text(demo_text().replace("put_ups = 4", "put_ups = 9"), encoding="utf-8")
    done = run("plan", winter, "--check")
    assert (done.code, done.err) == (0, "")


def test_check_says_when_a_date_will_hardly_be_kept(run: Run, winter: Path) -> None:
    text = demo_text().replace("put_ups = 4", "put_ups = 9").replace("hours_a_week = 8", "hours_a_week = 3")
    winter.write_text(text, encoding="utf-8")
    done = run("plan", winter, "--check")
    assert done.code == 1
    assert re.search(r"^Shawl for Wen: done by 2027-04-12 \d+ % sure, 80 % is wanted$", done.err, re.MULTILINE)


def test_the_report_is_one_file_named_after_the_season(run: Run, tmp_path: Path) -> None:
    done = run("demo", "--report", tmp_path / "reports")
    path = tmp_path / "reports" / "winter-at-wethers-reach.html"
    assert done.err == f"Report: {path}\n"
    assert "Winter at Wethers Reach" in path.read_text(encoding="utf-8")


def test_the_report_speaks_to_the_same_reader(run: Run, tmp_path: Path) -> None:
    run("demo", "--report", tmp_path, "--words", "american")
    assert "Is my gauge right?" in (tmp_path / "winter-at-wethers-reach.html").read_text(encoding="utf-8")


def test_every_fault_has_its_line_and_nothing_is_written(run: Run, winter: Path, tmp_path: Path) -> None:
    text = (
        demo_text().replace('mass = "100 g"', 'mass = "100 pebbles"', 1).replace("hours_a_week = 8", "hours_a_week = 0")
    )
    winter.write_text(text, encoding="utf-8")
    done = run("plan", winter, "--report", tmp_path / "reports", "--json")
    assert (done.code, done.out) == (2, "")
    first, second = done.err.splitlines()
    assert re.match(rf"{winter}:\d+: hours_a_week: found 0; wanted ", first)
    assert re.match(rf'{winter}:\d+: yarns.headland-aran.mass: found "100 pebbles"; wanted a mass', second)
    assert not (tmp_path / "reports").exists()


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["plan", "winter.tml"], "found"),
        (["plan", "nowhere.toml"], "nowhere.toml: found .*no such file"),
        (["plan"], "Missing argument"),
        (["plan", "x.toml", "--words", "welsh"], "Invalid value for '--words'"),
        (["knit"], "No such command 'knit'"),
    ],
)
def test_bad_input_is_told_without_a_trace(run: Run, arguments: list[str], message: str) -> None:
    done = run(*arguments)
    assert (done.code, done.out) == (2, "")
    assert re.search(message, done.err)
    assert "Traceback" not in done.err


def test_a_report_that_cannot_be_written_is_told_before_anything_is_printed(run: Run, tmp_path: Path) -> None:
    (tmp_path / "reports").write_text("a file")
    done = run("demo", "--report", tmp_path / "reports")
    assert (done.code, done.out) == (2, "")
    assert "wanted a folder that can be written to" in done.err


def test_the_demo_can_be_taken_to_begin_from(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    assert run("demo", "--write", path).code == 0
    assert path.read_text(encoding="utf-8") == demo_text()


def test_the_demo_never_overwrites(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_text("my own")
    done = run("demo", "--write", path)
    assert done.code == 2
    assert "a file that is there already" in done.err
    assert path.read_text() == "my own"


def test_the_demo_is_written_as_toml_alone(run: Run, tmp_path: Path) -> None:
    assert "ends in .toml" in run("demo", "--write", tmp_path / "mine.json").err
    assert list(tmp_path.iterdir()) == []


def test_the_order_is_listed_below_its_question(run: Run) -> None:
    assert re.search(r"^  1  Shawl for Wen +on the needles, from 1 March *$", run("demo").out, re.MULTILINE)
