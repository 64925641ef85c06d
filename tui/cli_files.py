"""The design files that a command was given: loaded, with a line for each that is not quite right."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from model.design import Design


def load_designs(files: Sequence[str]) -> tuple[list[tuple[str, Design]], list[str]]:
    """Each file that can be read with its design, and what is to be said of all of them, a line each."""
    from model.errors import FileProblem
    from model.files import load_design

    designs: list[tuple[str, Design]] = []
    lines: list[str] = []
    for file in files:
        try:
            loaded = load_design(file)
        except FileProblem as problem:
            lines.append(str(problem))
            continue
        lines += [f"note: {sentence}" for sentence in (*loaded.warnings, loaded.why) if sentence]
        designs.append((file, loaded.design))
    return designs, lines
