"""Labels: three by eight on A4, each with a code that opens its lot's page."""

import re
from typing import Any

import pytest
import segno
from django.test import Client
from django.utils import timezone

from loopwright.web.cupboard.labels import ON_A_SHEET, code_drawing, sheets
from tests.web.asking import body
from tests.web.asking import words as lines_of


def words(response: Any) -> str:
    """The page's text on one line."""
    return " ".join(lines_of(response).split())


def modules(svg: str) -> set[tuple[int, int]]:
    """The dark modules that a drawing shows, without its quiet zone."""
    runs = re.findall(r"M(\d+) (\d+)h(\d+)v1h-\3z", svg)
    return {(int(x) - 4 + step, int(y) - 4) for x, y, length in runs for step in range(int(length))}


@pytest.mark.parametrize("text", ["http://localhost:8765/season/winter/cupboard/lot/oat/", "x" * 300])
def test_the_drawing_shows_every_module_of_the_code(text: str) -> None:
    code = segno.make(text, error="m", micro=False, boost_error=True)
    dark = {(x, y) for y, row in enumerate(code.matrix) for x, module in enumerate(row) if module}
    assert modules(code_drawing(text, "A code")) == dark
    size = len(code.matrix) + 8  # quiet zone of four modules on each side: ISO/IEC 18004
    assert f'viewBox="0 0 {size} {size}"' in code_drawing(text, "A code")


def test_each_lot_has_its_label(browser: Client, page: str) -> None:
    response = browser.get(f"{page}cupboard/labels/", {"date": "2027-03-01"})
    text = words(response)
    assert body(response).count('class="label-text"') == 13
    assert "13 labels on 1 sheet." in text
    assert "Ropewalk Lace Damson Dye lot 2 969 ± 30 m 149.0 ± 3.2 g 1 March" in text


def test_the_code_leads_to_the_host_by_which_the_page_was_asked(page: str) -> None:
    for host, secure in (("localhost:8765", False), ("127.0.0.1", False)):
        html = body(
            Client(headers={"host": host}).get(f"{page}cupboard/labels/", {"lot": "paddock-rust"}, secure=secure)
        )
        address = f"http://{host}{page}cupboard/lot/paddock-rust/"
        assert f'href="{address}"' in html
        expected = code_drawing(address, "Code for the page of Stone Paddock DK, Rust")
        assert expected in html


def test_lots_are_chosen_by_name_or_by_search(browser: Client, page: str) -> None:
    named = browser.get(f"{page}cupboard/labels/", {"lot": ["paddock-rust", "culvert-slate", "nope"]})
    assert body(named).count('class="label-text"') == 2
    found = browser.get(f"{page}cupboard/labels/", {"search": "paddock oat"})
    assert body(found).count('class="label-text"') == 2


def test_a_sheet_that_is_partly_used_begins_further_on(browser: Client, page: str) -> None:
    html = body(browser.get(f"{page}cupboard/labels/", {"first": "20"}))
    assert html.count('class="label-sheet"') == 2
    assert html.count('class="label" aria-hidden="true"') == 19


def test_every_label_has_one_place() -> None:
    labels = [object() for _ in range(50)]
    laid = sheets(labels, 5)  # type: ignore[arg-type]
    assert [len(sheet) for sheet in laid] == [ON_A_SHEET, ON_A_SHEET, 6]
    assert [label for sheet in laid for label in sheet][4:] == labels


def test_the_day_is_todays_where_none_is_said(browser: Client, page: str) -> None:
    assert f'value="{timezone.localdate().isoformat()}"' in body(browser.get(f"{page}cupboard/labels/"))
    wrong = words(browser.get(f"{page}cupboard/labels/", {"date": "soon"}))
    assert "wanted a day such as 2027-03-01" in wrong
