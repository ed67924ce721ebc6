"""The variants of framing.md, section 14, as requests: the worked examples moved, bent and added to; sizes are invented."""

from __future__ import annotations

from typing import Any

from tests.examples_of import changed
from tests.sold_examples import sold

type Request = dict[str, Any]


def in_a_corner(**values: object) -> Request:
    """Example C in the left corner of its room: W 1355, D 300, frame 1333 from 10 to 1343. Keys as in `sold`."""
    request = sold("C")
    for point in request["survey"]["room"]["heights"]:
        point["x_mm"] -= 1322.5
    more = {f"/{key.replace('__', '/')}": value for key, value in values.items()}
    return changed(request, {"/survey/room/breast_centre_from_left_mm": 677.5, "/survey/wall/square_mm": 0, **more})
