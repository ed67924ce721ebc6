"""What was measured in the room and what is wanted: the request, as typed values with their hard limits."""

from service.survey.survey import Survey
from service.survey.terms import Options, PatchStep, SurveyRequest, Terms, Variant

__all__ = ["Options", "PatchStep", "Survey", "SurveyRequest", "Terms", "Variant"]
