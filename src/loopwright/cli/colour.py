"""The verb ``colour``."""

from __future__ import annotations

from typing import Annotated

import typer

from loopwright.cli.options import AsJson

__all__ = ["colour"]

ColoursArgument = Annotated[
    list[str] | None,
    typer.Argument(metavar="COLOUR", help='As "#rrggbb" or "name=#rrggbb", in quotes; up to 40.', show_default=False),
]
HeldOption = Annotated[
    list[str] | None,
    typer.Option(
        "--held",
        metavar="STRANDS",
        help='Strands held together, such as "oat + navy", with their grist "oat 230 tex + navy 60 tex". May be '
        "said several times.",
        show_default=False,
    ),
]
FirstOption = Annotated[str | None, typer.Option("--first", metavar="NAME", help="The fade begins with this one.")]
LastOption = Annotated[str | None, typer.Option("--last", metavar="NAME", help="The fade ends with this one.")]
ContrastCheck = Annotated[
    bool, typer.Option("--check", help="End with exit code 1 when the lightness contrast of a pair is poor.")
]


def colour(
    colours: ColoursArgument = None,
    held: HeldOption = None,
    first: FirstOption = None,
    last: LastOption = None,
    check: ContrastCheck = False,
    as_json: AsJson = False,
) -> None:
    """Say how colours go together: contrast of each pair, other eyes, order of a fade, strands held together.

    A colour without a name goes by its digits.
    """
    from loopwright.cli.colouring import tell_colour

    tell_colour(colours or [], held or [], first=first, last=last, check=check, as_json=as_json)
