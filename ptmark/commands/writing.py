"""Writing what a verb found as JSON."""

import json
from pathlib import Path
from typing import Any

from ptmark.files import write_whole

__all__ = ["write_json"]


def write_json(path: Path, document: dict[str, Any]) -> None:
    """Write a document whole, indented, UTF-8; OSError as the system gave it."""
    text = json.dumps(document, indent=1, ensure_ascii=False, allow_nan=False)
    write_whole(path, (text + "\n").encode("utf-8"))
