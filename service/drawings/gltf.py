"""The design as a model: glTF 2.0, binary container. One node per timber and board, with its mark, role and sizes.

Metres, y up, front towards +z: the frame's left-handed axes (x right, y out, z up) become (x, z, y) / 1000.
Source: Khronos glTF 2.0 specification, sections 3.6 (buffers), 3.7 (meshes), 4.4 (container); KHR_materials_unlit.
"""

from __future__ import annotations

import struct
from typing import TYPE_CHECKING, Any, Final

import msgspec

from service.drawings.solids import Stuff, boards, bodies, timbers

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.brief import Job
    from service.drawings.solids import Solid
    from service.frame import Box, Frame

TENTHS_PER_M: Final = 10_000
FLOAT, SHORT = 5126, 5123  # component types
VERTICES, INDICES = 34962, 34963  # targets of buffer views
TRIANGLES, LINES = 4, 1  # modes
COLOURS: Final = {  # linear RGB: the colours of the drawings, house choice
    Stuff.BASE: (0.79, 0.65, 0.45),
    Stuff.UPPER: (0.91, 0.84, 0.71),
    Stuff.BOARD: (0.88, 0.88, 0.85),
    Stuff.INSIDE: (0.72, 0.72, 0.70),
    Stuff.FIRE: (0.03, 0.03, 0.035),
    Stuff.SCREEN: (0.02, 0.02, 0.025),
}
EDGES: Final = (0.05, 0.05, 0.05)
# One unit cube: a face at a time, so that each corner has the normal of its face.
FACES: Final = (
    ((1, 0, 0), ((1, 0, 0), (1, 1, 0), (1, 1, 1), (1, 0, 1))),
    ((-1, 0, 0), ((0, 0, 0), (0, 0, 1), (0, 1, 1), (0, 1, 0))),
    ((0, 1, 0), ((0, 1, 0), (0, 1, 1), (1, 1, 1), (1, 1, 0))),
    ((0, -1, 0), ((0, 0, 0), (1, 0, 0), (1, 0, 1), (0, 0, 1))),
    ((0, 0, 1), ((0, 0, 1), (1, 0, 1), (1, 1, 1), (0, 1, 1))),
    ((0, 0, -1), ((0, 0, 0), (0, 1, 0), (1, 1, 0), (1, 0, 0))),
)
CORNERS: Final = tuple((x, y, z) for x in (0, 1) for y in (0, 1) for z in (0, 1))
SIDES: Final = tuple(
    (first, second)
    for first, one in enumerate(CORNERS)
    for second, other in enumerate(CORNERS)
    if first < second and sum(abs(a - b) for a, b in zip(one, other, strict=True)) == 1
)
_ENCODER: Final = msgspec.json.Encoder()


def write_gltf(frame: Frame, job: Job) -> bytes:
    """The whole design as one binary file: timbers, boards, fire and screen; same design, same bytes."""
    solids = (*timbers(frame), *boards(frame), *bodies(frame, job))
    kinds = tuple(stuff for stuff in COLOURS if any(one.stuff is stuff for one in solids))
    binary, views, accessors = _geometry()
    facts = _facts(frame)
    nodes = [_node(one, kinds, facts) for one in solids]
    groups = _groups(solids)
    document = {
        "asset": {"version": "2.0", "generator": "inglewright"},
        "extensionsUsed": ["KHR_materials_unlit"],
        "scene": 0,
        "scenes": [{"nodes": [len(nodes) + place for place in range(len(groups))]}],
        "nodes": [*nodes, *({"name": name, "children": children} for name, children in groups.items())],
        "meshes": [_mesh(place, stuff, len(kinds)) for place, stuff in enumerate(kinds)],
        "materials": [*(_material(stuff) for stuff in kinds), _edge_material()],
        "accessors": accessors,
        "bufferViews": views,
        "buffers": [{"byteLength": len(binary)}],
    }
    return _container(_ENCODER.encode(document), binary)


def _geometry() -> tuple[bytes, list[dict[str, Any]], list[dict[str, Any]]]:
    """One cube as triangles with normals, and its twelve edges as lines."""
    points = [corner for _normal, corners in FACES for corner in corners]
    normals = [normal for normal, corners in FACES for _corner in corners]
    triangles = [4 * face + corner for face in range(len(FACES)) for corner in (0, 1, 2, 0, 2, 3)]
    sides = [corner for side in SIDES for corner in side]
    parts = (
        (_floats(points), VERTICES, FLOAT, len(points), "VEC3"),
        (_floats(normals), VERTICES, FLOAT, len(normals), "VEC3"),
        (struct.pack(f"<{len(triangles)}H", *triangles), INDICES, SHORT, len(triangles), "SCALAR"),
        (_floats(CORNERS), VERTICES, FLOAT, len(CORNERS), "VEC3"),
        (struct.pack(f"<{len(sides)}H", *sides), INDICES, SHORT, len(sides), "SCALAR"),
    )
    binary = b""
    views: list[dict[str, Any]] = []
    accessors: list[dict[str, Any]] = []
    for place, (data, target, component, count, kind) in enumerate(parts):
        views.append({"buffer": 0, "byteOffset": len(binary), "byteLength": len(data), "target": target})
        accessor: dict[str, Any] = {"bufferView": place, "componentType": component, "count": count, "type": kind}
        if place in {0, 3}:
            accessor |= {"min": [0, 0, 0], "max": [1, 1, 1]}
        accessors.append(accessor)
        binary += data + bytes(-len(data) % 4)
    return binary, views, accessors


def _floats(vectors: Iterable[tuple[int, int, int]]) -> bytes:
    values = [float(value) for vector in vectors for value in vector]
    return struct.pack(f"<{len(values)}f", *values)


def _facts(frame: Frame) -> dict[str, dict[str, Any]]:
    """What a reader of the model may ask of a part, by its mark."""
    members = {
        member.mark: {
            "mark": member.mark, "role": member.role.value, "unit": member.unit.value,
            "section_mm": f"{member.thickness_tenth_mm / 10:g} x {member.width_tenth_mm / 10:g}",
            "length_mm": member.length_tenth_mm / 10,
        }
        for member in frame.members
    }  # fmt: skip
    panels = {
        panel.mark: {
            "mark": panel.mark, "role": panel.role.value, "board_code": panel.board_code,
            "width_mm": panel.width_tenth_mm / 10, "height_mm": panel.height_tenth_mm / 10,
            "thickness_mm": panel.thickness_tenth_mm / 10,
        }
        for panel in frame.panels
    }  # fmt: skip
    return {**members, **panels}


def _node(solid: Solid, kinds: tuple[Stuff, ...], facts: dict[str, dict[str, Any]]) -> dict[str, Any]:
    at: Box = solid.box
    low = (at.x0_tenth_mm, at.z0_tenth_mm, at.y0_tenth_mm)
    size = (at.x1_tenth_mm - at.x0_tenth_mm, at.z1_tenth_mm - at.z0_tenth_mm, at.y1_tenth_mm - at.y0_tenth_mm)
    return {
        "name": solid.mark,
        "mesh": kinds.index(solid.stuff),
        "translation": [edge / TENTHS_PER_M for edge in low],
        "scale": [edge / TENTHS_PER_M for edge in size],
        "extras": facts.get(solid.mark, {"mark": solid.mark, "role": solid.stuff.value}),
    }


def _groups(solids: tuple[Solid, ...]) -> dict[str, list[int]]:
    """Parent nodes, so that a viewer can show the frame, the boards, or what stands in it."""
    names = {Stuff.BASE: "base frame", Stuff.UPPER: "upper frame", Stuff.FIRE: "fire", Stuff.SCREEN: "screen"}
    groups: dict[str, list[int]] = {}
    for place, one in enumerate(solids):
        groups.setdefault(names.get(one.stuff, "boards"), []).append(place)
    return groups


def _mesh(place: int, stuff: Stuff, edges: int) -> dict[str, Any]:
    faces = {"attributes": {"POSITION": 0, "NORMAL": 1}, "indices": 2, "material": place, "mode": TRIANGLES}
    lines = {"attributes": {"POSITION": 3}, "indices": 4, "material": edges, "mode": LINES}
    return {"name": stuff.value, "primitives": [faces, lines]}


def _material(stuff: Stuff) -> dict[str, Any]:
    rough = 0.35 if stuff in {Stuff.FIRE, Stuff.SCREEN} else 0.9
    return {
        "name": stuff.value,
        "pbrMetallicRoughness": {"baseColorFactor": [*COLOURS[stuff], 1], "metallicFactor": 0, "roughnessFactor": rough},
    }


def _edge_material() -> dict[str, Any]:
    return {
        "name": "edges",
        "extensions": {"KHR_materials_unlit": {}},
        "pbrMetallicRoughness": {"baseColorFactor": [*EDGES, 1], "metallicFactor": 0, "roughnessFactor": 1},
    }


def _container(document: bytes, binary: bytes) -> bytes:
    """Header and two chunks, each padded to four bytes."""
    text = document + b" " * (-len(document) % 4)
    data = binary + bytes(-len(binary) % 4)
    chunks = struct.pack("<I4s", len(text), b"JSON") + text + struct.pack("<I4s", len(data), b"BIN\0") + data
    return struct.pack("<4sII", b"glTF", 2, 12 + len(chunks)) + chunks
