"""The binary is read back with `struct` and `json` by the layout of the glTF 2.0 specification, section 4.4."""

from __future__ import annotations

import json
import struct
from typing import Any

import pytest

from service.drawings.gltf import write_gltf
from tests.drawings.cases import REQUESTS, case


def read(data: bytes) -> tuple[dict[str, Any], bytes]:
    magic, version, length = struct.unpack_from("<4sII", data)
    assert (b"glTF", 2, len(data)) == (magic, version, length)
    size, kind = struct.unpack_from("<I4s", data, 12)
    assert b"JSON" == kind
    binary_size, binary_kind = struct.unpack_from("<I4s", data, 20 + size)
    assert b"BIN\0" == binary_kind
    assert 0 == size % 4 == binary_size % 4
    return json.loads(data[20 : 20 + size]), data[28 + size : 28 + size + binary_size]


def values(document: dict[str, Any], binary: bytes, accessor: int) -> list[tuple[float, ...]]:
    about = document["accessors"][accessor]
    view = document["bufferViews"][about["bufferView"]]
    each = {"VEC3": 3, "SCALAR": 1}[about["type"]]
    letter = {5126: "f", 5123: "H"}[about["componentType"]]
    return list(
        struct.iter_unpack(f"<{each}{letter}", binary[view["byteOffset"] : view["byteOffset"] + view["byteLength"]])
    )  # fmt: skip


@pytest.mark.parametrize("name", REQUESTS)
def test_every_timber_stands_where_the_frame_has_it(name: str) -> None:
    """(X, Y, Z) = (x, z, y) / 1000: metres, y up, the front towards +z."""
    frame, job = case(name)
    document, _binary = read(write_gltf(frame, job))
    nodes = {node["name"]: node for node in document["nodes"] if "mesh" in node}
    for member in frame.members:
        at, node = member.box, nodes[member.mark]

        assert [at.x0_tenth_mm / 10_000, at.z0_tenth_mm / 10_000, at.y0_tenth_mm / 10_000] == node["translation"]
        assert [pytest.approx(far / 10_000) for far in (at.x1_tenth_mm, at.z1_tenth_mm, at.y1_tenth_mm)] == [
            low + size for low, size in zip(node["translation"], node["scale"], strict=True)
        ]
        assert member.length_tenth_mm / 10 == node["extras"]["length_mm"]
    assert {member.mark for member in frame.members} | {panel.mark for panel in frame.panels} <= set(nodes)


def test_every_part_hangs_in_one_group_of_the_scene() -> None:
    document, _binary = read(write_gltf(*case("a")))
    groups = [document["nodes"][place] for place in document["scenes"][0]["nodes"]]
    children = [child for group in groups for child in group["children"]]

    assert ["base frame", "upper frame", "boards", "fire", "screen"] == [group["name"] for group in groups]
    assert sorted(children) == [place for place, node in enumerate(document["nodes"]) if "mesh" in node]


def test_faces_look_outward() -> None:
    """Triangles turn counter-clockwise as seen from outside: the cross product of their edges is their normal."""
    document, binary = read(write_gltf(*case("c")))
    points, normals = values(document, binary, 0), values(document, binary, 1)
    corners = [int(one[0]) for one in values(document, binary, 2)]
    for first, second, third in zip(corners[::3], corners[1::3], corners[2::3], strict=True):
        u = [b - a for a, b in zip(points[first], points[second], strict=True)]
        v = [b - a for a, b in zip(points[first], points[third], strict=True)]
        cross = (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])

        assert normals[first] == normals[second] == normals[third] == cross


def test_same_design_same_bytes_and_no_address_in_it() -> None:
    data = write_gltf(*case("b"))

    assert data == write_gltf(*case("b"))
    assert b"http" not in data
    assert b'"uri"' not in data
