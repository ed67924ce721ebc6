"""The labour stage: hours by task and trade from what the frame, the plan and the bill ask for, and their programme."""

from service.labour.activities import Activity, After, make_activities
from service.labour.estimating import estimate, make_site, reckon_again
from service.labour.labour import Labour, Task, TaskTerm, TradeHours
from service.labour.programme import Booked, Calendar, Programme, make_programme
from service.labour.sequence import Adding, Measured, Step, build_sequence
from service.labour.tasks import needs_electrician

__all__ = [
    "Activity",
    "Adding",
    "After",
    "Booked",
    "Calendar",
    "Labour",
    "Measured",
    "Programme",
    "Step",
    "Task",
    "TaskTerm",
    "TradeHours",
    "build_sequence",
    "estimate",
    "make_activities",
    "make_programme",
    "make_site",
    "needs_electrician",
    "reckon_again",
]
