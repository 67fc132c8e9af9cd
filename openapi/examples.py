"""Writes the answer to each operation's example, as the service of this working copy gives it.

    python openapi/examples.py            writes openapi/examples/<operation>.json

A test holds them to the service, to the digits that do not depend on the processor; so they are no
part of `generate.py --check`, which compares bytes.
"""

import json
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
EXAMPLES = ROOT / "openapi" / "examples"


def main() -> None:
    """Write each answer, and remove those of operations that there are no more."""
    sys.path.insert(0, str(ROOT / "service"))
    from halfangle_service.http.contract.samples import sample_answer  # noqa: PLC0415
    from halfangle_service.registry import load_registry  # noqa: PLC0415

    EXAMPLES.mkdir(exist_ok=True)
    operations = load_registry().operations
    for left in EXAMPLES.glob("*.json"):
        if left.stem not in operations:
            left.unlink()
    for name, operation in operations.items():
        answer = json.loads(sample_answer(operation))
        text = json.dumps(answer, indent=2, ensure_ascii=False) + "\n"
        (EXAMPLES / f"{name}.json").write_text(text, "utf-8")
    print(f"Wrote {len(operations)} answers.")


if __name__ == "__main__":
    main()
