"""The colours of a garment as a page shows them."""

from jinja2 import FileSystemLoader

from loopwright.colour import as_seen, read_hex, write_hex
from loopwright.documents.colour_view import HEADINGS, ColoursView, colours_view
from loopwright.documents.environment import TEMPLATE_DIR, page_environment
from loopwright.files import demo_text, read_season_text
from loopwright.season.colour_report import colour_report
from loopwright.season.wording import Wording
from loopwright.units import Reader
from tests.documents.pages import read_page


def view(garment: str) -> ColoursView:
    season = read_season_text(demo_text(), "demo", "toml")
    report = colour_report(season, season.garment_by_key[garment], "stocking stitch", {"main": 80.0, "contrast": 40.0})
    return colours_view(report, Wording(Reader()))


def test_each_colour_has_a_chip_for_every_eye() -> None:
    rows = view("hat").rows
    assert [(row.name, row.roles) for row in rows] == [("Gorse", "main"), ("Lichen", "contrast")]
    seen = write_hex(as_seen(read_hex("#c39a32"), "protan"))
    assert all(len(row.chips) == len(HEADINGS) for row in rows)
    assert seen in rows[0].chips[HEADINGS.index("protan")]


def test_her_own_choices_say_what_is_too_little() -> None:
    first, *_ = view("hat").choices
    assert "as main" in first.says
    assert first.apart.startswith("good, 57 L* at the least")


def test_one_colour_needs_no_table() -> None:
    assert (view("shawl").rows, view("shawl").choices) == ((), ())


def test_it_is_a_table_that_can_be_read_aloud() -> None:
    environment = page_environment(loader=FileSystemLoader(TEMPLATE_DIR))
    macro = environment.get_template("parts/colours.html").module.colours  # type: ignore[attr-defined]
    page = read_page(f"<!doctype html><html lang='en'><body>{macro(view('hat'))}</body></html>")
    assert page.faults == []
