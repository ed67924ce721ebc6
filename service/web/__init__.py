"""The HTTP shell: strict requests in, answers and problem documents out. Knows no trade."""

from service.web.application import KeyParts, WebParts, make_application
from service.web.edge import Edge, EdgeLimits

__all__ = ["Edge", "EdgeLimits", "KeyParts", "WebParts", "make_application"]
