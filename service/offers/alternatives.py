"""Designs that work where the one asked for does not: each one change away, run through everything, at most three.

A change counts where the design is laid out, settled and passes its checks. Finding and ordering them sees no price
(`knowledge/framing.md`, section 13). Where no single change is enough, changes are put together, one inequality after the other.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.errors import RequestFaultsError, UnbuildableError
from service.offers.changes import MOST_OF_A_FAMILY, Change, Wish, families_for
from service.offers.patch import patched
from service.quote import Operation, design_measured, take_brief
from service.survey import SurveyRequest

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.brief import Job
    from service.errors import Unmet
    from service.quote import Desk

MOST_COUNT: Final = 3
MOST_TRIES_COUNT: Final = 90  # designs laid out for one answer, at most some 0.8 s: house choice
MOST_STEPS_COUNT: Final = 5  # changes put together
REFUSED: Final = "refused_"


# What the base is built by: once something is measured over it, it stands, and no alternative changes it.
OF_THE_BASE = tuple(
    f"/survey/brief/{name}" for name in ("appliance", "board", "breast_", "finish", "open_ends", "platform_height_mm", "timber")
)


class Found(msgspec.Struct, frozen=True, kw_only=True):
    """A change that works, and the request with it."""

    code: str
    says: str
    operations: tuple[Operation, ...]
    request: SurveyRequest


class Search(msgspec.Struct, frozen=True, kw_only=True):
    """What was found, and why not more."""

    found: tuple[Found, ...]
    none_because: str = ""  # only where nothing was found


class _Tries:
    """Counts designs, so that an answer costs no more than so many."""

    def __init__(self, desk: Desk) -> None:
        self.desk = desk
        self.left_count = MOST_TRIES_COUNT

    def outcome(self, request: SurveyRequest) -> tuple[Unmet, ...] | None:
        """None: it works. Else what is not met; an empty tuple: a check fails, or the request is at fault."""
        self.left_count -= 1
        try:
            job, _deal = take_brief(request, self.desk)
            settled, _recut = design_measured(request, job, self.desk)
        except UnbuildableError as error:
            return error.unmet
        except RequestFaultsError:
            return ()
        return () if settled.report.failing else None


def find_alternatives(request: SurveyRequest, job: Job, unmet: tuple[Unmet, ...], desk: Desk) -> Search:
    """Up to three changes that make a survey buildable, from different families where there are.

    Args:
        request: as sent.
        job: what it was resolved to.
        unmet: what keeps it from being built.
        desk: catalogue, rules and day.
    """
    if blocked := [one.says for one in unmet if one.code.startswith(REFUSED) and one.code != "refused_finish"]:
        return Search(found=(), none_because=f"no change of the brief clears this: {'; '.join(blocked)}")
    tries = _Tries(desk)
    found = list(_single(request, Wish(job, desk.catalogue, unmet), tries))
    if not found and (together := _together(request, job, unmet, tries)):
        found.append(together)
    if found:
        return Search(found=tuple(found))
    words = "; ".join(dict.fromkeys(one.says for one in unmet))
    return Search(found=(), none_because=f"{MOST_TRIES_COUNT - tries.left_count} changes were tried and none is enough: {words}")


def _single(request: SurveyRequest, wish: Wish, tries: _Tries) -> Iterator[Found]:
    """The first of each family that works."""
    count = 0
    for family in families_for(wish.unmet):
        for change in _some(family(wish)):
            if count == MOST_COUNT or tries.left_count <= 0:
                return
            made = _applied(request, change)
            if made is not None and tries.outcome(made) is None:
                count += 1
                yield Found(code=change.code, says=change.says, operations=change.operations, request=made)
                break


def _together(request: SurveyRequest, job: Job, unmet: tuple[Unmet, ...], tries: _Tries) -> Found | None:
    """Changes put together: each the one that leaves least unmet."""
    now, changes = request, []
    for _step in range(MOST_STEPS_COUNT):
        best = _best(now, Wish(job, tries.desk.catalogue, unmet), tries)
        if best is None:
            return None
        change, now, left = best
        changes.append(change)
        if left is None:
            operations = tuple(operation for one in changes for operation in one.operations)
            code = "+".join(dict.fromkeys(one.code for one in changes))
            return Found(code=code, says=", and ".join(one.says for one in changes), operations=operations, request=now)
        unmet, job = left, take_brief(now, tries.desk)[0]
    return None


def _best(request: SurveyRequest, wish: Wish, tries: _Tries) -> tuple[Change, SurveyRequest, tuple[Unmet, ...] | None] | None:
    """The change that leaves fewest inequalities, or at least others than there were; the first of equals."""
    best: tuple[Change, SurveyRequest, tuple[Unmet, ...] | None] | None = None
    fewest, codes = len(wish.unmet) + 1, {one.code for one in wish.unmet}
    tries.left_count = max(tries.left_count, MOST_OF_A_FAMILY * 4)  # a search that found nothing still gets one round
    for family in families_for(wish.unmet):
        for change in _some(family(wish)):
            made = _applied(request, change)
            if made is None or tries.left_count <= 0:
                continue
            left = tries.outcome(made)
            if left is None:
                return change, made, None
            if left and len(left) < fewest and (len(left) < len(wish.unmet) or {one.code for one in left} != codes):
                best, fewest = (change, made, left), len(left)
    return best


def _some(changes: Iterator[Change]) -> Iterator[Change]:
    for _each, change in zip(range(MOST_OF_A_FAMILY), changes, strict=False):
        yield change


def _applied(request: SurveyRequest, change: Change) -> SurveyRequest | None:
    if request.survey.measured is not None and any(one.path.startswith(OF_THE_BASE) for one in change.operations):
        return None
    try:
        return patched(request, change.operations)
    except msgspec.ValidationError:  # beyond a hard limit
        return None
