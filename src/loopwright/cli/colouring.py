"""Tells how colours go together: what the verb ``colour`` does."""

from __future__ import annotations

import itertools
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

import typer
from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from loopwright.cli.show import console, table
from loopwright.colour import (
    GRADES,
    LIMITS,
    REMARKS,
    VISIONS,
    Fade,
    Floats,
    PairContrast,
    as_seen,
    fade_order,
    grey_view,
    judge_pairs,
    lab_from_srgb,
    lch_from_lab,
    mix_strands,
    oklab_from_srgb,
    read_hex,
    strand_shares,
    write_hex,
)
from loopwright.season.cautions import caution
from loopwright.units import BadInput, read_grist_tex, write_percent

__all__ = ["tell_colour"]

_MOST: Final = 40
_QUOTES: Final = 'put each in quotes, such as "#a43c2b" or "rust=#a43c2b": without them the shell drops what follows #'


@dataclass(frozen=True, slots=True)
class _Marl:
    """Strands held together: names, share of the surface, colour from afar as sRGB."""

    strands: tuple[str, ...]
    shares: tuple[float, ...]
    srgb: Floats


@dataclass(frozen=True, slots=True)
class _Told:
    """All that is said about some colours."""

    named: Mapping[str, Floats]
    pairs: Mapping[tuple[int, int], PairContrast]
    fade: Fade | None
    marls: tuple[_Marl, ...]

    @property
    def names(self) -> list[str]:
        return list(self.named)


def tell_colour(
    colours: Sequence[str],
    held: Sequence[str],
    *,
    first: str | None,
    last: str | None,
    check: bool,
    as_json: bool,
) -> None:
    """Print how colours go together.

    :param colours: each ``#rrggbb`` or ``name=#rrggbb``.
    :param held: strands held together, joined by ``+``, each a name with or without its grist.
    :param first, last: names at the ends of the fade.
    :raises BadInput: a colour, a name or a grist cannot be read, or there are none or too many.
    :raises typer.Exit: with code 1 where a pair's lightness contrast is poor and ``check`` is set.
    """
    named = _named(colours)
    srgb = list(named.values())
    ends = [None if name is None else list(named).index(_known(name, named)) for name in (first, last)]
    told = _Told(
        named,
        judge_pairs(srgb),
        fade_order(srgb, *ends) if len(named) > 1 else None,
        tuple(_marl(text, named) for text in held),
    )
    if as_json:
        typer.echo(json.dumps(_as_json(told), indent=2, ensure_ascii=False))
    else:
        _show(told)
    if check and any(pair.grade is GRADES[-1] for pair in told.pairs.values()):
        raise typer.Exit(1)


# ------------------------------------------------------------------------------------------------------- reading
def _named(colours: Sequence[str]) -> dict[str, Floats]:
    if not colours:
        raise BadInput("no colour", "one colour or more", hint=_QUOTES)
    if len(colours) > _MOST:
        raise BadInput(f"{len(colours)} colours", f"at most {_MOST}")
    named: dict[str, Floats] = {}
    for text in colours:
        before, equals, digits = text.rpartition("=")
        if not equals:
            srgb = read_hex(text)
            name = write_hex(srgb)
        else:
            name, srgb = before.strip(), read_hex(digits)
        if not name or "+" in name:
            raise BadInput(text, "a name without + before the equals sign")
        if name in named:
            raise BadInput(f"'{name}' twice", "each name once")
        named[name] = srgb
    return named


def _known(text: str, named: Mapping[str, Floats]) -> str:
    name = text.strip()
    for one in (name, name.lower()):
        if one in named:
            return one
    raise BadInput(f"the colour '{name}'", f"one of {', '.join(named)}")


def _marl(text: str, named: Mapping[str, Floats]) -> _Marl:
    strands = [_strand(part.strip(), named) for part in text.split("+")]
    grists = [tex for _, tex in strands if tex is not None]
    if len(strands) < 2 or len(grists) not in {0, len(strands)}:
        raise BadInput(text, "two strands or more joined by +, with the grist of each or of none")
    tex = grists or [1.0] * len(strands)
    names = tuple(name for name, _ in strands)
    shares = strand_shares(tex)
    return _Marl(names, tuple(shares.tolist()), mix_strands([named[name] for name in names], tex))


def _strand(text: str, named: Mapping[str, Floats]) -> tuple[str, float | None]:
    """Give the strand's name and its grist; the longest name that fits is meant."""
    if text in named or text.lower() in named:
        return _known(text, named), None
    for name in sorted(named, key=len, reverse=True):
        if text.lower().startswith(f"{name.lower()} "):
            return name, read_grist_tex(text[len(name) :])
    return _known(text, named), None


# ----------------------------------------------------------------------------------------------------- for people
def _show(told: _Told) -> None:
    out = console()
    _show_colours(out, told)
    if told.pairs:
        _show_pairs(out, told)
    if told.fade is not None and len(told.named) > 2:
        _show_fade(out, told.fade, told.names)
    for marl in told.marls:
        _show_marl(out, marl)
    _heading(out, "Take care")
    _line(out, caution("colour").text)


def _heading(out: Console, text: str) -> None:
    out.print()
    out.print(Text(text, style="bold"))


def _line(out: Console, text: str) -> None:
    out.print(Padding(Text(text), (0, 0, 0, 2), expand=False))


def _chip(out: Console, srgb: Floats) -> Text:
    """Write a colour; a terminal with colours shows it too."""
    written = write_hex(srgb)
    return Text.assemble(("  ", f"on {written}"), f" {written}") if out.is_terminal else Text(written)


def _show_colours(out: Console, told: _Told) -> None:
    made = table("colour", "as given", "L*", "chroma", "hue", "in grey", *VISIONS, numbers=("L*", "chroma", "hue"))
    for name, srgb in told.named.items():
        light, chroma, hue = lch_from_lab(lab_from_srgb(srgb)).tolist()
        seen = [_chip(out, as_seen(srgb, kind)) for kind in VISIONS]
        turn = f"{hue:.0f}°" if chroma >= 1 else "–"
        made.add_row(
            Text(name), _chip(out, srgb), f"{light:.1f}", f"{chroma:.0f}", turn, _chip(out, grey_view(srgb)), *seen
        )
    out.print(made)
    _line(out, "protan, deutan, tritan: as eyes without the cones for long, middle or short waves see it; a model.")


def _show_pairs(out: Console, told: _Told) -> None:
    _heading(out, "Side by side in colourwork")
    made = table("pair", "ΔE00", "ΔL*", "contrast", "lower for", "remarks", numbers=("ΔE00", "ΔL*"))
    for (one, other), pair in sorted(told.pairs.items(), key=lambda item: -item[1].delta_l):
        figures = (f"{pair.delta_e:.1f}", f"{pair.delta_l:.1f}", pair.grade.name, ", ".join(pair.weaker_for))
        made.add_row(Text(f"{told.names[one]} + {told.names[other]}"), *figures, ", ".join(pair.remarks))
    out.print(made)
    for grade in GRADES:
        if any(pair.grade is grade for pair in told.pairs.values()):
            _line(out, f"{grade.name}: {grade.says}.")
    for remark, says in REMARKS.items():
        if any(remark in pair.remarks for pair in told.pairs.values()):
            _line(out, f"{remark}: {says}.")
    _line(out, "The limits, 30 and 20 L*, come from studies of text and symbols; of knitting none was found.")
    _line(out, "In stranded knitting the yarn whose float runs below comes forward, whatever its colour.")


def _show_fade(out: Console, fade: Fade, names: Sequence[str]) -> None:
    _heading(out, "Order of a fade")
    _line(out, " → ".join(names[at] for at in fade.order))
    how = "no order has less" if fade.proven else "good, not proven the best"
    said = _step_name(fade, fade.weakest or 0, names)
    _line(out, f"Steps add up to {fade.total:.1f} ΔE00 ({how}); the weakest is {said}.")
    for at in fade.blend_at:
        _line(out, f"{_step_name(fade, at, names)}: alternate rows of both, or put a skein between.")
    if fade.blend_at:
        limit = LIMITS["stripe"]
        _line(out, f"A step above {limit.value:g} ΔE00 reads as a stripe ({limit.source}).")


def _step_name(fade: Fade, at: int, names: Sequence[str]) -> str:
    return f"{names[fade.order[at]]} → {names[fade.order[at + 1]]}, {fade.steps[at]:.1f}"


def _show_marl(out: Console, marl: _Marl) -> None:
    _heading(out, f"{' + '.join(marl.strands)} held together")
    shares = ", ".join(f"{name} {write_percent(share)}" for name, share in zip(marl.strands, marl.shares, strict=True))
    light = lab_from_srgb(marl.srgb)[0]
    _line(out, f"{write_hex(marl.srgb)} from afar, L* {light:.1f}; shares of the surface {shares}.")
    _line(out, "Near by the strands show. A blend of fibres before spinning comes out darker than this.")


# --------------------------------------------------------------------------------------------- for other programs
def _as_json(told: _Told) -> dict[str, Any]:
    said = caution("colour")
    return {
        "colours": [_colour_json(name, srgb) for name, srgb in told.named.items()],
        "pairs": [_pair_json(told.names, at, pair) for at, pair in told.pairs.items()],
        "fade": None if told.fade is None else _fade_json(told.fade, told.names),
        "held": [_marl_json(marl) for marl in told.marls],
        "caution": {"text": said.text, "source": said.source},
    }


def _rounded(values: Floats, decimals: int = 4) -> list[float]:
    return [round(value, decimals) for value in values.tolist()]


def _colour_json(name: str, srgb: Floats) -> dict[str, Any]:
    return {
        "name": name,
        "srgb": write_hex(srgb),
        "lab": _rounded(lab_from_srgb(srgb)),
        "oklch": _rounded(lch_from_lab(oklab_from_srgb(srgb))),
        "grey": write_hex(grey_view(srgb)),
        "seen": {kind: write_hex(as_seen(srgb, kind)) for kind in VISIONS},
    }


def _pair_json(names: Sequence[str], at: tuple[int, int], pair: PairContrast) -> dict[str, Any]:
    return {
        "pair": [names[place] for place in at],
        "delta_e_2000": round(pair.delta_e, 4),
        "delta_l": round(pair.delta_l, 4),
        "contrast": pair.grade.name,
        "remarks": pair.remarks,
        "lower_for": pair.weaker_for,
        "delta_e_2000_seen": {kind: round(value, 4) for kind, value in pair.delta_e_seen.items()},
        "delta_l_seen": {kind: round(value, 4) for kind, value in pair.delta_l_seen.items()},
    }


def _fade_json(fade: Fade, names: Sequence[str]) -> dict[str, Any]:
    order = [names[at] for at in fade.order]
    between = list(itertools.pairwise(order))
    return {
        "order": order,
        "steps": [round(step, 4) for step in fade.steps],
        "total": round(fade.total, 4),
        "weakest": None if fade.weakest is None else between[fade.weakest],
        "alternate_rows": [between[at] for at in fade.blend_at],
        "alternate_above": fade.blend_above,
        "proven": fade.proven,
    }


def _marl_json(marl: _Marl) -> dict[str, Any]:
    return {
        "strands": marl.strands,
        "shares": [round(share, 4) for share in marl.shares],
        "srgb": write_hex(marl.srgb),
        "lab": _rounded(lab_from_srgb(marl.srgb)),
    }
