"""A sheet of terminal cells: only those that carry something are kept.

A cell is about twice as high as it is wide.  Writing outside the canvas is harmless.
"""

from functools import lru_cache

from rich.cells import cell_len

Cell = tuple[str, str]
"""A character and the role of what it stands for."""
Row = list[tuple[str, str]]
"""Runs of text with one role each, "" for nothing; together as wide as the canvas."""


class Canvas:
    """Cells of a width and a height; columns run from the left, rows from the top."""

    def __init__(self, width: int, height: int) -> None:
        self.width, self.height = width, height
        self.cells: list[dict[int, Cell]] = [{} for _ in range(height)]
        self.wide = False

    def put(self, column: int, row: int, glyph: str, role: str) -> None:
        """Put a character into a cell, over what is there."""
        if 0 <= row < self.height and 0 <= column < self.width:
            self.cells[row][column] = (glyph, role)

    def write(self, column: int, row: int, text: str, role: str) -> None:
        """Put a text into a row, as far as it fits."""
        glyphs = cells_of(text)
        self.wide = self.wide or "" in glyphs
        if 0 <= row < self.height:
            cells, width = self.cells[row], self.width
            for place, glyph in enumerate(glyphs, column):
                if 0 <= place < width:
                    cells[place] = (glyph, role)

    def run(self, column: int, end: int, row: int, cell: Cell, step: int = 1) -> None:
        """Put the same cell into a row from one column to another, both included."""
        if 0 <= row < self.height:
            self.cells[row].update(
                dict.fromkeys(range(max(column, 0), min(end, self.width - 1) + 1, step), cell)
            )

    def role(self, column: int, row: int) -> str:
        """The role of what is in a cell, "" for nothing."""
        return self.cells[row].get(column, ("", ""))[1] if 0 <= row < self.height else ""

    def glyph(self, column: int, row: int) -> str:
        """What is in a cell, "" for nothing."""
        return self.cells[row].get(column, ("", ""))[0] if 0 <= row < self.height else ""

    def free(self, column: int, row: int, length: int) -> bool:
        """Whether some cells of a row are inside the canvas and empty."""
        if not (0 <= row < self.height and column >= 0 and column + length <= self.width):
            return False
        taken = self.cells[row]
        return not any(place in taken for place in range(column, column + length))

    def lay(self, other: "Canvas", column: int, row: int) -> None:
        """Lay another canvas on this one, its upper left corner in a cell; it must fit."""
        self.wide = self.wide or other.wide
        for line, cells in enumerate(other.cells, row):
            self.cells[line].update({column + place: cell for place, cell in cells.items()})

    def rows(self) -> list[Row]:
        """The rows from the top, each as wide as the canvas."""
        if self.wide:
            for cells in self.cells:
                _mend(cells)
        return [_runs(cells, self.width) for cells in self.cells]


@lru_cache(1024)
def cells_of(text: str) -> tuple[str, ...]:
    """A text cell by cell: "" after a character two cells wide; what has no width of its own is left out."""
    cells: list[str] = []
    for glyph in text:
        wide = cell_len(glyph) if glyph.isprintable() else 0
        cells += (glyph, "")[:wide] if wide else ()
    return tuple(cells)


def text_of(rows: list[Row]) -> str:
    """Rows as plain text, without spaces at the ends of lines."""
    return "\n".join("".join(text for text, _ in row).rstrip() for row in rows)


def _mend(cells: dict[int, Cell]) -> None:
    """Where half of a character two cells wide was written over or cut off, a space stands for the rest."""
    for column, (glyph, role) in list(cells.items()):
        if glyph == "":
            whole = cell_len(cells.get(column - 1, ("", ""))[0]) == 2
        else:
            whole = cell_len(glyph) == 1 or cells.get(column + 1, ("-", ""))[0] == ""
        if not whole:
            cells[column] = (" ", role)


def _runs(cells: dict[int, Cell], width: int) -> Row:
    runs: Row = []
    add = runs.append
    text, role, reached = "", "", 0
    for column in sorted(cells):
        glyph, here = cells[column]
        if here == role and column == reached:
            text += glyph
        else:
            if text:
                add((text, role))
            if column > reached:
                add((" " * (column - reached), ""))
            text, role = glyph, here
        reached = column + 1
    if text:
        add((text, role))
    if reached < width:
        add((" " * (width - reached), ""))
    return runs
