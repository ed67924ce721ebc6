"""Settings are right or the service does not start."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.cut_plans import MOST_WORK_COUNT
from service.settings import Settings, SettingsError, load_settings, table

if TYPE_CHECKING:
    from pathlib import Path

WRONG = {
    "INGLEWRIGHT_DATABASE_URL": "mysql://root:hunter2@db/x",
    "INGLEWRIGHT_OWNER_DATABASE_URL": "postgresql://root:hunter2@db",
    "INGLEWRIGHT_DATA_DIR": __file__,
    "INGLEWRIGHT_HOST": "not a host",
    "INGLEWRIGHT_PORT": "65536",
    "INGLEWRIGHT_ALLOWED_HOSTS": "shop.example, -bad",
    "INGLEWRIGHT_DEMO_ACCOUNT": "../etc",
    "INGLEWRIGHT_WORKERS_COUNT": "65",
    "INGLEWRIGHT_QUEUE_COUNT": "ten",
    "INGLEWRIGHT_WORKER_MEMORY_MIB": "-1",
    "INGLEWRIGHT_CUT_WORK_COUNT": "9",
    "INGLEWRIGHT_DEADLINE_SECONDS": "nan",
    "INGLEWRIGHT_START_SECONDS": "0.5",
    "INGLEWRIGHT_SHUTDOWN_SECONDS": "1e3",
    "INGLEWRIGHT_BODY_LIMIT_BYTES": "٣٠٠٠",
    "INGLEWRIGHT_LOG_LEVEL": "loud",
}


def test_the_defaults_are_valid_and_local() -> None:
    settings = load_settings({"PATH": "/bin"})

    assert settings.host == "127.0.0.1"
    assert settings.database_url is None
    assert settings.data_dir is None
    assert settings.demo_account is None, "a service is open to strangers only when it is told so"
    assert settings.workers_count >= 1


def test_every_setting_is_read_from_its_variable(tmp_path: Path) -> None:
    settings = load_settings(
        {
            "INGLEWRIGHT_DATABASE_URL": "postgresql://a:b@db:5432/shop",
            "INGLEWRIGHT_OWNER_DATABASE_URL": "postgresql://o:p@db:5432/shop",
            "INGLEWRIGHT_DATA_DIR": str(tmp_path),
            "INGLEWRIGHT_HOST": "::1",
            "INGLEWRIGHT_PORT": "0",
            "INGLEWRIGHT_ALLOWED_HOSTS": "shop.example, API.shop.example",
            "INGLEWRIGHT_DEMO_ACCOUNT": "north",
            "INGLEWRIGHT_WORKERS_COUNT": "3",
            "INGLEWRIGHT_QUEUE_COUNT": "7",
            "INGLEWRIGHT_WORKER_MEMORY_MIB": "0",
            "INGLEWRIGHT_CUT_WORK_COUNT": "900",
            "INGLEWRIGHT_DEADLINE_SECONDS": "2.5",
            "INGLEWRIGHT_START_SECONDS": "5",
            "INGLEWRIGHT_SHUTDOWN_SECONDS": "0",
            "INGLEWRIGHT_BODY_LIMIT_BYTES": "65536",
            "INGLEWRIGHT_LOG_LEVEL": "warning",
        }
    )

    assert settings == Settings(
        database_url="postgresql://a:b@db:5432/shop",
        owner_database_url="postgresql://o:p@db:5432/shop",
        data_dir=tmp_path,
        host="::1",
        port=0,
        allowed_hosts=("shop.example", "api.shop.example"),
        demo_account="north",
        workers_count=3,
        queue_count=7,
        worker_memory_mib=0,
        cut_work_count=900,
        deadline_seconds=2.5,
        start_seconds=5.0,
        shutdown_seconds=0.0,
        body_limit_bytes=65_536,
        log_level="warning",
    )


def test_every_wrong_value_is_named_at_once_with_its_remedy() -> None:
    with pytest.raises(SettingsError) as caught:
        load_settings(WRONG)

    assert sorted(WRONG) == sorted(fault.name for fault in caught.value.faults)
    assert all(fault.detail and fault.remedy for fault in caught.value.faults)


def test_a_password_is_never_repeated() -> None:
    with pytest.raises(SettingsError) as caught:
        load_settings(WRONG)

    assert "hunter2" not in str(caught.value)


def test_an_unknown_variable_of_ours_is_refused_and_the_right_one_suggested() -> None:
    with pytest.raises(SettingsError, match="INGLEWRIGHT_DATABASE_URL") as caught:
        load_settings({"INGLEWRIGHT_DATABASE_URI": "postgresql://db/x", "OTHER_THING": "1"})

    assert [fault.name for fault in caught.value.faults] == ["INGLEWRIGHT_DATABASE_URI"]


def test_the_table_lists_every_setting() -> None:
    assert [f"INGLEWRIGHT_{field.upper()}" for field in msgspec.structs.asdict(load_settings({}))] == [
        row.name for row in table()
    ]


def test_a_service_that_is_told_nothing_allows_as_much_work_as_the_core() -> None:
    assert MOST_WORK_COUNT == load_settings({}).cut_work_count
