"""What holds for every test: the same property cases each time, and no network."""

from __future__ import annotations

import ipaddress
import sys

from hypothesis import settings

settings.register_profile("house", deadline=None, derandomize=True, print_blob=True)
settings.register_profile("explore", deadline=None, max_examples=10_000, print_blob=True)
settings.load_profile("house")


class NetworkUsedError(RuntimeError):
    """A test spoke to another machine."""


def refuse_network(event: str, arguments: tuple[object, ...]) -> None:
    """Audit hook: let a socket connect to this machine only, and look up no other name."""
    if event == "socket.connect" and isinstance(address := arguments[1], tuple):
        host = address[0]
    elif event == "socket.getaddrinfo":
        host = arguments[0]
    else:
        return
    if not _is_here(host):
        message = f"{event} {host}: tests use no network"
        raise NetworkUsedError(message)


def _is_here(host: object) -> bool:
    if isinstance(host, bytes):
        host = host.decode()
    if host in {None, "", "localhost", "0.0.0.0", "::"}:  # noqa: S104 - compared, nothing is bound
        return True
    try:
        return ipaddress.ip_address(str(host)).is_loopback
    except ValueError:
        return False


sys.addaudithook(refuse_network)
