"""The labour stage: hours by task and trade from what the frame, the plan and the bill ask for."""

from service.labour.estimating import estimate, make_site
from service.labour.labour import Labour, Lift, Task, TaskTerm, TradeHours
from service.labour.lifting import unit_mass_kg
from service.labour.tasks import may_be_tilted, needs_electrician

__all__ = ["Labour", "Lift", "Task", "TaskTerm", "TradeHours", "estimate", "make_site", "may_be_tilted", "needs_electrician", "unit_mass_kg"]
