"""Watching a page: what goes wrong in it, what is on it, how it looks."""

from __future__ import annotations

import base64
import re

from playwright.sync_api import ConsoleMessage, Page, Request

__all__ = ["GARMENTS", "Watch", "ink_share", "open_bench", "open_demo"]

GARMENTS = ("shawl", "hat", "pullover", "cardigan", "slipover")
REFUSED = "the server responded with a status of 422"
"""Said by the browser of a form that was not taken in, which is no fault of the page."""


class Watch:
    """Notes errors on the console, errors of scripts, and what could not be fetched."""

    def __init__(self, page: Page) -> None:
        self.troubles: list[str] = []
        page.on("console", self._console)
        page.on("pageerror", lambda error: self.troubles.append(str(error)))
        page.on("requestfailed", self._failed)

    def _console(self, message: ConsoleMessage) -> None:
        if message.type in {"error", "warning"} and REFUSED not in message.text:
            self.troubles.append(message.text)

    def _failed(self, request: Request) -> None:
        # A page that is left, and a trial that a newer one replaces, break off what is on its way.
        if "ERR_ABORTED" not in (request.failure or ""):
            self.troubles.append(f"{request.url}: {request.failure}")


def open_demo(page: Page) -> str:
    """Load the demo season, as it comes with the program, and give the address of its page."""
    page.goto("/")
    page.get_by_role("button", name=re.compile("Load the demo season")).click()
    page.wait_for_url("**/season/**")
    return page.url


def open_bench(page: Page, garment: str = "cardigan") -> str:
    """Open a garment's bench of the demo season, and give its address."""
    address = f"{open_demo(page)}garment/{garment}/"
    page.goto(address)
    return address


def ink_share(page: Page, screenshot: bytes) -> float:
    """The share of dark points in a picture, counted by the browser."""
    image = base64.b64encode(screenshot).decode()
    share: float = page.evaluate(
        """async (image) => {
            const bytes = Uint8Array.from(atob(image), (letter) => letter.charCodeAt(0));
            const bitmap = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
            const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
            const context = canvas.getContext("2d");
            context.drawImage(bitmap, 0, 0);
            const points = context.getImageData(0, 0, bitmap.width, bitmap.height).data;
            let dark = 0;
            for (let at = 0; at < points.length; at += 4) if (points[at + 1] < 96) dark += 1;
            return dark / (points.length / 4);
        }""",
        image,
    )
    return share
