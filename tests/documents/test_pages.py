"""The check of pages itself sees faults; else the tests that lean on it could not fail."""

import pytest

from tests.documents.pages import read_page, text_of


@pytest.mark.parametrize(
    "html",
    [
        "<div><p>open</div>",
        "<div>never closed",
        "<p>one<ul><li>two</li></ul></p>",
        '<div class="a" class="b"></div>',
        '<div id="a"></div><div id="a"></div>',
        '<div aria-labelledby="a"></div>',
        "<li>alone</li>",
        "<div/>",
    ],
)
def test_a_badly_built_page_is_seen(html: str) -> None:
    assert read_page(html).faults


@pytest.mark.parametrize(
    "html",
    [
        '<!doctype html><html><head><meta charset="utf-8"></head><body><ul><li>one</li></ul></body></html>',
        '<p><svg><rect x="1"/></svg> a &lt; b</p>',
        "<dl><div><dt>a</dt><dd>b</dd></div></dl>",
    ],
)
def test_a_well_built_page_passes(html: str) -> None:
    assert read_page(html).faults == []


def test_text_is_what_is_read() -> None:
    assert text_of("<style>p{}</style><p>4\N{NO-BREAK SPACE}cm &amp;\n more</p><p>b</p>") == "4 cm &\nmore\nb"
