"""The legend in rows: each sign beside what it means, as many to a row as fit."""

from collections.abc import Iterable

from model.drawing.scene import Entry, Sheet
from tui.raster.canvas import Row
from tui.raster.glyphs import Glyphs, glyphs, sign

GAP = "  "


def sheet_legend(sheet: Sheet) -> tuple[Entry, ...]:
    """The name of the sheet, then the entries of all its views, each once."""
    entries = {entry: None for place in sheet.places for entry in place.scene.legend}
    name = (Entry("title", sheet.title),) if sheet.title else ()
    return (*name, *sorted(entries, key=_order))


def _order(entry: Entry) -> tuple[bool, int, str]:
    """Letters first, in the order of the cut list; the rest as it comes."""
    return (False, len(entry.sign), entry.sign) if entry.role == "bar" else (True, 0, "")


def legend_rows(entries: Iterable[Entry], width: int, most: int, *, ascii: bool = False) -> list[Row]:
    """At most so many rows; what does not fit is left out whole."""
    signs = glyphs(ascii)
    rows: list[Row] = []
    used = width
    for entry in entries:
        piece = _piece(entry, signs)
        length = sum(len(text) for text, _ in piece)
        if used + len(GAP) + length > width:
            if len(rows) == most or length > width:
                break
            rows.append([])
            used = 0
        elif rows[-1]:
            rows[-1].append((GAP, ""))
            used += len(GAP)
        rows[-1] += piece
        used += length
    return [_padded(row, width) for row in rows]


def _piece(entry: Entry, signs: Glyphs) -> Row:
    if entry.role == "title":
        return [(entry.meaning, "legend")]
    mark = entry.sign or sign(entry.role, signs)
    role = "label" if entry.sign else entry.role
    return [(mark, role), (f" {entry.meaning}", "legend")]


def _padded(row: Row, width: int) -> Row:
    missing = width - sum(len(text) for text, _ in row)
    return [*row, (" " * missing, "")] if missing else row
