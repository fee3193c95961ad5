#!/usr/bin/env python3
"""Make the project's own environment in .venv, once, with the standard library alone.

    python3 tools/prepare.py base    what the program needs to run
    python3 tools/prepare.py test    that, and all that the checks need

Each level leaves a stamp in .venv, made from the pins and this Python: a second run has nothing to do, and a
changed pin installs again. A run that was broken off leaves no stamp.
"""

from __future__ import annotations

import contextlib
import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

try:
    import fcntl
except ImportError:  # not on Windows; there, two runs at once are the caller's care
    fcntl = None  # type: ignore[assignment]

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
MADE_BY = VENV / "made-by"
PINS = ROOT / "constraints.txt"
PROJECT = ROOT / "pyproject.toml"
LEVELS = ("base", "test")
OLDEST = (3, 11)


class Trouble(Exception):
    """Something that the person at the keyboard has to mend; the text says how."""


def say(line: str, end: str = "\n") -> None:
    """Tell what is going on, at once."""
    print(line, end=end, flush=True)


@contextlib.contextmanager
def telling(what: str) -> Iterator[None]:
    """Say in one line what is being done and, when it is done, how long it took."""
    begun = time.monotonic()
    say(f"{what} ...", end=" ")
    try:
        yield
    except BaseException:
        say("stopped.")
        raise
    say(f"done in {time.monotonic() - begun:.0f} s.")


def check_python() -> None:
    """Stop early, and in words, on a Python that is too old for the program."""
    if sys.version_info < OLDEST:
        found = ".".join(map(str, sys.version_info[:3]))
        raise Trouble(
            f"Loopwright needs Python 3.11 or newer; this is {found} ({sys.executable}).\n"
            "Install a newer one and name it, for example: make test PYTHON=python3.12"
        )


# ------------------------------------------------------------------------------------------------- stamps


def stamp_of(level: str) -> Path:
    """Give the file that says that a level is installed."""
    return VENV / f"prepared-{level}"


def key_of(level: str) -> str:
    """Give what a level's stamp must hold: a hash of pins, project file, this Python and the level."""
    digest = hashlib.sha256()
    for part in (PINS.read_bytes(), PROJECT.read_bytes(), sys.version.encode(), level.encode()):
        digest.update(part)
        digest.update(b"\0")
    return digest.hexdigest()


def is_ready(level: str) -> bool:
    """Tell whether the level stands as the pins have it, in an environment that was made here."""
    return _text(stamp_of(level)) == key_of(level) and _text(MADE_BY) == made_by() and PYTHON.exists()


def made_by() -> str:
    """Give what ties an environment down: its scripts name the folder, its libraries fit one Python."""
    return f"{ROOT}\n{sys.version}\n"


def _text(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8")
    except OSError:
        return ""


# --------------------------------------------------------------------------------------------- installing


def run(command: list[str], wrong: str) -> None:
    """Run a command quietly; when it fails, show what it said and stop with `wrong`."""
    done = subprocess.run(command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False)
    if done.returncode:
        sys.stderr.write("\n" + done.stdout.decode(errors="replace"))
        raise Trouble(wrong)


def apt_install(package: str) -> None:
    """Install a package of a Debian-like system; only the administrator can."""
    os.environ["DEBIAN_FRONTEND"] = "noninteractive"
    wrong = f"apt-get could not install {package}."
    with telling(f"Installing {package}"):
        run(["apt-get", "-qq", "update"], wrong)
        run(["apt-get", "-qq", "install", "-y", "--no-install-recommends", package], wrong)


def can_apt() -> bool:
    """Tell whether system packages can be installed from here."""
    return hasattr(os, "geteuid") and os.geteuid() == 0 and shutil.which("apt-get") is not None


def make_venv() -> None:
    """Make an empty .venv, in place of one that another Python or another folder made."""
    if VENV.exists():
        shutil.rmtree(VENV)
    python = getattr(sys, "_base_executable", sys.executable)
    uv = shutil.which("uv")
    if uv:
        run([uv, "venv", "--quiet", "--seed", "--python", python, str(VENV)], "uv could not make .venv.")
    else:
        run([python, "-m", "venv", str(VENV)], "Python could not make .venv.")
    MADE_BY.write_text(made_by(), encoding="utf-8")


def has_ensurepip() -> bool:
    """Tell whether ensurepip is there; a folder left behind by a removed package does not count."""
    spec = importlib.util.find_spec("ensurepip")
    return spec is not None and spec.origin is not None


def need_ensurepip() -> None:
    """See to it that this Python can make an environment with pip in it; Debian packs that apart."""
    if has_ensurepip() or shutil.which("uv"):
        return
    if can_apt():
        apt_install("python3-venv")
        importlib.invalidate_caches()
    if not has_ensurepip():
        raise Trouble(
            f"{sys.executable} cannot make virtual environments (it has no ensurepip).\n"
            "On Debian, as the administrator: apt-get install python3-venv. Elsewhere: install uv."
        )


def requirements(level: str) -> list[str]:
    """Read from pyproject.toml what a level needs: base with the build backend, test with every extra too."""
    import tomllib  # noqa: PLC0415 -- new in 3.11, so only after check_python

    with PROJECT.open("rb") as file:
        content = tomllib.load(file)
    wanted = [*content["build-system"]["requires"], *content["project"]["dependencies"]]
    if level == "test":
        for extra in content["project"]["optional-dependencies"].values():
            wanted += extra
    return wanted


def install(level: str) -> None:
    """Install a level's packages at their pins, then the project itself, editable."""
    uv = shutil.which("uv")
    if uv:
        installer = [uv, "pip", "install", "--quiet", "--python", str(PYTHON)]
    else:
        # Compiling every module takes a third of the time and most are never imported.
        installer = [str(PYTHON), "-m", "pip", "--no-input", "install", "-qq", "--no-compile"]
    wrong = "Installing failed, as said above. The next run starts this step again."
    run([*installer, "-c", str(PINS), *requirements(level)], wrong)
    run([*installer, "--no-deps", "--no-build-isolation", "--editable", str(ROOT)], wrong)


def write_stamps(keys: dict[str, str]) -> None:
    """Mark levels as installed; each mark appears whole or not at all."""
    for level, key in keys.items():
        draft = stamp_of(level).with_suffix(".new")
        draft.write_text(key, encoding="utf-8")
        draft.replace(stamp_of(level))


@contextlib.contextmanager
def one_at_a_time() -> Iterator[None]:
    """Hold the door while installing, so that two runs in one folder do not mix."""
    with Path(__file__).open("rb") as door:
        if fcntl is not None:
            fcntl.flock(door, fcntl.LOCK_EX)
        yield


def prepare(level: str) -> None:
    """Bring .venv to a level, from nothing if need be."""
    need_ensurepip()
    keys = {implied: key_of(implied) for implied in LEVELS[: LEVELS.index(level) + 1]}
    with telling(f"Preparing .venv for '{level}', which can take a minute"):
        if _text(MADE_BY) != made_by() or not PYTHON.exists():
            make_venv()
        for every in LEVELS:
            stamp_of(every).unlink(missing_ok=True)
        install(level)
        write_stamps(keys)


def need_browser() -> None:
    """See to it that a browser stands ready for the tests that drive one; they are skipped without."""
    if shutil.which("chromium"):
        return
    if not can_apt():
        say("No chromium here: tests that drive a browser are skipped (Debian: apt-get install chromium).")
        return
    try:
        apt_install("chromium")
    except Trouble as trouble:
        say(f"{trouble} Tests that drive a browser are skipped.")


def main(arguments: list[str]) -> int:
    """Prepare the level that was asked for."""
    if len(arguments) != 1 or arguments[0] not in LEVELS:
        say("usage: python3 tools/prepare.py base|test")
        return 2
    level = arguments[0]
    try:
        check_python()
        if not is_ready(level):
            with one_at_a_time():
                if not is_ready(level):
                    prepare(level)
        if level == "test":
            need_browser()
    except Trouble as trouble:
        print(trouble, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print("Broken off; the next run starts this step again.", file=sys.stderr)
        return 130
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
