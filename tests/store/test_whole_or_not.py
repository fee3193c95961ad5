"""A change happens whole or not at all, whatever stops it; and two at once are both kept."""

import os
import signal
import subprocess
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import pytest
from django.db import DatabaseError, connection, connections
from django.db.models import Model

from loopwright.season import Season
from loopwright.store import changes
from loopwright.store.models import Revision, SeasonRow
from loopwright.store.rows import KINDS

Execute = Callable[..., Any]


class FailsAt:
    """Lets so many statements through to the database and refuses the next."""

    def __init__(self, number: int) -> None:
        self.left = number

    def __call__(self, execute: Execute, sql: str, parameters: Any, many: bool, context: dict[str, Any]) -> Any:
        self.left -= 1
        if self.left == -1:
            raise DatabaseError("no room left on the disk")
        return execute(sql, parameters, many, context)


def everything() -> list[Any]:
    """All rows of all tables."""
    tables: tuple[type[Model], ...] = (SeasonRow, Revision, *(kind.row for kind in KINDS))
    return [list(table._default_manager.order_by("pk").values()) for table in tables]


ACTIONS: dict[str, Callable[[Season], object]] = {
    "keep": lambda later: changes.keep_season(later, key="winter"),
    "keep new": lambda later: changes.keep_season(later, key="other"),
    "change": lambda _: changes.change_garment("winter", "cardigan", "size L", size="L"),
    "undo": lambda _: changes.undo("winter"),
    "forget": lambda _: changes.forget_season("winter"),
}


@pytest.mark.parametrize("action", ACTIONS.values(), ids=ACTIONS.keys())
def test_a_change_that_fails_at_any_statement_leaves_everything(
    winter: Season, later: Season, action: Callable[[Season], object]
) -> None:
    changes.keep_season(later, key="winter")
    changes.keep_season(winter, key="winter")
    before = everything()
    for number in range(200):
        wrapper = FailsAt(number)
        try:
            with connection.execute_wrapper(wrapper):
                action(later)
        except DatabaseError:
            assert everything() == before
        else:
            assert number > 5
            assert everything() != before
            return
    raise AssertionError("it never came to its end")


KILLED = """
import os, signal, sys
from loopwright.web.setup import prepare
prepare(sys.argv[1])
from django.db import connection
from loopwright.store import changes
def die(execute, sql, parameters, many, context):
    result = execute(sql, parameters, many, context)
    if sql.startswith("INSERT") and "garmentrow" in sql:
        os.kill(os.getpid(), signal.SIGKILL)
    return result
with connection.execute_wrapper(die):
    changes.change_garment("winter", "cardigan", "size L", size="L")
"""


@pytest.mark.skipif(os.name != "posix", reason="kills a process the POSIX way")
def test_a_process_killed_in_the_middle_of_a_change_leaves_everything(winter: Season, folder: Path) -> None:
    changes.keep_season(winter, key="winter")
    before = everything()
    connection.close()
    done = subprocess.run([sys.executable, "-c", KILLED, str(folder)], capture_output=True, check=False)
    assert done.returncode == -signal.SIGKILL, done.stderr.decode()
    assert everything() == before


def test_two_at_once_are_both_kept(winter: Season) -> None:
    """Each thread changes its own garment again and again; no change of another may be lost."""
    key = changes.keep_season(winter)
    garments = [garment.key for garment in winter.garments][:4]

    def note(garment: str) -> None:
        try:
            for number in range(8):
                changes.change_garment(key, garment, f"note {number}", note=f"{garment} {number}")
        finally:
            connections.close_all()

    with ThreadPoolExecutor(len(garments)) as pool:
        list(pool.map(note, garments))
    notes = {garment.key: garment.note for garment in changes.season_of(key).garments}
    assert all(notes[garment] == f"{garment} 7" for garment in garments)
    assert Revision.objects.count() == 8 * len(garments)


def test_new_seasons_of_one_key_at_once_get_keys_of_their_own(winter: Season) -> None:
    names = [winter.name.upper(), winter.name.lower(), winter.name.title(), winter.name.swapcase()]

    def keep(name: str) -> str:
        try:
            return changes.keep_season(winter.model_copy(update={"name": name}))
        finally:
            connections.close_all()

    with ThreadPoolExecutor(len(names)) as pool:
        keys = list(pool.map(keep, names))
    assert sorted(keys) == sorted(changes.season_keys())
    assert {changes.season_of(key).name for key in keys} == set(names)


def test_what_is_read_while_another_writes_is_one_season_or_the_other(winter: Season) -> None:
    """The two differ in every table that is looked at, so a mixture would show."""

    def marked(mark: str) -> Season:
        noted = {
            name: tuple(entry.model_copy(update={"note": mark}) for entry in getattr(winter, name))
            for name in ("bodies", "yarns", "garments", "shops")
        }
        return winter.model_copy(update={"note": mark, **noted})

    key = changes.keep_season(marked("one"))

    def write() -> None:
        try:
            for mark in ("two", "one") * 12:
                changes.keep_season(marked(mark))
        finally:
            connections.close_all()

    seen = set()
    with ThreadPoolExecutor(1) as pool:
        writing = pool.submit(write)
        while not writing.done():
            season = changes.season_of(key)
            marks = {season.note, *(body.note for body in season.bodies), *(yarn.note for yarn in season.yarns)}
            marks |= {garment.note for garment in season.garments} | {shop.note for shop in season.shops}
            assert len(marks) == 1
            seen |= marks
        writing.result()
    assert seen == {"one", "two"}
