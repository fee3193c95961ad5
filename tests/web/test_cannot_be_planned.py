"""A season that reads well but cannot be planned is a page that says why, never an error of ours."""

from django.test import Client

from loopwright.files import demo_text
from tests.web.asking import words


def test_a_century_of_knitting_is_said(browser: Client) -> None:
    text = demo_text().replace("hours_a_week = 8\n", "hours_a_week = 0.001\n").replace("hours_a_week_sd = 2.5\n", "")
    response = browser.post("/load/", {"text": text}, follow=True)
    assert response.status_code == 422
    assert "a hundred years" in words(response)
