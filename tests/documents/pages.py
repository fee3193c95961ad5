"""Reading HTML back: a strict check that it is well built, and its text."""

from __future__ import annotations

import re
from collections.abc import Sequence
from html.parser import HTMLParser

__all__ = ["Page", "read_page", "text_of"]

VOID = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}
"""Elements that have no end tag. Source: HTML Living Standard, 13.1.2 Elements (void elements)."""
BLOCKS = {"article", "div", "dl", "footer", "form", "h2", "h3", "h4", "header", "ol", "p", "section", "table", "ul"}
"""What ends a paragraph by itself, of the elements in use here. Source: the same, 13.1.2.4 Optional tags, p."""
ONLY_IN: dict[str, set[str]] = {
    "li": {"ul", "ol"},
    "dt": {"dl", "div"},
    "dd": {"dl", "div"},
    "tr": {"thead", "tbody"},
    "td": {"tr"},
    "th": {"tr"},
    "summary": {"details"},
    "legend": {"fieldset"},
    "option": {"select"},
}
"""Parents that an element may have. Source: the same, section 4, contexts in which this element can be used."""
SILENT = {"style", "script", "title"}

Attributes = Sequence[tuple[str, str | None]]


class Page(HTMLParser):
    """A page taken apart. ``faults`` lists what a browser would have to mend.

    Elements of drawings may close themselves, as in XML.
    """

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.faults: list[str] = []
        self.elements: list[tuple[str, dict[str, str]]] = []
        self.pieces: list[str] = []

    def handle_starttag(self, tag: str, attrs: Attributes) -> None:
        self._note(tag, attrs)
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: Attributes) -> None:
        self._note(tag, attrs)
        if tag not in VOID and "svg" not in self.open:
            self.faults.append(f"<{tag}/> closes itself")

    def handle_endtag(self, tag: str) -> None:
        if not self.open or self.open[-1] != tag:
            self.faults.append(f"</{tag}> in {' '.join(self.open)}, line {self.getpos()[0]}")
        else:
            self.open.pop()

    def handle_data(self, data: str) -> None:
        if not SILENT & set(self.open):
            self.pieces.append(data)

    def _note(self, tag: str, attrs: Attributes) -> None:
        names = [name for name, _ in attrs]
        if len(names) != len(set(names)):
            self.faults.append(f"<{tag}> has an attribute twice, line {self.getpos()[0]}")
        if tag in BLOCKS and "p" in self.open:
            self.faults.append(f"<{tag}> in a paragraph, line {self.getpos()[0]}")
        if tag in ONLY_IN and (not self.open or self.open[-1] not in ONLY_IN[tag]):
            self.faults.append(f"<{tag}> in {self.open[-1:]}, line {self.getpos()[0]}")
        self.elements.append((tag, {name: value or "" for name, value in attrs}))
        self.pieces.append("\n")

    def values(self, attribute: str) -> list[str]:
        """Every value of an attribute, in the order of the page."""
        return [attributes[attribute] for _, attributes in self.elements if attribute in attributes]

    def count(self, tag: str) -> int:
        return sum(name == tag for name, _ in self.elements)

    def finish(self) -> None:
        """Note what can be said only at the end: what stays open, and names that lead nowhere."""
        self.close()
        if self.open:
            self.faults.append(f"not closed: {' '.join(self.open)}")
        ids = self.values("id")
        self.faults += [f"id {name} twice" for name in set(ids) if ids.count(name) > 1]
        self.faults += [f"no id {name}" for name in self.values("aria-labelledby") if name not in ids]


def read_page(html: str) -> Page:
    """Take a page apart."""
    page = Page()
    page.feed(html)
    page.finish()
    return page


def text_of(html: str) -> str:
    """The page's text without tags: one line for each piece, spaces and no-break spaces made one plain space."""
    lines = (re.sub(r"\s+", " ", line).strip() for line in "".join(read_page(html).pieces).splitlines())
    return "\n".join(line for line in lines if line)
