"""What was measured in the room and what is wanted: the request, as typed values with their hard limits."""

from service.survey.survey import Survey
from service.survey.terms import Options, SurveyRequest, Terms

__all__ = ["Options", "Survey", "SurveyRequest", "Terms"]
