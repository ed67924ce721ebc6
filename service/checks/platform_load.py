"""What the platform carries: feet of the fire, a person, and what comes down on it from above (structure.md, 5.3)."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

import msgspec

from service.checks.hung_weight import hung_load
from service.checks.masses import weight_n
from service.checks.timber import Beam, bent, ends_of, extent_mm, length_mm, of_roles
from service.checks.trimmer_load import trimmer_of
from service.engineering import load_paths
from service.frame import Axis, Role
from service.survey.appliance import CustomAppliance
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.ground import Ground
    from service.frame import Box, Member

LAID_FLAT: Final = "there is no platform, or its rails lie on the floor"
PACKER_MM: Final = 28.0  # usual width of plastic packers, laid across the rail: from memory


class Post(msgspec.Struct, frozen=True, kw_only=True):
    """Something that stands on the front rail or under it; the heaviest loaded of its kind."""

    mark: str
    x_mm: float  # middle along the rail
    load_n: float  # design, with a person
    section: Beam
    height_mm: float
    contact_mm: float  # along the rail
    free_mm: tuple[float, float]  # of the rail, at both sides of the contact
    above: bool = False  # a jack stud on the rail; else an upright or a pack under it


class Platform(msgspec.Struct, frozen=True, kw_only=True):
    """The front top rail of the base as a beam over its uprights."""

    mark: str
    rail: Beam
    stations_mm: tuple[float, ...]  # middles of the uprights
    front_ratio: float  # share of the fire on the front rail
    foot_n: float  # characteristic, of one foot between uprights; 0 where every foot stands over an upright
    person_n: float
    posts: tuple[Post, ...]

    @property
    def bay_mm(self) -> float:
        """The widest."""
        return max(right - left for left, right in pairwise(self.stations_mm))


def platform_of(ground: Ground) -> Platform | None:
    """The base of a frame; None where nothing of it spans."""
    rails = [member for member in of_roles(ground, Role.RAIL) if member.box.y0_tenth_mm > 0]
    uprights = [member for member in of_roles(ground, Role.UPRIGHT, Role.PACK) if member.box.y0_tenth_mm > 0]
    if not rails or not uprights:
        return None
    rail = max(rails, key=lambda member: member.box.z1_tenth_mm)
    front_ratio = _front_ratio(ground)
    foot_n = weight_n(ground.job.appliance.mass_kg) * front_ratio / 2
    return Platform(
        mark=rail.mark,
        rail=bent(rail, Axis.Z, ground),
        stations_mm=tuple(sorted(_middle_mm(member.box) for member in uprights)),
        front_ratio=front_ratio,
        foot_n=0.0 if ground.frame.additions.foot_stations else foot_n,
        person_n=ground.rules.actions.person_n,
        posts=(*_supports(rail, uprights, foot_n, ground), *_jacks(rail, ground)),
    )


def _front_ratio(ground: Ground) -> float:
    """Share of the fire on its front feet, by where its centre of gravity lies; a maker who does not say: the middle."""
    sizes, job = ground.frame.sizes, ground.job
    depth_mm, width_mm = millimetres(sizes.frame_depth_tenth_mm), millimetres(job.timber.width_tenth_mm)
    chosen = job.survey.brief.appliance
    stated_mm = chosen.mass_centre_from_front_mm if isinstance(chosen, CustomAppliance) else None
    from_front_mm = stated_mm if stated_mm is not None else job.appliance.body_depth_mm / 2
    behind_mm = depth_mm - width_mm / 2 - (millimetres(sizes.finished_depth_tenth_mm) - from_front_mm)
    return load_paths.front_feet_ratio(depth_mm - width_mm, behind_mm)


def _supports(rail: Member, uprights: list[Member], foot_n: float, ground: Ground) -> tuple[Post, ...]:
    """The upright at an end of the rail and one between them, each with the most that may stand on it."""
    partial, actions = ground.rules.partial, ground.rules.actions
    common_n = partial.permanent_ratio * foot_n + partial.variable_ratio * actions.person_n
    hung_n = partial.permanent_ratio * hung_load(ground).weight_n / 2
    ends = ends_of(rail.box, Axis.X)
    posts = []
    for member in uprights:
        low_mm, high_mm = ends_of(member.box, Axis.X)
        closed = (low_mm <= ends[0] and not ground.frame.left_open) or (high_mm >= ends[1] and not ground.frame.right_open)
        twins = _twins(member, uprights)
        posts.append(_post(member, rail, ground, (common_n + (hung_n if closed else 0.0)) / twins))
    outer = [post for post in posts if min(post.free_mm) <= 0]
    inner = [post for post in posts if min(post.free_mm) > 0]
    return tuple(max(some, key=lambda post: post.load_n) for some in (outer, inner) if some)


def _twins(member: Member, uprights: list[Member]) -> int:
    """How many uprights stand side by side, touching."""
    low_mm, high_mm = ends_of(member.box, Axis.X)
    return 1 + sum(1 for other in uprights if ends_of(other.box, Axis.X)[0] == high_mm or ends_of(other.box, Axis.X)[1] == low_mm)


def _jacks(rail: Member, ground: Ground) -> tuple[Post, ...]:
    """Jack studs that bring down an end of the trimmer."""
    jacks = of_roles(ground, Role.JACK_STUD)
    if not jacks:
        return ()
    trimmer, partial = trimmer_of(ground), ground.rules.partial
    end_n = partial.permanent_ratio * trimmer.permanent_end_n + partial.variable_ratio * trimmer.person_n
    return tuple(_post(jack, rail, ground, end_n, above=True) for jack in jacks)


def _post(member: Member, rail: Member, ground: Ground, load_n: float, *, above: bool = False) -> Post:
    low_mm, high_mm = ends_of(member.box, Axis.X)
    ends = ends_of(rail.box, Axis.X)
    contact_mm = extent_mm(member.box, Axis.X)
    if not above and _on_packers(low_mm, ground):
        contact_mm = min(contact_mm, PACKER_MM)
    return Post(
        mark=member.mark,
        x_mm=(low_mm + high_mm) / 2,
        load_n=load_n,
        section=bent(member, Axis.Y, ground),
        height_mm=length_mm(member),
        contact_mm=contact_mm,
        free_mm=(low_mm - ends[0], ends[1] - high_mm),
        above=above,
    )


def _on_packers(low_mm: float, ground: Ground) -> bool:
    """Whether the rail under an upright lies on packers narrower than itself."""
    packed = {millimetres(one.x_tenth_mm) for one in ground.frame.stations if one.packer_tenth_mm > 0}
    return low_mm in packed and not ground.frame.additions.wide_packers


def _middle_mm(box: Box) -> float:
    return sum(ends_of(box, Axis.X)) / 2
