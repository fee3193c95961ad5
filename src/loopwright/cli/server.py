"""The server that runs at home: waitress in this process, until Ctrl-C."""

from __future__ import annotations

import errno
import ipaddress
import os
import signal
import socket
import sys
from typing import Any, Final

import typer
from django.db import connections

from loopwright.units import BadInput

__all__ = ["allow_host", "keep_demo", "open_server", "run"]

_PORTS_TRIED: Final = 100
_LARGEST_BODY: Final = 6_000_000
_HOSTS: Final = "LOOPWRIGHT_ALLOWED_HOSTS"
_LOOPBACK: Final = ("localhost", "127.0.0.1", "[::1]")


def allow_host(host: str) -> None:
    """Let pages be asked for under the names of the address that is listened on, unless the user named hosts herself.

    The settings read this, so it has to come before them.
    """
    if not os.environ.get(_HOSTS, "").strip():
        names = _names_of_this_machine() if _is_every_address(host) else [_in_url(host)]
        os.environ[_HOSTS] = ",".join(dict.fromkeys((*_LOOPBACK, *names)))


def keep_demo() -> None:
    """Keep the demonstration season, if none of its name is there. The database has to be ready."""
    from loopwright.files import demo_text, read_season_text
    from loopwright.store.changes import keep_season, season_list

    text = demo_text()
    season = read_season_text(text, name="the demo season", format="toml")
    if season.name not in {kept.name for kept in season_list()}:
        keep_season(season, text=text, says="loaded the demo season")


def open_server(host: str, port: int) -> Any:
    """Give a waitress server that listens on the port, or on the next free one.

    :raises BadInput: there is no such address, or no port can be had.
    """
    from django.core.wsgi import get_wsgi_application
    from waitress.server import create_server

    import loopwright.web.urls  # noqa: F401 -- before the first page is asked for, not while it waits

    application = get_wsgi_application()
    last = min(port + _PORTS_TRIED, 65536)
    for number in range(port, last):
        try:
            return create_server(
                application, host=host, port=number, threads=4, ident=None, max_request_body_size=_LARGEST_BODY
            )
        except (OSError, ValueError) as error:
            if getattr(error, "errno", None) != errno.EADDRINUSE:
                reason = getattr(error, "strerror", None) or str(error)
                raise BadInput(reason.lower(), "an address and port to listen on", place=f"{host}:{number}") from error
    raise BadInput(f"ports {port} to {last - 1} taken", "a free port", place="--port")


def run(server: Any, host: str, port: int) -> None:
    """Say where the pages are, and serve them until Ctrl-C or the system ends it."""
    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, _end)
    connections.close_all()  # each page opens its own, and the last one that closes leaves one whole file behind
    try:
        _announce(server, host, port)
        server.run()
    except KeyboardInterrupt:
        pass  # that is how it is ended
    finally:
        server.close()


def _announce(server: Any, host: str, port: int) -> None:
    own_port = int(getattr(server, "effective_port", 0) or server.effective_listen[0][1])
    if port not in (0, own_port):
        typer.echo(f"Port {port} is taken; using {own_port}.", err=True)
    if not _is_loopback(host):
        typer.echo("There is no login: whoever can reach this address can read and change your seasons.", err=True)
    shown = _names_of_this_machine()[-1] if _is_every_address(host) else _in_url(host)
    typer.echo(f"Loopwright is at http://{shown}:{own_port}/ (Ctrl-C ends it)")
    sys.stdout.flush()


def _end(number: int, frame: object) -> None:
    raise KeyboardInterrupt


def _is_every_address(host: str) -> bool:
    return host in {"0.0.0.0", "::", "*", ""}


def _is_loopback(host: str) -> bool:
    try:
        return host == "localhost" or ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False


def _in_url(host: str) -> str:
    """Write a host as a URL has it: an IPv6 address in brackets."""
    return f"[{host}]" if ":" in host else host


def _names_of_this_machine() -> list[str]:
    """Give the machine's name, alone and in its network, and last its address there, as far as they are known."""
    name = socket.gethostname().lower()
    names = [name, f"{name.partition('.')[0]}.local"]
    try:
        # Nothing is sent: the system only says which of its addresses would be used. Source: RFC 5737, 192.0.2.0/24
        # belongs to nobody.
        with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
            probe.connect(("192.0.2.1", 9))
            names.append(probe.getsockname()[0])
    except OSError:
        pass
    return names
