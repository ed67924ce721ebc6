"""Wall fixings through plasterboard on dabs: they bend, and sag under the weight (`knowledge/fixings.md`, 2.4)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from service.checks.amounts import count, force, house, length, moment
from service.checks.check import Check, Skipped
from service.checks.free_screws import free_screw
from service.checks.paths import wall_situations
from service.checks.wall_rows import hung_action, weight_count
from service.engineering import host_walls
from service.rules import Source

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.free_screws import FreeScrew
    from service.checks.ground import Ground
    from service.checks.paths import Paths

BENDING: Final = "fixings.stand_off_bending"
SAG: Final = "fixings.stand_off_sag"
CLAUSE: Final = Source(document="EN 1992-4", edition="2018", clause="6.2.2.3 and 7.2.2.3, from memory")
PACK: Final = "cut the board at each fixing and pack solid to the masonry, or let closed ends carry the weight to the floor"


def stand_off_checks(ground: Ground, paths: Paths | None) -> tuple[Result, ...]:
    """Bending and sag of fixings that bridge a lining that carries nothing."""
    free = free_screw(ground)
    if free is None or paths is None:
        why = "no fixing bridges plasterboard on dabs" if free is None else "the frame stands: no weight hangs on its fixings"
        return (Skipped(code=BENDING, why=why), Skipped(code=SAG, why=why))
    if weight_count(paths.held, ground) <= 0:
        why = "no fixing of the wall takes weight"
        return (Skipped(code=BENDING, why=why), Skipped(code=SAG, why=why))
    return (_bending(free, ground, paths), _sag(free, ground, paths))


def _bending(free: FreeScrew, ground: Ground, paths: Paths) -> Check:
    taking = weight_count(paths.held, ground)
    each_n = max(hung_action(ground, paths.load, one).shear_n for one in wall_situations(paths, ground)) / taking
    bent = ground.rules.walls.held_ends_ratio
    plastic_n, elastic_n = (
        host_walls.stand_off_shear_n(moment_n_mm, free.lever_mm, bent) for moment_n_mm in (free.plastic_n_mm, free.elastic_n_mm)
    )
    return Check(
        code=BENDING,
        subject="wall fixings",
        says=f"each fixing stands free over {free.lever_mm:.1f} mm; bent plastically (EN 1995) it bears {plastic_n:.0f} N, "
        f"elastically (EN 1992-4) {elastic_n:.0f} N, and the smaller one decides",
        demand=force("V_d", each_n),
        resistance=force("V_Rd,M", free.shear_n),
        clause=CLAUSE,
        inputs=(
            length("l", free.lever_mm), length("d_1", free.root_mm), moment("M_y,Rk", free.plastic_n_mm),
            moment("M_Rk,el", free.elastic_n_mm), force("V_Rk,pl", plastic_n), force("V_Rk,el", elastic_n), count("n_V", taking),
        ),
        unverified=free.assumed,
        remedy=_more(each_n / free.shear_n, taking),
    )  # fmt: skip


def _sag(free: FreeScrew, ground: Ground, paths: Paths) -> Check:
    """Under the weight without factors; it need not be shared with another path, as nobody knows how."""
    taking, limit_mm = weight_count(paths.held, ground), ground.rules.walls.stand_off_sag_mm
    each_n = paths.load.weight_n / taking
    sag_mm = host_walls.stand_off_sag_mm(each_n, free.lever_mm, free.root_mm)
    return Check(
        code=SAG,
        subject="wall fixings",
        says=f"each fixing stands free over {free.lever_mm:.1f} mm and sags {sag_mm:.2f} mm under {each_n:.0f} N of weight",
        demand=length("w", sag_mm),
        resistance=length("limit", limit_mm),
        clause=house("sag of a fixing that bridges a lining, under the weight"),
        inputs=(force("V_k", each_n), length("l", free.lever_mm), length("d_1", free.root_mm), count("n_V", taking)),
        unverified="; ".join(filter(None, (free.assumed, paths.load.assumed))),
        remedy=_more(sag_mm / limit_mm, taking),
    )


def _more(utilisation_ratio: float, taking: float) -> str:
    if utilisation_ratio <= 1:
        return ""
    return f"{PACK}; or {math.ceil(taking * utilisation_ratio - taking)} more fixings that take weight"
