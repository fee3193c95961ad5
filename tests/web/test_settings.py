"""The settings as they stand without any variable, and what the server does by them."""

import subprocess
import sys
from pathlib import Path

import pytest
from django.conf import settings
from django.core.handlers.wsgi import WSGIRequest
from django.db import connection
from django.http import HttpResponse
from django.test import Client, RequestFactory

from loopwright.web.policy import CONTENT_POLICY, ContentPolicy, UploadLimit


@pytest.fixture
def client(empty_store: Path) -> Client:
    """A browser that speaks to the application under a name that is allowed."""
    return Client(headers={"host": "localhost"})


def ask(path: str = "/", **head: str) -> WSGIRequest:
    """A request."""
    return RequestFactory().get(path, headers=head)


def test_the_settings_module_stays_readable_in_one_sitting() -> None:
    assert len(Path(settings.BASE / "settings.py").read_text("utf-8").splitlines()) < 200


def test_only_this_machine_may_ask() -> None:
    assert settings.ALLOWED_HOSTS == ["localhost", "127.0.0.1", "[::1]"]
    assert settings.DEBUG is False


def test_another_name_is_turned_away(client: Client) -> None:
    assert client.get("/", headers={"host": "knit.example"}).status_code == 400


@pytest.mark.skipif(connection.vendor != "sqlite", reason="says something of SQLite")
@pytest.mark.parametrize(
    ("pragma", "value"), [("journal_mode", "wal"), ("foreign_keys", 1), ("synchronous", 2), ("busy_timeout", 20000)]
)
def test_sqlite_is_set_to_lose_nothing(pragma: str, value: object) -> None:
    with connection.cursor() as cursor:
        assert cursor.execute(f"PRAGMA {pragma}").fetchone() == (value,)
    connection.close()


def test_reading_the_settings_writes_nothing(tmp_path: Path) -> None:
    code = "import loopwright.web.settings as s; print(s.DATA, repr(s.SECRET_KEY))"
    environment = {"LOOPWRIGHT_DATA": str(tmp_path / "data"), "PATH": ""}
    done = subprocess.run([sys.executable, "-c", code], env=environment, capture_output=True, text=True, check=True)
    assert done.stdout == f"{tmp_path / 'data'} ''\n"
    assert list(tmp_path.iterdir()) == []


def test_every_page_carries_the_content_policy(client: Client) -> None:
    response = client.get("/no-such-page/")
    assert response.status_code == 404
    assert response["Content-Security-Policy"] == CONTENT_POLICY
    assert response["X-Frame-Options"] == "DENY"
    assert response["Referrer-Policy"] == "same-origin"


def test_a_page_may_have_a_policy_of_its_own() -> None:
    page = ContentPolicy(lambda request: HttpResponse(headers={"Content-Security-Policy": "default-src 'none'"}))
    assert page(ask())["Content-Security-Policy"] == "default-src 'none'"


def test_what_is_too_large_is_refused_unread() -> None:
    page = UploadLimit(lambda request: HttpResponse("taken"))
    answers = [page(RequestFactory().post("/", CONTENT_LENGTH=said)) for said in ("5200000", "5000000", "", "many")]
    assert [answer.status_code for answer in answers] == [413, 200, 200, 200]


def test_a_form_from_elsewhere_is_refused() -> None:
    stranger = Client(enforce_csrf_checks=True, headers={"host": "localhost"})
    assert stranger.post("/load/", {"text": "x"}).status_code == 403


def test_the_font_is_served_with_its_type_and_may_be_kept(client: Client) -> None:
    response = client.get("/static/fonts/Inter[opsz,wght].ttf")
    assert response.status_code == 200
    assert response["Content-Type"] == "font/ttf"
    assert "immutable" in response["Cache-Control"]
    response.close()


def test_the_swap_script_comes_from_its_package(client: Client) -> None:
    response = client.get("/static/django_htmx/htmx-2.min.js")
    assert response.status_code == 200
    assert response["Content-Type"].startswith("text/javascript")
    response.close()
