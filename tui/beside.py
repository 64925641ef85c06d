"""Pictures and tables written beside the file of the design."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.errors import FileProblem
from model.saving import write_bytes

if TYPE_CHECKING:
    from pathlib import Path


def write_beside(design: Path, name: str, text: str) -> str:
    """Write a text beside a design's file, under a name that begins as it does; says what came of it."""
    target = design.with_name(f"{design.stem}-{name}")
    try:
        write_bytes(target, text.encode())
    except FileProblem as problem:
        return str(problem)
    return f"Written: {target}"
