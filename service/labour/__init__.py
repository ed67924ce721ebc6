"""The labour stage: hours by task and trade from what the frame, the plan and the bill ask for."""

from service.labour.estimating import estimate, make_site
from service.labour.labour import Labour, Task, TaskTerm, TradeHours
from service.labour.tasks import needs_electrician

__all__ = ["Labour", "Task", "TaskTerm", "TradeHours", "estimate", "make_site", "needs_electrician"]
