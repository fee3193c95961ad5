"""Our own pages meet WCAG 2.2 AA: text 4.5, the lines by which a control is known 3.

Every rule of our style sheets is read: what it says of colour, of ground and of outlines is looked up in the custom
properties. A rule without a ground of its own stands on paper or on the page's ground, and must be read on both; a
placeholder stands on its field's.
Rules and hairlines that only divide (``--line``, ``--thin``, ``--rule``) are ornament, to which the standard sets no
limit.
"""

import re
from pathlib import Path

import pytest

from loopwright.colour import LARGE_OR_LINE_RATIO, TEXT_RATIO, read_hex, wcag_ratio

ROOM = Path(__file__).parents[2] / "src" / "loopwright"
SHEETS = sorted([*ROOM.glob("documents/**/look/*.css"), *ROOM.glob("web/**/*.css")])
COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
RULE = re.compile(r"(?P<who>[^{};]+)\{(?P<says>[^{}]*)\}")
TEXT = "\n".join(COMMENT.sub("", sheet.read_text(encoding="utf-8")) for sheet in SHEETS)
RULES = [
    (
        " ".join(rule["who"].split()),
        {
            name.strip(): value.strip()
            for name, _, value in (said.partition(":") for said in rule["says"].split(";"))
            if value
        },
    )
    for rule in RULE.finditer(TEXT)
]
PROPERTIES = {
    name: value for who, says in RULES if who == ":root" for name, value in says.items() if name.startswith("--")
}
GROUNDS = ("var(--paper)", "var(--ground)")
CONTROLS = re.compile(r"button|input|select|textarea|\.links a|\.state|focus-visible")


def digits(value: str) -> str | None:
    """Give a colour as #rrggbb; None for a word such as ``inherit`` or ``transparent``."""
    named = re.search(r"var\((--[a-z-]+)\)", value)
    found = re.search(r"#[0-9a-fA-F]{3,8}\b", PROPERTIES[named[1]] if named else value)
    if found is None:
        return None
    text = found[0]
    return "#" + "".join(2 * one for one in text[1:]) if len(text) == 4 else text


def ground_of(says: dict[str, str]) -> str | None:
    return digits(says.get("background", says.get("background-color", "")))


def grounds(who: str, says: dict[str, str]) -> list[str]:
    """Give the grounds that a rule's text stands on: its own, else that of the element it is a part of, else both."""
    element, _, part = who.partition("::")
    inside = [says for other, says in RULES if part and other.startswith(element)]
    own = next((found for rule in (says, *inside) if (found := ground_of(rule))), None)
    return [own] if own else [found for ground in GROUNDS if (found := digits(ground))]


def ratio(one: str, other: str) -> float:
    return float(wcag_ratio(read_hex(one), read_hex(other)))


def outline(who: str, says: dict[str, str]) -> str | None:
    if not CONTROLS.search(who):
        return None
    return digits(says.get("border", "") or says.get("outline", ""))


WRITTEN = [(who, ink, grounds(who, says)) for who, says in RULES if (ink := digits(says.get("color", "")))]
DRAWN = [(who, line, grounds(who, says)) for who, says in RULES if (line := outline(who, says))]


def test_the_sheets_are_read() -> None:
    assert {"ground.css", "answers.css", "page.css"} <= {sheet.name for sheet in SHEETS}
    assert {"--ink", "--quiet", "--paper", "--ground", "--press"} <= set(PROPERTIES)
    assert len(WRITTEN) > 10
    assert len(DRAWN) > 3


@pytest.mark.parametrize(("who", "ink", "on"), WRITTEN, ids=[who for who, *_ in WRITTEN])
def test_text_can_be_read(who: str, ink: str, on: list[str]) -> None:
    for ground in on:
        assert ratio(ink, ground) >= TEXT_RATIO, f"{who}: {ink} on {ground}"


@pytest.mark.parametrize(("who", "line", "on"), DRAWN, ids=[who for who, *_ in DRAWN])
def test_a_control_can_be_seen(who: str, line: str, on: list[str]) -> None:
    """A button is known by its own filled ground, so its line is held against the page."""
    page = [found for ground in GROUNDS if (found := digits(ground))]
    for ground in page if line in on else on:
        assert ratio(line, ground) >= LARGE_OR_LINE_RATIO, f"{who}: {line} on {ground}"


@pytest.mark.parametrize("ground", ["--paper", "--ground"])
@pytest.mark.parametrize("ink", ["--ink", "--quiet", "--press"])
def test_every_ink_on_every_ground(ink: str, ground: str) -> None:
    assert ratio(PROPERTIES[ink], PROPERTIES[ground]) >= TEXT_RATIO
