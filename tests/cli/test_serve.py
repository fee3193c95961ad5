"""``loopwright serve`` in a process of its own."""

import os
import re
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from urllib.request import Request, urlopen

import pytest

from loopwright.cli.server import allow_host
from loopwright.files import demo_text

pytestmark = pytest.mark.skipif(os.name != "posix", reason="ends the server by POSIX signals")


@dataclass
class Served:
    """A server that runs, and after that how it ended."""

    process: "subprocess.Popen[str]"
    line: str
    address: str
    ended: list[object] = field(default_factory=list)

    def get(self, path: str, host: str | None = None) -> str:
        """Ask for a page."""
        request = Request(self.address + path, headers={"Host": host} if host else {})
        with urlopen(request, timeout=20) as response:
            return str(response.read().decode("utf-8"))


@contextmanager
def serving(data: Path, *arguments: str, end: signal.Signals = signal.SIGINT) -> Iterator[Served]:
    """Serve from a new process on a free port until the block ends; then end it and note how."""
    environment = {name: value for name, value in os.environ.items() if not name.startswith("LOOPWRIGHT_")}
    environment.pop("DATABASE_URL", None)
    command = [sys.executable, "-m", "loopwright", "serve", "--data", str(data), *arguments]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=environment)
    assert process.stdout is not None
    line = process.stdout.readline()
    found = re.search(r"http://\S+(?=/ )", line)
    if found is None:
        raise AssertionError(process.communicate(timeout=20))
    served = Served(process, line, found[0])
    try:
        yield served
    finally:
        process.send_signal(end)
        out, err = process.communicate(timeout=20)
        served.ended = [process.returncode, out, err]


@pytest.mark.parametrize("end", [signal.SIGINT, signal.SIGTERM])
def test_it_says_where_it_is_and_ends_without_a_word(tmp_path: Path, end: signal.Signals) -> None:
    with serving(tmp_path, "--port", "0", end=end) as served:
        assert re.fullmatch(r"Loopwright is at http://127\.0\.0\.1:\d+/ \(Ctrl-C ends it\)\n", served.line)
        assert "Loopwright" in served.get("/")
    assert served.ended == [0, "", ""]
    assert sorted(path.name for path in tmp_path.iterdir()) == ["loopwright.sqlite3", "secret-key"]


def test_the_demo_and_a_file_are_there_at_once(tmp_path: Path) -> None:
    mine = tmp_path / "mine.toml"
    mine.write_text(demo_text().replace("Winter at Wethers Reach", "Winter of my own"), encoding="utf-8")
    with serving(tmp_path / "data", str(mine), "--port", "0", "--demo") as served:
        page = served.get("/")
        assert "Winter of my own" in page
        assert "Cardigan for herself" in served.get("/season/winter-at-wethers-reach/")


def test_the_demo_is_not_put_over_her_own_changes(tmp_path: Path) -> None:
    changed = tmp_path / "changed.toml"
    changed.write_text(demo_text().replace("Cardigan for herself", "Jacket"), encoding="utf-8")
    with serving(tmp_path / "data", str(changed), "--port", "0", "--demo") as served:
        assert "Jacket" in served.get("/season/winter-at-wethers-reach/")


def test_a_port_that_is_taken_is_left_to_the_next(tmp_path: Path) -> None:
    with closing(socket.socket()) as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        port = other.getsockname()[1]
        with serving(tmp_path, "--port", str(port)) as served:
            own = int(served.address.rpartition(":")[2])
            assert own > port
    assert served.ended == [0, "", f"Port {port} is taken; using {own}.\n"]


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["nowhere.toml"], "nowhere.toml: found .*no such file"),
        (["--host", "192.0.2.1"], "192.0.2.1:8765: found .*; wanted an address and port to listen on"),
        (["--port", "99999"], "Invalid value for '--port'"),
    ],
)
def test_what_cannot_be_served_is_told(tmp_path: Path, arguments: list[str], message: str) -> None:
    command = [sys.executable, "-m", "loopwright", "serve", "--data", str(tmp_path / "data"), *arguments]
    done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=60)
    assert (done.returncode, done.stdout) == (2, "")
    assert re.search(message, done.stderr)
    assert "Traceback" not in done.stderr


def test_on_every_address_it_warns_and_answers_to_its_own_names(tmp_path: Path) -> None:
    with serving(tmp_path, "--port", "0", "--host", "0.0.0.0") as served:
        port = served.address.rpartition(":")[2]
        served.address = f"http://127.0.0.1:{port}"
        assert "Loopwright" in served.get("/", host=socket.gethostname().lower())
    assert served.ended[2] == ("There is no login: whoever can reach this address can read and change your seasons.\n")


def test_hosts_that_the_user_named_stay(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LOOPWRIGHT_ALLOWED_HOSTS", "knit.example")
    allow_host("0.0.0.0")
    assert os.environ["LOOPWRIGHT_ALLOWED_HOSTS"] == "knit.example"
    monkeypatch.setenv("LOOPWRIGHT_ALLOWED_HOSTS", "")
    allow_host("fd00::7")
    assert os.environ["LOOPWRIGHT_ALLOWED_HOSTS"] == "localhost,127.0.0.1,[::1],[fd00::7]"
