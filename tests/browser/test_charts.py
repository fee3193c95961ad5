"""The bench of a chart in a real browser: drawn with mouse, fingers and keys, kept, taken up again, quick."""

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from loopwright.chart import (
    Chart,
    ChartRole,
    NamedChart,
    RepeatBox,
    chart_csv,
    find_floats,
    long_floats,
    mirrored,
    quarter_turned,
    read_chart_csv,
    roles_per_row,
    upside_down,
)
from tests.browser.watching import Watch, open_demo

pytestmark = pytest.mark.browser

KEPT_MS = 15_000
SMOOTH_MS = 25.0
"""A frame of 60 in a second takes 16.7 ms; the median must lie well under two of them."""


def cell(page: Page, column: int, row: int) -> tuple[float, float]:
    """Where a cell lies on the page, column and row from 0."""
    x, y = page.evaluate(
        """([column, row]) => {
            const { view, canvas } = document.getElementById("drawing").bench;
            const box = canvas.getBoundingClientRect();
            return [box.left + view.x(column) + view.wide / 2, box.top + view.y(row) + view.high / 2];
        }""",
        [column, row],
    )
    return x, y


def drag(page: Page, *cells: tuple[int, int]) -> None:
    page.mouse.move(*cell(page, *cells[0]))
    page.mouse.down()
    for one in cells[1:]:
        page.mouse.move(*cell(page, *one), steps=3)
    page.mouse.up()


def fields(page: Page) -> dict[str, Any]:
    found: dict[str, Any] = page.evaluate("document.getElementById('drawing').bench.keeping.fields()")
    return found


def rows(page: Page) -> list[str]:
    found: list[str] = fields(page)["rows"]
    return found


def drawn(page: Page) -> Chart:
    """The chart as it stands in the browser."""
    sent = {name: value for name, value in fields(page).items() if value is not None}
    around = page.evaluate("document.getElementById('drawing').bench.rules.inTheRound")
    worked = "in the round" if around else "flat"
    return NamedChart.model_validate({"key": "x", "name": "x", "worked": worked, **sent}).chart


def kept(page: Page) -> None:
    expect(page.locator("#chart-kept")).to_have_text("kept", timeout=KEPT_MS)


def press(page: Page, name: str) -> None:
    page.get_by_role("button", name=name, exact=True).click()


def unfold(page: Page) -> None:
    page.evaluate("for (const details of document.querySelectorAll('details')) details.open = true")


def test_a_stroke_is_painted_kept_undone_and_made_again(page: Page, bench: str) -> None:
    before = rows(page)
    drag(page, (2, 4), (6, 4))
    assert rows(page)[7] == "mmrrrrrmmmmm"
    kept(page)
    expect(page.get_by_role("button", name="Undo: drew Tide line")).to_be_visible()
    page.reload()
    assert rows(page)[7] == "mmrrrrrmmmmm"
    drag(page, (0, 0), (0, 0))
    press(page, "Undo")
    assert rows(page)[11] == before[11]
    press(page, "Do again")
    assert rows(page)[11][0] == "r"


def test_undo_has_no_limit(page: Page, bench: str) -> None:
    before = rows(page)
    page.locator("#chart-canvas").focus()
    page.evaluate(
        """() => {
            const { tools } = document.getElementById("drawing").bench;
            for (let step = 0; step < 1500; step += 1) {
                tools.brush = { role: 1 + (step % 2), stitch: null };
                tools.down({ column: step % 12, row: 0 });
                tools.up();
            }
        }"""
    )
    for _ in range(3):
        page.keyboard.press("Control+z")
    page.evaluate("() => { const { history } = document.getElementById('drawing').bench; while (history.undo()); }")
    assert rows(page) == before


def test_line_fill_and_taking_a_colour(page: Page, bench: str) -> None:
    press(page, "Line")
    drag(page, (0, 4), (3, 7))
    assert [row[at] for at, row in zip(range(4), rows(page)[7:3:-1], strict=True)] == ["r"] * 4
    press(page, "Take colour")
    page.mouse.click(*cell(page, 0, 1))
    press(page, "Fill")
    page.mouse.click(*cell(page, 0, 0))
    assert rows(page)[11] == "s" * 12
    press(page, "Undo")
    press(page, "Undo")
    kept(page)


def test_parts_are_mirrored_and_turned_as_the_core_does(page: Page, bench: str) -> None:
    unfold(page)
    press(page, "Paint")
    page.get_by_role("button", name="knit two together", exact=True).click()
    page.mouse.click(*cell(page, 1, 4))
    start = drawn(page)
    for name, move in (("Mirror", mirrored), ("Upside down", upside_down), ("Quarter turn", quarter_turned)):
        press(page, name)
        assert drawn(page).cells.tolist() == move(start).cells.tolist(), name
        assert drawn(page).stitches.tolist() == move(start).stitches.tolist(), name
        press(page, "Undo")
        assert drawn(page) == start


def test_a_selection_is_moved_copied_and_made_the_repeat(page: Page, bench: str) -> None:
    unfold(page)
    press(page, "Select")
    drag(page, (5, 5), (7, 6))
    press(page, "Copy")
    page.locator("#chart-canvas").focus()
    page.keyboard.press("Escape")
    drag(page, (0, 4), (2, 5))
    press(page, "Put down")
    assert (rows(page)[7][:3], rows(page)[6][:3]) == ("mrm", "rrr")
    press(page, "Make it the repeat")
    assert fields(page)["repeat"] == {"from_stitch": 10, "to_stitch": 12, "from_row": 5, "to_row": 6}
    press(page, "Clear")
    assert rows(page)[7][:3] == "mmm"
    kept(page)


def test_the_chart_grows_at_the_left_and_above(page: Page, bench: str) -> None:
    unfold(page)
    before = rows(page)
    page.locator("[data-size] [name=columns]").fill("14")
    page.locator("[data-size] [name=rows]").fill("13")
    press(page, "Set size")
    assert rows(page) == ["m" * 14, *(f"mm{row}" for row in before)]
    press(page, "Undo")
    assert rows(page) == before
    kept(page)


def test_another_colour_is_added_and_shaded(page: Page, bench: str) -> None:
    page.get_by_label("Name of another colour").fill("Gorse yellow")
    press(page, "Add a colour")
    page.get_by_label("Screen colour of gorse-yellow").fill("#c39a32")
    page.mouse.click(*cell(page, 0, 0))
    assert fields(page)["shades"] == {"gorse-yellow": "#c39a32"}
    assert rows(page)[11][0] == "g"
    kept(page)
    page.reload()
    assert drawn(page).roles[3] == ChartRole("gorse-yellow", "#c39a32")


def test_the_keyboard_alone_draws(page: Page, bench: str) -> None:
    page.locator("#chart-canvas").focus()
    for key in ("ArrowUp", "ArrowUp", "ArrowUp", "ArrowUp", "ArrowLeft"):
        page.keyboard.press(key)
    expect(page.locator("#chart-cursor")).to_have_text("Row 5, stitch 2: main, Oat")
    page.keyboard.press("3")
    page.keyboard.press("Space")
    page.keyboard.press("Shift+ArrowLeft")
    assert rows(page)[7] == "mmmmmmmmmssm"
    expect(page.locator("#chart-cursor")).to_have_text("Row 5, stitch 3: contrast-2, Sea ink")
    page.keyboard.press("l")
    page.keyboard.press("Enter")
    for _ in range(3):
        page.keyboard.press("ArrowLeft")
    page.keyboard.press("Enter")
    assert rows(page)[7] == "mmmmmmsssssm"
    page.keyboard.press("Control+z")
    page.keyboard.press("Control+z")
    page.keyboard.press("Control+z")
    page.keyboard.press("Control+Shift+z")
    assert rows(page)[7] == "mmmmmmmmmmsm"
    assert page.evaluate("getComputedStyle(document.activeElement).outlineWidth") == "2px"


@pytest.fixture
def phone(chromium: Browser, site: str) -> Iterator[Page]:
    with (
        chromium.new_context(base_url=site, viewport={"width": 360, "height": 740}, has_touch=True) as context,
        context.new_page() as page,
    ):
        watch = Watch(page)
        yield page
        assert watch.troubles == []


def test_one_finger_draws_and_two_enlarge(phone: Page) -> None:
    phone.goto(f"{open_demo(phone)}charts/tide-line/")
    phone.locator("#chart-canvas").scroll_into_view_if_needed()
    hand = phone.context.new_cdp_session(phone)

    def touch(kind: str, *points: tuple[float, float]) -> None:
        places = [{"x": x, "y": y, "id": at} for at, (x, y) in enumerate(points)]
        hand.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": places})

    touch("touchStart", cell(phone, 3, 4))
    touch("touchMove", cell(phone, 5, 4))
    touch("touchEnd")
    assert rows(phone)[7] == "mmmrrrmmmmmm"
    wide = phone.evaluate("document.getElementById('drawing').bench.view.wide")
    before = rows(phone)
    x, y = cell(phone, 6, 6)
    touch("touchStart", (x, y))
    touch("touchStart", (x, y), (x + 40, y))
    touch("touchMove", (x, y), (x + 120, y))
    touch("touchEnd")
    assert phone.evaluate("document.getElementById('drawing').bench.view.wide") > 2 * wide
    assert rows(phone) == before
    kept(phone)


def test_floats_are_told_while_drawing(page: Page, bench: str) -> None:
    expect(page.locator("#chart-floats")).to_contain_text("4 over 5 stitches, in rows 6, 7, 11, 12")
    drag(page, (0, 4), (0, 4))
    expect(page.locator("#chart-floats")).to_contain_text("5 over 5 stitches, in rows 5, 6, 7, 11, 12")
    press(page, "Undo")
    expect(page.locator("#chart-floats")).to_contain_text("4 over 5")


@pytest.mark.parametrize("seed", range(6))
def test_the_page_finds_the_floats_that_the_core_finds(page: Page, bench: str, seed: int) -> None:
    """The same law twice, in two languages: on random charts with and without repeat, in the round and flat."""
    random = np.random.default_rng(seed)
    cells = random.integers(0, 3, (7, 15)).astype(np.uint8)
    stitches = np.where(random.random((7, 15)) < 0.1, 27, 0).astype(np.uint8)
    repeat = RepeatBox(3, 1, 8, 5) if seed % 2 else None
    chart = Chart(cells, stitches, tuple(ChartRole(f"r{at}") for at in range(3)), seed % 3 == 0, seed < 3, repeat)
    found = page.evaluate(
        """async ({ rows, roles, stitches, inTheRound, firstRowRightSide, repeat, path }) => {
            const { Watch } = await import(path);
            const grid = { columns: rows[0].length, rows: rows.length, roles: rows.flat(), stitches: stitches.flat(),
                at(column, row) { return row * this.columns + column; } };
            const watch = new Watch({ limit: 3, inTheRound, firstRowRightSide, noStitch: 27 });
            watch.all(grid, repeat);
            return watch.rows.map((row) => ({ colours: row.colours, longest: row.longest,
                long: row.long.map((one) => [one.role, one.stitches, one.catches]) }));
        }""",
        {
            "rows": cells.tolist(),
            "stitches": stitches.tolist(),
            "inTheRound": chart.in_the_round,
            "firstRowRightSide": chart.first_row_right_side,
            "repeat": repeat and {"column": 3, "row": 1, "columns": 8, "rows": 5},
            "path": "/static/chart/floats.js",
        },
    )
    assert [row["colours"] for row in found] == roles_per_row(chart).tolist()
    floats = find_floats(chart)
    assert [row["longest"] for row in found] == [
        int(floats.stitches[floats.row == row].max(initial=0)) for row in range(chart.rows)
    ]
    told = [[row + 1, role, length, catches] for row, one in enumerate(found) for role, length, catches in one["long"]]
    assert told == [
        [one.row, int(one.role[1:]), one.stitches, list(one.catch_columns)] for one in long_floats(chart, 3, 5.0)
    ]


def drawn_and_closed(page: Page, bench: str) -> None:
    """Somebody draws while nothing can be sent, and leaves the page at once."""
    tab = page.context.new_page()
    tab.goto(bench)
    tab.evaluate("() => { globalThis.fetch = () => Promise.reject(new Error('cut off')); }")
    drag(tab, (2, 4), (6, 4))
    tab.goto("about:blank")
    tab.close()


def test_a_tab_closed_at_once_loses_nothing(page: Page, bench: str) -> None:
    page.goto("about:blank")
    drawn_and_closed(page, bench)
    page.goto(bench)
    expect(page.locator("#chart-cursor")).to_contain_text("What was drawn before the page was closed is back.")
    assert rows(page)[7] == "mmrrrrrmmmmm"
    kept(page)
    page.reload()
    assert rows(page)[7] == "mmrrrrrmmmmm"
    assert page.evaluate("Object.keys(localStorage).filter((key) => key.startsWith('loopwright-chart')).length") == 0


def test_a_clash_is_asked_about_and_nothing_is_lost(page: Page, bench: str) -> None:
    other = page.context.new_page()
    other.goto(bench)
    drag(other, (0, 4), (2, 4))
    kept(other)
    other.close()
    drag(page, (8, 4), (9, 4))
    expect(page.locator("#chart-found")).to_contain_text("was changed elsewhere meanwhile", timeout=KEPT_MS)
    press(page, "Keep mine")
    kept(page)
    page.reload()
    assert rows(page)[7] == "mmmmmmmmrrmm"


def test_an_unkept_drawing_on_a_chart_that_was_changed_is_offered(page: Page, bench: str) -> None:
    page.goto(bench.replace("charts/tide-line/", "charts/"))
    drawn_and_closed(page, bench)
    page.evaluate(
        """() => { for (const key of Object.keys(localStorage)) if (key.startsWith("loopwright-chart")) {
            const found = JSON.parse(localStorage[key]); found.known = "of yesterday";
            localStorage[key] = JSON.stringify(found); } }"""
    )
    page.goto(bench)
    expect(page.locator("#chart-found")).to_contain_text("was not kept, and the chart was changed elsewhere since")
    press(page, "Take that drawing")
    assert rows(page)[7] == "mmrrrrrmmmmm"
    kept(page)


def test_a_form_of_the_page_waits_for_the_drawing(page: Page, bench: str) -> None:
    drag(page, (2, 4), (6, 4))
    page.get_by_label("Name", exact=True).fill("Ebb line")
    press(page, "Keep it")
    expect(page.get_by_role("heading", level=1)).to_have_text("Ebb line")
    assert rows(page)[7] == "mmrrrrrmmmmm"


PAINTING = """async () => {
    const { canvas, view } = document.getElementById("drawing").bench;
    const box = canvas.getBoundingClientRect();
    const at = (type, x, y) => canvas.dispatchEvent(new PointerEvent(type,
        { clientX: x, clientY: y, pointerId: 1, pointerType: "mouse", button: 0, buttons: 1, bubbles: true }));
    canvas.setPointerCapture = () => {};
    view.spent.length = 0;
    const gaps = [];
    let last = null;
    await new Promise((done) => {
        let frame = 0;
        at("pointerdown", box.left + box.width / 2, box.top + box.height / 2);
        const tick = (now) => {
            if (last !== null) gaps.push(now - last);
            last = now;
            frame += 1;
            const turn = frame / 12;
            at("pointermove", box.left + box.width / 2 + (box.width / 4) * Math.cos(turn),
                box.top + box.height / 2 + (box.height / 3) * Math.sin(turn));
            if (frame < 150) requestAnimationFrame(tick);
            else { at("pointerup", box.left + 200, box.top + 100); done(); }
        };
        requestAnimationFrame(tick);
    });
    const median = (list) => [...list].sort((a, b) => a - b)[list.length >> 1];
    return { frame_ms: median(gaps), drawing_ms: median(view.spent), cell_px: view.wide };
}"""


def test_three_hundred_by_three_hundred_is_painted_at_sixty_frames(page: Page, tmp_path: Path) -> None:
    """Frames are timed by the browser's own clock of frames while a stroke goes round on the whole chart."""
    cells = np.random.default_rng(7).integers(0, 4, (300, 300)).astype(np.uint8)
    roles = tuple(ChartRole(f"r{at}", shade) for at, shade in enumerate(("#e0d8c0", "#234050", "#a05030", "#808050")))
    path = tmp_path / "field.csv"
    path.write_text(chart_csv(Chart(cells, np.zeros_like(cells), roles)), encoding="utf-8")
    page.goto(f"{open_demo(page)}add-chart/")
    page.get_by_label("Name").fill("Field")
    page.get_by_role("radio", name="From a file").check()
    page.locator("[name=file]").set_input_files(path)
    press(page, "Add it")
    page.wait_for_url("**/charts/field/", timeout=KEPT_MS)
    expect(page.locator("#drawing")).to_be_visible(timeout=KEPT_MS)
    before = rows(page)
    measured = []
    for _ in range(3):
        measured.append(page.evaluate(PAINTING))
        page.evaluate("document.getElementById('drawing').bench.view.zoom(3)")
    print(json.dumps(measured))  # noqa: T201 (what is measured is shown with pytest -s)
    assert rows(page) != before
    assert all(one["drawing_ms"] < 8 for one in measured)
    assert min(one["frame_ms"] for one in measured) < SMOOTH_MS
    kept(page)


@pytest.mark.parametrize("width", [360, 768, 1280])
def test_pages_are_in_order(page: Page, bench: str, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    season = bench.replace("charts/tide-line/", "")
    for place in ("charts/", "charts/tide-line/", "charts/tide-line/words/", "add-chart/"):
        page.goto(f"{season}{place}")
        unfold(page)
        excess = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
        assert excess <= 0, place
        found = Axe().run(page).response["violations"]
        assert [(one["id"], one["nodes"][0]["html"][:90]) for one in found] == [], place


def test_what_is_seen_is_the_yarn_s_colour(page: Page, bench: str) -> None:
    x, y = cell(page, 0, 1)
    box = page.locator("#chart-canvas").bounding_box()
    assert box is not None
    colour = page.evaluate(
        """([x, y]) => [...document.getElementById("chart-canvas").getContext("2d").getImageData(x, y, 1, 1).data]""",
        [round((x - box["x"]) + 3), round((y - box["y"]) + 3)],
    )
    assert colour[:3] == [0x23, 0x42, 0x4F]


def test_without_script_the_chart_is_seen_read_and_written(plain_page: Page) -> None:
    plain_page.goto(f"{open_demo(plain_page)}charts/tide-line/")
    expect(plain_page.get_by_role("img", name=re.compile("its rows stand in words below"))).to_be_visible()
    expect(plain_page.locator("#drawing")).to_be_hidden()
    plain_page.get_by_role("link", name="Rows on a page").click()
    expect(plain_page.get_by_role("row", name=re.compile("5 main, 1 contrast-1, 6 main"))).to_be_visible()
    plain_page.go_back()
    plain_page.get_by_text("Write the rows as marks").click()
    plain_page.get_by_role("textbox", name="Colours", exact=True).fill("mr\nrm")
    plain_page.get_by_role("button", name="Keep the rows").click()
    expect(plain_page.locator("#chart-about")).to_have_text("2 stitches by 2 rounds, for Striped pullover for Tam")


def test_a_table_that_was_saved_comes_back(page: Page, bench: str) -> None:
    text = page.evaluate("(address) => fetch(address).then((answer) => answer.text())", f"{bench}file/csv/")
    assert read_chart_csv(text).cells.tolist() == drawn(page).cells.tolist()
