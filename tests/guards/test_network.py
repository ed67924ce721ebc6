"""No test speaks to another machine (tests/conftest.py)."""

from __future__ import annotations

import socket

import pytest

ELSEWHERE = "192.0.2.1"  # RFC 5737: for documentation, never a machine


def test_a_connection_elsewhere_is_refused() -> None:
    with socket.socket() as plug, pytest.raises(RuntimeError, match="tests use no network"):
        plug.connect((ELSEWHERE, 80))


def test_a_name_elsewhere_is_not_looked_up() -> None:
    with pytest.raises(RuntimeError, match="tests use no network"):
        socket.getaddrinfo("example.org", 443)


def test_this_machine_may_be_spoken_to() -> None:
    with socket.create_server(("127.0.0.1", 0)) as server, socket.create_connection(server.getsockname()) as plug:
        assert server.getsockname() == plug.getpeername()
