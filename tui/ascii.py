"""The ASCII form of the whole screen, for fonts without line drawing: a filter over finished lines."""

from __future__ import annotations

from functools import lru_cache
from unicodedata import normalize

from rich.cells import cell_len
from rich.segment import Segment
from textual.color import Color
from textual.filter import LineFilter

_PAIRS = {
    "─━═╌┄┈╴╶╸╺―–—−": "-",
    "│┃║╎┆┊╵╷╹╻▏▕▎▍▌▐": "|",
    "┌┐└┘├┤┬┴┼╔╗╚╝╠╣╦╩╬┏┓┗┛┣┫┳┻╋╒╓╕╖╘╙╛╜╞╟╡╢╤╥╧╨╪╫": "+",
    "╭╮╰╯": "+",
    "▀▔▁▂▃▄": "=",
    "█▇▆▅▓": "#",
    "▒░": ":",
    "▲△↑": "^",
    "▼▽↓": "v",
    "◀◄←‹": "<",
    "▶►→›": ">",
    "√✓✔": "Y",
    "•·∙●■◆": "*",
    "○□◇◦": "o",
    "×": "x",
    "°": "d",
    "‘’′": "'",
    "“”″": '"',
    "…": "~",
    "\u00a0": " ",
}
_TABLE = {ord(mark): plain for marks, plain in _PAIRS.items() for mark in marks}


@lru_cache(4096)
def plain_text(text: str) -> str:
    """Text in ASCII, each mark as wide as it was.

    >>> plain_text("┌─ 45° √ 2 N·m")
    '+- 45d Y 2 N m'
    """
    return text if text.isascii() else "".join(_plain_mark(mark) for mark in text.replace("N·m", "N m"))


@lru_cache(1024)
def _plain_mark(mark: str) -> str:
    """One mark in ASCII: braille by how many dots it has, a letter without its accent, else "?"."""
    if mark.isascii():
        return mark
    if "\u2800" <= mark <= "\u28ff":
        return " .:+**###"[(ord(mark) - 0x2800).bit_count()]
    plain = mark.translate(_TABLE)
    if not plain.isascii():
        plain = normalize("NFKD", mark).encode("ascii", "ignore").decode()[:1] or "?"
    return plain.ljust(cell_len(mark), "?")[: cell_len(mark)]


class AsciiFilter(LineFilter):
    """Turns every finished line of the screen into ASCII."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        """The same segments with their text in ASCII."""
        return [Segment(plain_text(text), style, control) for text, style, control in segments]
