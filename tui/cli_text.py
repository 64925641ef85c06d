"""Plain text for the command line: columns that never wrap, and nothing that could upset a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

GAP = "  "


def plain(text: str) -> str:
    """One line without control characters: a name in a file must not colour or clear the terminal.

    >>> plain("bow\\x1b[2J rail\\nport")
    'bow?[2J rail port'
    """
    return "".join(
        character if character.isprintable() else " " if character.isspace() else "?" for character in text
    )


def columns(rows: Iterable[Sequence[str]]) -> list[str]:
    """Rows as lines whose cells start below one another.

    >>> columns([["A", "long", "x"], ["BB", "b", ""]])
    ['A   long  x', 'BB  b']
    """
    from rich.cells import cell_len, set_cell_size

    table = [[plain(cell) for cell in row] for row in rows]
    widths = [max(map(cell_len, cells)) for cells in zip(*table, strict=True)]
    return [
        GAP.join(set_cell_size(cell, width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in table
    ]


def indented(lines: Iterable[str]) -> list[str]:
    """Lines below a heading."""
    return [f"{GAP}{line}" for line in lines]
