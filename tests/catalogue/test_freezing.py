from __future__ import annotations

import hashlib
import zlib

import msgspec
import pytest

from service.catalogue import PARTS, Catalogue, FrozenPart, PartBrokenError, demo_catalogue, freeze, thaw, thaw_part


def thawed(parts: tuple[FrozenPart, ...]) -> Catalogue:
    values = [thaw_part(name, part) for name, part in zip(PARTS, parts, strict=True)]
    return thaw(demo_catalogue().revision, demo_catalogue().price_book, values)


def test_what_is_thawed_is_what_was_frozen() -> None:
    again = thawed(freeze(demo_catalogue()))

    assert demo_catalogue() == again
    assert msgspec.json.encode(demo_catalogue()) == msgspec.json.encode(again)


def test_every_part_of_a_catalogue_is_frozen() -> None:
    assert {*Catalogue.__struct_fields__} == {"revision", "price_book", *PARTS}


def test_equal_parts_have_one_name() -> None:
    dearer = msgspec.structs.replace(demo_catalogue(), prices={}, revision="other")
    same = {part.digest for part in freeze(demo_catalogue())} & {part.digest for part in freeze(dearer)}

    assert len(PARTS) - 1 == len(same)


def test_the_name_is_the_digest_of_the_content() -> None:
    part = freeze(demo_catalogue())[0]

    assert part.digest == hashlib.sha256(zlib.decompress(part.content)).hexdigest()


def test_a_part_that_was_changed_is_refused() -> None:
    first = freeze(demo_catalogue())[0]
    other = FrozenPart(digest=first.digest, content=zlib.compress(zlib.decompress(first.content).replace(b"GBP", b"EUR")))

    with pytest.raises(PartBrokenError, match="does not hold what was frozen"):
        thaw_part("account", other)


def test_a_field_that_a_later_version_adds_takes_its_default() -> None:
    """A part that was frozen before `order_codes` was there."""
    fires = msgspec.to_builtins(demo_catalogue().appliances)
    for fire in fires.values():
        del fire["order_codes"]
    plain = msgspec.msgpack.encode(fires)
    old = FrozenPart(digest=hashlib.sha256(plain).hexdigest(), content=zlib.compress(plain))

    assert demo_catalogue().appliances == thaw_part("appliances", old)
