"""Drawing on a chart: one sitting is one change, and nobody's drawing is lost under another's."""

import pytest

from loopwright.files import demo_text, read_season_text
from loopwright.store import changes
from loopwright.store.errors import ChangedMeanwhile, ChangeRefused

ROWS = ("mr", "rm")


@pytest.fixture
def key() -> str:
    return changes.keep_season(read_season_text(demo_text(), "demo", "toml"))


def known(key: str) -> str:
    return changes.season_of(key).chart_by_key["tide-line"].fingerprint


def draw(key: str, *rows: str, version: int | None = None) -> int:
    _, version = changes.draw_chart(
        key, "tide-line", "drew Tide line", {"rows": list(rows)}, known=known(key), last_version=version
    )
    return version


def rows(key: str) -> tuple[str, ...]:
    return changes.season_of(key).chart_by_key["tide-line"].rows


def test_what_is_drawn_in_one_sitting_is_undone_at_once(key: str) -> None:
    before = rows(key)
    version = draw(key, "mr")
    version = draw(key, "mr", "rm", version=version)
    draw(key, "mr", "rm", "mm", version=version)
    assert changes.undo(key) == "drew Tide line"
    assert rows(key) == before
    assert changes.history(key).undo is None
    changes.redo(key)
    assert rows(key) == ("mr", "rm", "mm")


def test_another_change_between_begins_another_one(key: str) -> None:
    version = draw(key, "mr")
    changes.change_entry(key, "charts", "tide-line", "named it", {"name": "Other"})
    draw(key, "rr", version=version)
    changes.undo(key)
    assert changes.history(key).undo == "named it"
    assert rows(key) == ("mr",)


def test_a_second_sitting_is_another_change(key: str) -> None:
    draw(key, "mr")
    draw(key, "rr")
    changes.undo(key)
    assert rows(key) == ("mr",)


def test_what_is_drawn_and_taken_back_leaves_nothing_to_undo(key: str) -> None:
    before = rows(key)
    version = draw(key, "mr")
    draw(key, *before, version=version)
    assert changes.history(key).undo is None


def test_a_drawing_on_what_is_no_longer_so_is_refused(key: str) -> None:
    old = known(key)
    draw(key, "mr")
    with pytest.raises(ChangedMeanwhile, match="'Tide line' was changed elsewhere"):
        changes.draw_chart(key, "tide-line", "drew it", {"rows": ["rr"]}, known=old)
    assert rows(key) == ("mr",)


def test_a_step_that_was_sent_twice_is_no_clash(key: str) -> None:
    old = known(key)
    draw(key, "mr")
    kept, _ = changes.draw_chart(key, "tide-line", "drew it", {"rows": ["mr"]}, known=old)
    assert kept.rows == ("mr",)
    with pytest.raises(ChangedMeanwhile):
        changes.draw_chart(key, "tide-line", "drew it", {"rows": ["m?"]}, known=old)


def test_what_is_no_chart_is_refused_and_nothing_written(key: str) -> None:
    before = rows(key)
    with pytest.raises(ChangeRefused, match="a mark that no role has"):
        draw(key, "m?")
    assert rows(key) == before


def test_a_chart_is_added_and_taken_away(key: str) -> None:
    added = changes.add_entry(
        key,
        "charts",
        "Other",
        "added Other",
        {"name": "Other", "rows": list(ROWS), "roles": {"m": "main", "r": "contrast"}},
    )
    assert [role.role for role in changes.season_of(key).chart_by_key[added].roles] == ["main", "contrast"]
    changes.remove_entry(key, "charts", added, "took it away")
    changes.undo(key)
    assert changes.season_of(key).chart_by_key[added].rows == ROWS
