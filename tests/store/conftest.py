"""Fixtures of the store's tests."""

from __future__ import annotations

from tests.postgres import anyio_backend, database_url, demo_database_url, empty_database_url

__all__ = ["anyio_backend", "database_url", "demo_database_url", "empty_database_url"]
