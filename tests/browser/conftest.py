"""One server on a free port and a real browser. Where there is no chromium, these tests are skipped."""

import os
import re
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright

from loopwright.files import demo_text
from tests.browser.watching import Watch, open_demo

FLAGS = [
    "--no-sandbox",  # only because these tests may run as root
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
WAIT_MS = 5_000


def chromium_path() -> str | None:
    usual = Path("/usr/bin/chromium")
    return shutil.which("chromium") or (str(usual) if usual.exists() else None)


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The address of a server as one starts it at home, with nothing kept yet."""
    if chromium_path() is None:
        pytest.skip("no chromium on PATH nor at /usr/bin/chromium")
    surroundings = {name: value for name, value in os.environ.items() if not name.startswith("LOOPWRIGHT_")}
    surroundings.pop("DATABASE_URL", None)
    folder = tmp_path_factory.mktemp("data")
    command = [sys.executable, "-m", "loopwright", "serve", "--port", "0", "--data", str(folder)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=surroundings) as server:
        assert server.stdout is not None
        said = server.stdout.readline()
        address = re.search(r"http://\S+", said)
        assert address is not None, f"the server said {said!r} and no address"
        yield address[0]
        server.send_signal(signal.SIGINT)
        server.wait(timeout=10)


@pytest.fixture(scope="package")
def chromium() -> Iterator[Browser]:
    path = chromium_path()
    if path is None:
        pytest.skip("no chromium on PATH nor at /usr/bin/chromium")
    with sync_playwright() as playwright, playwright.chromium.launch(executable_path=path, args=FLAGS) as browser:
        yield browser


@pytest.fixture(scope="package")
def context(chromium: Browser, site: str) -> Iterator[BrowserContext]:
    """One visitor for all tests, so that fonts and scripts are fetched once."""
    with chromium.new_context(base_url=site) as context:
        context.set_default_timeout(WAIT_MS)
        yield context


@pytest.fixture(scope="package")
def looked_at(context: BrowserContext) -> str:
    """The address of a season that no test changes."""
    with context.new_page() as page:
        page.goto("/")
        page.get_by_label("or its text").fill(demo_text().replace("Winter at Wethers Reach", "Winter to look at"))
        page.get_by_role("button", name="Load it").click()
        page.wait_for_url("**/season/**")
        return page.url


@pytest.fixture
def page(context: BrowserContext) -> Iterator[Page]:
    """A page that is still blank; whatever goes wrong in the browser fails the test."""
    context.clear_cookies()
    with context.new_page() as page:
        page.set_viewport_size({"width": 1280, "height": 900})
        watch = Watch(page)
        yield page
        assert watch.troubles == []


@pytest.fixture
def plain_page(chromium: Browser, site: str) -> Iterator[Page]:
    """The same without JavaScript."""
    with chromium.new_context(base_url=site, java_script_enabled=False) as context, context.new_page() as page:
        page.set_default_timeout(WAIT_MS)
        yield page


@pytest.fixture
def bench(page: Page) -> Iterator[str]:
    """The address of the demo's chart as it comes with the program; what is drawn is sent before the next test."""
    address = f"{open_demo(page)}charts/tide-line/"
    page.evaluate("localStorage.clear()")
    page.goto(address)
    expect(page.locator("#drawing")).to_be_visible()
    yield address
    page.evaluate("async () => { await document.getElementById('drawing')?.bench.keeping.send(); }")
