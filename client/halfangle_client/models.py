"""The models of answers, and of the parts of a request that are objects.

`from halfangle_client.models import TaperShank`, or `models.TaperShank(…)` after
`from halfangle_client import models`.
"""

from halfangle_client.generated import models as _models
from halfangle_client.generated.models import *  # noqa: F403 -- all that it names in __all__

__all__ = _models.__all__
