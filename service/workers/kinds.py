"""What can be asked of a worker, and the payload of each: light enough for the web process, which never calculates."""

from __future__ import annotations

from enum import StrEnum
from typing import Final

import msgspec

from service.cut_plans import CutPlanRequest
from service.drawings import View  # noqa: TC001 - the decoder reads the annotations of a struct below another
from service.offers import EstimateRequest, ShortlistRequest
from service.survey import SurveyRequest


class JobKind(StrEnum):
    """Kinds of heavy work."""

    FRAME = "frame"
    BILL = "bill"
    QUOTE = "quote"
    DRAWING = "drawing"
    CUT_PLAN = "cut_plan"
    ESTIMATE = "estimate"
    SHORTLIST = "shortlist"


class DrawingRequest(SurveyRequest, frozen=True, kw_only=True):
    """A survey, and which picture of its design is wanted."""

    view: View


class SurveyTask(msgspec.Struct, frozen=True, kw_only=True):
    """A survey to work on; `today` is the day where its terms give none."""

    request: SurveyRequest
    today: str  # RFC 3339 full-date
    search_seconds: float  # after this the clock stops a search that its work limits have not stopped
    signing_jwk: str | None = None  # private key that signs a quote; None: it goes out unsigned


class DrawingTask(msgspec.Struct, frozen=True, kw_only=True):
    """A drawing to make."""

    request: DrawingRequest
    today: str  # RFC 3339 full-date


class EstimateTask(msgspec.Struct, frozen=True, kw_only=True):
    """A handful of answers to put a price range on."""

    request: EstimateRequest
    today: str  # RFC 3339 full-date
    search_seconds: float  # as for a survey


class ShortlistTask(msgspec.Struct, frozen=True, kw_only=True):
    """A room to find fires and screens for."""

    request: ShortlistRequest
    today: str  # RFC 3339 full-date
    search_seconds: float  # as for a survey


class CutPlanTask(msgspec.Struct, frozen=True, kw_only=True):
    """Something to cut; needs no catalogue."""

    request: CutPlanRequest
    search_seconds: float  # as for a survey
    most_work_count: int  # for all searches together


type Task = SurveyTask | DrawingTask | CutPlanTask | EstimateTask | ShortlistTask

_ENCODER: Final = msgspec.msgpack.Encoder()
_SURVEY: Final = msgspec.msgpack.Decoder(SurveyTask)
_DRAWING: Final = msgspec.msgpack.Decoder(DrawingTask)
_CUT_PLAN: Final = msgspec.msgpack.Decoder(CutPlanTask)
_ESTIMATE: Final = msgspec.msgpack.Decoder(EstimateTask)
_SHORTLIST: Final = msgspec.msgpack.Decoder(ShortlistTask)


def encode_task(task: Task) -> bytes:
    """A task as the payload of a job."""
    return _ENCODER.encode(task)


def decode_survey_task(payload: bytes) -> SurveyTask:
    """The task of a frame, a bill or a quote."""
    return _SURVEY.decode(payload)


def decode_drawing_task(payload: bytes) -> DrawingTask:
    """The task of a drawing."""
    return _DRAWING.decode(payload)


def decode_cut_plan_task(payload: bytes) -> CutPlanTask:
    """The task of a cut plan."""
    return _CUT_PLAN.decode(payload)


def decode_estimate_task(payload: bytes) -> EstimateTask:
    """The task of an estimate."""
    return _ESTIMATE.decode(payload)


def decode_shortlist_task(payload: bytes) -> ShortlistTask:
    """The task of a shortlist."""
    return _SHORTLIST.decode(payload)
