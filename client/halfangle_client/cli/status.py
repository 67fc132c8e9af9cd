"""How the command ends: what each exit status means, and what a refusal says."""

import json
from collections.abc import Mapping
from typing import Any

DEFAULT_URL = "http://127.0.0.1:8765"

DONE, REFUSED, USAGE, FAILED, STOPPED, INTERRUPTED = 0, 1, 2, 3, 4, 130
MEANING = (
    f"Exit status: {DONE} done; {REFUSED} the service refused the request, and said why; {USAGE} "
    f"wrong usage; {FAILED} no service, or a failing one; {STOPPED} answered and printed, but the "
    "answer says stop: do not run this."
)


class Refused(Exception):
    """The service refused; `document` is its problem document."""

    def __init__(self, status: int, document: Mapping[str, Any]) -> None:
        super().__init__(f"{document['title']}: {document['detail']}")
        self.status = status
        self.document = document

    @property
    def lines(self) -> list[str]:
        """What a person needs of it: the reason, the fields, the further facts."""
        known = {"type", "title", "status", "detail", "instance", "errors"}
        lines = [f"halfangle: {self}"]
        for field in self.document["errors"]:
            lines.append(f"  {field.get('pointer') or 'request'}: {field.get('message')}")
        for name, value in self.document.items():
            if name not in known:
                lines.append(f"  {name}: {json.dumps(value, ensure_ascii=False)}")
        return lines
