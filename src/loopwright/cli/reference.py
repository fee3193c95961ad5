"""Prints the page of commands from what ``--help`` says: ``python -m loopwright.cli.reference > docs/commands.md``."""

from __future__ import annotations

import typer
from typer.core import TyperGroup
from typer.main import get_command

from loopwright.cli.app import app

__all__ = ["reference"]

HEAD = """\
# Commands

This page is written by `python -m loopwright.cli.reference`; a test keeps it up to date.

What people read goes to standard output, what went wrong to standard error. Output into a file or another program is
100 columns wide and without colour; `NO_COLOR=1` leaves the colour out of a terminal too.

| exit code | means |
| --- | --- |
| 0 | done |
| 1 | the answer is no: yarn is short with `--check`, or there is nothing to undo |
| 2 | the input is at fault; each fault stands on its own line, and nothing was written |
"""

_WIDTH = 96


def reference() -> str:
    """Give the page, in Markdown: the help of the command and of each of its verbs."""
    group = get_command(app)
    assert isinstance(group, TyperGroup)  # it has several verbs
    wide = {**group.context_settings, "terminal_width": _WIDTH, "max_content_width": _WIDTH}
    whole = typer.Context(group, info_name="loopwright", **wide)
    parts = [HEAD, _section("loopwright", group.get_help(whole))]
    for name in group.list_commands(whole):
        verb = group.get_command(whole, name)
        assert verb is not None  # its name has just been listed
        own = typer.Context(verb, info_name=name, parent=whole, **wide)
        parts.append(_section(f"loopwright {name}", verb.get_help(own)))
    return "\n".join(parts)


def _section(title: str, text: str) -> str:
    body = "\n".join(line.rstrip() for line in text.strip().splitlines())
    return f"## {title}\n\n```text\n{body}\n```\n"


if __name__ == "__main__":
    typer.echo(reference(), nl=False)
