"""`inglewright book ...`, from a file to an audit, on a database of the run."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.catalogue import RowKind, demo_rows, write_csv, write_json
from service.cli import main
from tests.postgres import as_service, demo_database_url

if TYPE_CHECKING:
    from pathlib import Path

__all__ = ["demo_database_url"]
BOOK = ("demo", "demo")


@pytest.fixture(autouse=True)
def _database(demo_database_url: str, monkeypatch: pytest.MonkeyPatch) -> None:
    url = as_service(demo_database_url).replace("postgresql+asyncpg", "postgresql")
    monkeypatch.setenv("INGLEWRIGHT_DATABASE_URL", url)


def dearer(folder: Path) -> Path:
    """The demo's prices, one of them dearer."""
    first, *rest = demo_rows().prices
    path = folder / "prices.csv"
    path.write_bytes(write_csv([msgspec.structs.replace(first, amount_minor=2 * first.amount_minor), *rest], RowKind.PRICES))
    return path


def test_from_a_file_to_the_audit(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = str(dearer(tmp_path))
    assert 0 == main(["book", "import", *BOOK, "prices", path])
    assert 0 == main(["book", "import", *BOOK, "prices", path])
    assert 0 == main(["book", "check", *BOOK])
    assert 0 == main(["book", "diff", *BOOK])
    told = capsys.readouterr().out
    for words in (
        "156 rows taken into the draft.",
        "156 rows were there already.",
        "0 findings stop it, 0 in all",
        "changed prices TM-1007V GBP 1 (+100.0%) amount '3.02' -> '6.04'",
        "\n1 changes\n",
    ):
        assert words in told

    assert 0 == main(["book", "publish", *BOOK, "--from", "2999-01-01"])
    name = capsys.readouterr().out.strip()
    assert name.startswith("demo:demo:2999-01-01:")
    assert 0 == main(["book", "withdraw", *BOOK, name])
    assert 0 == main(["book", "revisions", *BOOK])
    assert 0 == main(["book", "audit", *BOOK])
    told = capsys.readouterr().out
    assert f"{name}\t2999-01-01\twithdrawn\tuntil 2999-01-01" in told
    assert ["withdrawn", "published", "rows_imported", "draft_begun", "published"] == [
        line.split("\t")[2] for line in told.splitlines() if "command:" in line
    ]


def test_what_is_exported_is_what_was_imported(tmp_path: Path, capfdbinary: pytest.CaptureFixture[bytes]) -> None:
    path = tmp_path / "screens.json"
    path.write_bytes(write_json(demo_rows().screens, RowKind.SCREENS))
    assert 0 == main(["book", "import", *BOOK, "screens", str(path), "--mode", "replace"])
    capfdbinary.readouterr()

    assert 0 == main(["book", "export", *BOOK, "screens", "--json"])
    assert path.read_bytes() == capfdbinary.readouterr().out
    assert 0 == main(["book", "export", *BOOK, "screens", "--decimal", "comma"])
    assert capfdbinary.readouterr().out.startswith(b"\xef\xbb\xbfmodel;diagonal_in;")


def test_books_and_drafts(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert [0, 0] == [main(["book", "make", "demo", "trade"]) for _ in range(2)]
    assert 0 == main(["book", "import", "demo", "trade", "prices", str(dearer(tmp_path))])
    assert 0 == main(["book", "list", "demo"])
    assert "trade\t\tdraft" in capsys.readouterr().out
    assert 0 == main(["book", "discard", "demo", "trade"])
    assert 1 == main(["book", "discard", "demo", "trade"])
    assert "Not done: The price book 'trade' has no draft." in capsys.readouterr().err


def test_what_is_refused_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    bad, other, unsound = tmp_path / "bad.csv", tmp_path / "other.csv", tmp_path / "screens.csv"
    bad.write_text("code,amount,currency,from_count,supplier,lead_days\nTM 1,1.00,GBP,1,yard,3\n")
    other.write_bytes("code".encode("utf-16"))
    unsound.write_bytes(write_csv([msgspec.structs.replace(demo_rows().screens[0], bracket="NONE")], RowKind.SCREENS))

    assert 1 == main(["book", "import", *BOOK, "prices", str(bad)])
    assert "line 2, code: 'TM 1' is not a code" in capsys.readouterr().err
    assert 1 == main(["book", "import", *BOOK, "prices", str(other)])
    assert "the file is UTF-16" in capsys.readouterr().err
    assert 0 == main(["book", "import", *BOOK, "screens", str(unsound)])
    assert [1, 1] == [main(["book", "check", *BOOK]), main(["book", "publish", *BOOK])]
    assert "screens SC-043, bracket: there is no bracket NONE" in capsys.readouterr().err
