"""Which studding each member is cut from: the job's, or what the checks asked for of another section or class."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.brief import Timber, TimberStock
from service.units import tenths

if TYPE_CHECKING:
    from service.brief import Job
    from service.catalogue import Catalogue
    from service.frame import Frame, Member

type Section = tuple[int, int, str]  # narrow side, wide side in tenths of a millimetre, strength class


def timbers_of(frame: Frame, job: Job, catalogue: Catalogue) -> tuple[tuple[Timber, tuple[Member, ...]], ...]:
    """The members that are cut from each studding: the job's first, then the others by section and class."""
    own = (job.timber.thickness_tenth_mm, job.timber.width_tenth_mm, job.timber.strength_class)
    groups: dict[Section, list[Member]] = {own: []}
    for member in frame.members:
        if member.from_bar:
            section = (member.thickness_tenth_mm, member.width_tenth_mm, member.strength_class)
            groups.setdefault(section, []).append(member)
    others = sorted(section for section in groups if section != own)
    return (
        (job.timber, tuple(groups[own])),
        *((_sold(section, job, catalogue), tuple(groups[section])) for section in others),
    )


def _sold(section: Section, job: Job, catalogue: Catalogue) -> Timber:
    """A studding of the catalogue in the lengths that pass the way in: none longer than the job's own."""
    longest = max(one.length_tenth_mm for one in job.timber.stock)
    rows = [
        row
        for row in catalogue.materials.values()
        if row.kind == "timber"
        and (tenths(row.thickness_mm or 0), tenths(row.width_mm or 0), row.strength_class) == section
        and tenths(row.length_mm or 0) <= longest
    ]
    rows.sort(key=lambda row: (row.length_mm or 0, row.code))
    return Timber(
        thickness_tenth_mm=section[0],
        width_tenth_mm=section[1],
        strength_class=section[2],
        density_kg_m3=rows[0].density_kg_m3 if rows else None,
        stock=tuple(TimberStock(code=row.code, length_tenth_mm=tenths(row.length_mm or 0)) for row in rows),
    )
