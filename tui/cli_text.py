"""Plain text for the command line: columns that never wrap, and nothing that could upset a terminal."""

from __future__ import annotations

import sys
from collections.abc import Collection, Iterable, Sequence

GAP = "  "


def plain(text: str) -> str:
    """One line without control characters: a name in a file must not colour or clear the terminal.

    >>> plain("bow\\x1b[2J rail\\nport")
    'bow?[2J rail port'
    """
    return "".join(
        character if character.isprintable() else " " if character.isspace() else "?" for character in text
    )


def columns(rows: Iterable[Sequence[str]], grey: Collection[int] = ()) -> list[str]:
    """Rows as lines whose cells start below one another.

    Args:
        grey: the columns, by number, that are dim on a terminal.

    >>> columns([["A", "long", "x"], ["BB", "b", ""]])
    ['A   long  x', 'BB  b']
    """
    from rich.cells import cell_len, set_cell_size

    table = [[plain(cell) for cell in row] for row in rows]
    widths = [max(map(cell_len, cells)) for cells in zip(*table, strict=True)]
    lines = []
    for row in table:
        cells = [set_cell_size(cell, width) for cell, width in zip(row, widths, strict=True)]
        looks = (_dim_cell(cell) if number in grey else cell for number, cell in enumerate(cells))
        lines.append(GAP.join(looks).rstrip())
    return lines


def _dim_cell(cell: str) -> str:
    words = cell.rstrip()
    return dim(words) + cell[len(words) :] if words else cell


def dim(text: str) -> str:
    """A text that is dim on a terminal that can do it; as it is anywhere else, so that files stay plain."""
    stream = sys.stdout
    if stream is None or not stream.isatty():
        return text
    from rich.color import ColorSystem
    from rich.console import Console
    from rich.style import Style

    console = Console(file=stream)
    if not console.is_terminal or console.is_dumb_terminal or console.legacy_windows:
        return text
    return Style(dim=True).render(text, color_system=ColorSystem.STANDARD)


def indented(lines: Iterable[str]) -> list[str]:
    """Lines below a heading."""
    return [f"{GAP}{line}" for line in lines]
