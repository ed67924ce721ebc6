"""A catalogue as frozen parts, each named by the digest of its content: what is equal is kept once, and never changes again."""

from __future__ import annotations

import hashlib
import zlib
from typing import TYPE_CHECKING, Any, Final

import msgspec

from service.catalogue.materials import FixingLoad, Material
from service.catalogue.models import Appliance, Bracket, Screen
from service.catalogue.rates import Account, LabourRate, PriceStep, Trade
from service.catalogue.snapshot import Catalogue

if TYPE_CHECKING:
    from collections.abc import Sequence

# In the order in which a revision lists them; a new part goes to the end.
PARTS: Final[dict[str, Any]] = {
    "account": Account,
    "materials": dict[str, Material],
    "appliances": dict[str, Appliance],
    "screens": dict[str, Screen],
    "brackets": dict[str, Bracket],
    "fixing_loads": tuple[FixingLoad, ...],
    "labour_rates": tuple[LabourRate, ...],
    "trades": dict[str, Trade],
    "prices": dict[str, tuple[PriceStep, ...]],
}
LEVEL: Final = 6  # of compression
GREATEST_BYTES: Final = 512 << 20  # of one part, unpacked
_ENCODER: Final = msgspec.msgpack.Encoder()
_DECODERS: Final = {name: msgspec.msgpack.Decoder(kind) for name, kind in PARTS.items()}


class FrozenPart(msgspec.Struct, frozen=True, kw_only=True):
    """One part of a catalogue as it is kept."""

    digest: str  # SHA-256 (FIPS 180-4) of the content before it is packed, hexadecimal
    content: bytes


class PartBrokenError(ValueError):
    """The content of a part is not what its digest says."""


def freeze(catalogue: Catalogue) -> tuple[FrozenPart, ...]:
    """The parts of a catalogue, in the order of `PARTS`."""
    return tuple(_freeze_part(getattr(catalogue, name)) for name in PARTS)


def thaw_part(name: str, part: FrozenPart) -> object:
    """One part as its value.

    Raises:
        PartBrokenError: its content is another than was frozen.
    """
    unpacker = zlib.decompressobj()
    plain = unpacker.decompress(part.content, GREATEST_BYTES)
    if hashlib.sha256(plain).hexdigest() != part.digest:
        message = f"part {name} {part.digest} does not hold what was frozen"
        raise PartBrokenError(message)
    value: object = _DECODERS[name].decode(plain)
    return value


def thaw(revision: str, price_book: str, parts: Sequence[Any]) -> Catalogue:
    """A catalogue from the values of its parts, which it shares with every other that has them."""
    return Catalogue(revision=revision, price_book=price_book, **dict(zip(PARTS, parts, strict=True)))


def _freeze_part(value: object) -> FrozenPart:
    plain = _ENCODER.encode(value)
    return FrozenPart(digest=hashlib.sha256(plain).hexdigest(), content=zlib.compress(plain, LEVEL))
