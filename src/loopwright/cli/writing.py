"""Puts a text into a file whole or not at all, and never over another file unasked."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from loopwright.files import Format
from loopwright.units import BadInput

__all__ = ["format_for", "write_bytes", "write_file", "write_text"]


def format_for(path: Path, said: Format | None) -> Format:
    """Give the format that goes with a file's name.

    :param said: the format that was asked for, if any.
    :raises BadInput: the name has another suffix.
    """
    for format in ("toml", "json"):
        if path.suffix.lower() == f".{format}" and said in (None, format):
            return format
    ending = f".{said}" if said else ".toml or .json"
    raise BadInput(path.name, f"a name that ends in {ending}", place=str(path))


def write_file(path: Path, text: str, format: Format, *, replace: bool = False) -> None:
    """Write a season file.

    :param replace: put it in the place of a file that is there.
    :raises BadInput: the suffix is another, a file is there, or the place cannot be written to.
    """
    format_for(path, format)
    _write_once(path, text.encode("utf-8"), replace=replace)


def write_text(path: Path, text: str, suffix: str, *, replace: bool = False) -> None:
    """Write any other text, such as a drawing.

    :param suffix: that the name must have, such as ``.svg``.
    :raises BadInput: the suffix is another, a file is there, or the place cannot be written to.
    """
    if path.suffix.lower() != suffix:
        raise BadInput(path.name, f"a name that ends in {suffix}", place=str(path))
    _write_once(path, text.encode("utf-8"), replace=replace)


def write_bytes(path: Path, content: bytes, *, replace: bool = False) -> None:
    """Write a file of any kind.

    :param replace: put it in the place of a file that is there.
    :raises BadInput: a file is there, or the place cannot be written to.
    """
    _write_once(path, content, replace=replace)


def _write_once(path: Path, content: bytes, *, replace: bool) -> None:
    if path.exists() and not replace:
        raise BadInput("a file that is there already", "a new name", place=str(path))
    try:
        _put(path, content)
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        raise BadInput(reason, "a place that can be written to", place=str(path)) from error


def _put(path: Path, content: bytes) -> None:
    mode = path.stat().st_mode & 0o777 if path.exists() else 0o666 & ~_umask()
    descriptor, draft = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        Path(draft).chmod(mode)
        Path(draft).replace(path)
    finally:
        Path(draft).unlink(missing_ok=True)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
