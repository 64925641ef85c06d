"""What a page is made of, whatever it is printed on.  All words are plain text."""

from typing import Literal

from msgspec import Struct

PaperName = Literal["A4", "Letter"]
PAPERS: dict[PaperName, tuple[float, float]] = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
"""[mm] Width and height, upright (ISO 216; ANSI Y14.1)."""
MARGIN = 15.0
"""[mm] Round the page: what any printer can print."""


class Heading(Struct, frozen=True):
    """A title inside a page."""

    words: str


class Words(Struct, frozen=True):
    """A paragraph."""

    words: str


class Listed(Struct, frozen=True):
    """Short lines, one under the other; with a box to tick before each where ``ticked`` is given.

    Attributes:
        ticked: for each line whether it is done already; () for plain lines.
    """

    lines: tuple[str, ...]
    ticked: tuple[bool, ...] = ()


class Caution(Struct, frozen=True):
    """What can hurt somebody at this work."""

    lines: tuple[str, ...]


class Table(Struct, frozen=True):
    """Rows under named columns.

    Attributes:
        shares: of the width for each column.
        numbers: which columns stand to the right, by number.
    """

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    shares: tuple[float, ...]
    numbers: tuple[int, ...] = ()


class Picture(Struct, frozen=True):
    """A drawing.

    Attributes:
        name: of its own file, without the ending.
        alt: what it shows, for who cannot see it.
        svg: the whole document, whose size is in mm.
        true_size: whether it must not be scaled.
    """

    name: str
    alt: str
    svg: str
    true_size: bool = False


class Signature(Struct, frozen=True):
    """Lines to write on by hand, each with what belongs there."""

    lines: tuple[str, ...]


Block = Heading | Words | Listed | Caution | Table | Picture | Signature


class Page(Struct, frozen=True):
    """One sheet, of as many pages as it takes.

    Attributes:
        name: of the sheet, for file names and for links.
        across: whether the paper lies across.
    """

    name: str
    title: str
    blocks: tuple[Block, ...]
    across: bool = False
