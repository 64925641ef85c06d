"""The pages as one PDF, by reportlab, which is loaded when it is first asked for.

A team's text is never markup here: every word is escaped before reportlab reads it.
"""

from collections.abc import Callable, Iterator, Sequence
from io import BytesIO
from typing import Any
from xml.sax.saxutils import escape

from model.sheets.blocks import (
    MARGIN,
    PAPERS,
    Block,
    Caution,
    Heading,
    Listed,
    Page,
    PaperName,
    Picture,
    Signature,
    Table,
    Words,
)
from model.sheets.pdf_fonts import BOLD, PLAIN, printable, register_fonts
from model.sheets.pdf_picture import MM, draw_picture, picture_size

ACROSS = 10.0
"""[mm] Margin of a page that lies across."""
HEAD = 12.0
"""[mm] For the title of a page."""
TICKED, OPEN = "[x] ", "[ ] "
Progress = Callable[[str, int, int], None]


def pdf_bytes(
    pages: Sequence[Page], paper: PaperName, title: str, foot: str, told: Progress | None = None
) -> bytes:
    """The whole document.

    Args:
        title: of the design; foot: what stands at the foot of each page besides.
        told: called with the title of each sheet, its number and how many there are.
    """
    from reportlab.platypus import BaseDocTemplate, NextPageTemplate, PageBreak

    register_fonts()
    out = BytesIO()
    document = BaseDocTemplate(out, title=title, author="", subject="sheets", pageCompression=1)
    document.addPageTemplates(_templates(paper, foot))
    story: list[Any] = []
    for number, page in enumerate(pages):
        if told:
            told(page.title, number + 1, len(pages))
        story += [
            NextPageTemplate("across" if page.across else "upright"),
            *([PageBreak()] if number else []),
        ]
        if not number and page.across:
            story.append(PageBreak())
        story += _page(page, paper)
    document.build(story)
    return out.getvalue()


def _templates(paper: PaperName, foot: str) -> list[Any]:
    from reportlab.platypus import Frame, PageTemplate

    wide, high = (side * MM for side in PAPERS[paper])
    found = []
    for name, size, margin in (("upright", (wide, high), MARGIN * MM), ("across", (high, wide), ACROSS * MM)):
        room = (size[0] - 2 * margin, size[1] - 2 * margin)
        frame = Frame(margin, margin, *room, leftPadding=0, rightPadding=0, topPadding=0, bottomPadding=0)

        def decorate(canvas: Any, _: Any, margin: float = margin) -> None:
            canvas.setFont(PLAIN, 7)
            canvas.drawString(margin, margin - 4 * MM, printable(f"{foot}, page {canvas.getPageNumber()}"))

        found.append(PageTemplate(id=name, frames=[frame], pagesize=size, onPage=decorate))
    return found


def _page(page: Page, paper: PaperName) -> Iterator[Any]:
    wide, tall = PAPERS[paper][::-1] if page.across else PAPERS[paper]
    margin = ACROSS if page.across else MARGIN
    room, high = (wide - 2 * margin) * MM, (tall - 2 * margin - HEAD) * MM
    yield _paragraph(page.title, 14, bold=True)
    yield _space(2)
    for block in page.blocks:
        yield from _block(block, room, high)
        if not isinstance(block, Heading):  # which stays with what follows it
            yield _space(2)


def _block(block: Block, room: float, high: float) -> Iterator[Any]:
    if isinstance(block, Heading):
        yield _paragraph(block.words, 10.5, bold=True)
    elif isinstance(block, Words):
        yield _paragraph(block.words)
    elif isinstance(block, Listed):
        marks = [TICKED if done else OPEN for done in block.ticked] or ["- "] * len(block.lines)
        yield from (_paragraph(mark + line) for mark, line in zip(marks, block.lines, strict=True))
    elif isinstance(block, Caution):
        yield _caution(block, room)
    elif isinstance(block, Table):
        yield _table(block, room)
    elif isinstance(block, Picture):
        yield _picture(block, room, high)
    else:
        yield _signature(block, room)


def _paragraph(words: str, size: float = 8.5, *, bold: bool = False, right: bool = False) -> Any:
    from reportlab.lib.styles import ParagraphStyle
    from reportlab.platypus import Paragraph

    style = ParagraphStyle(
        f"{size}{bold}", fontName=BOLD if bold else PLAIN, fontSize=size, leading=size * 1.25,
        splitLongWords=1, keepWithNext=int(bold), alignment=2 if right else 0,
    )  # fmt: skip
    return Paragraph(escape(printable(words)), style)


def _space(high: float) -> Any:
    from reportlab.platypus import Spacer

    return Spacer(1, high * MM)


def _caution(block: Caution, room: float) -> Any:
    from reportlab.lib import colors
    from reportlab.platypus import Table as Grid

    rows = [[_paragraph("CAUTION", 8.5, bold=True)], *([_paragraph(line, 8)] for line in block.lines)]
    style = [
        ("BOX", (0, 0), (-1, -1), 1.2, colors.black),
        ("BACKGROUND", (0, 0), (-1, -1), colors.HexColor("#fff3d6")),
        ("TOPPADDING", (0, 0), (-1, -1), 1),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 2.5),
    ]
    return Grid(rows, colWidths=[room], style=style)


def _table(block: Table, room: float) -> Any:
    from reportlab.lib import colors
    from reportlab.platypus import LongTable

    head = [_paragraph(name, 8, bold=True) for name in block.columns]
    rows = [head]
    for row in block.rows:
        rows.append([_paragraph(cell, 8, right=place in block.numbers) for place, cell in enumerate(row)])
    style = [
        ("GRID", (0, 0), (-1, -1), 0.4, colors.grey),
        ("BACKGROUND", (0, 0), (-1, 0), colors.HexColor("#e6e6e6")),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("TOPPADDING", (0, 0), (-1, -1), 1.5),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 1.5),
    ]
    total = sum(block.shares)
    widths = [room * share / total for share in block.shares]
    return LongTable(rows, colWidths=widths, style=style, repeatRows=1)


def _picture(block: Picture, room: float, high: float) -> Any:
    from reportlab.platypus import Flowable

    wide, tall = picture_size(block.svg)
    scale = 1.0 if block.true_size else min(1.0, room / wide, high / tall)

    class Drawn(Flowable):  # type: ignore[misc]
        """A picture as a thing that reportlab sets."""

        def wrap(self, *_: float) -> tuple[float, float]:
            """The room that it takes."""
            return wide * scale, tall * scale

        def draw(self) -> None:
            """Draws it, its upper left corner on top."""
            draw_picture(self.canv, block.svg, 0, tall * scale, scale)

    return Drawn()


def _signature(block: Signature, room: float) -> Any:
    from reportlab.lib import colors
    from reportlab.platypus import Table as Grid

    rows = [[_paragraph(line), ""] for line in block.lines]
    style = [("LINEBELOW", (1, 0), (1, -1), 0.6, colors.black), ("VALIGN", (0, 0), (-1, -1), "BOTTOM")]
    widths, heights = [room * 0.35, room * 0.65], [10 * MM] * len(rows)
    return Grid(rows, colWidths=widths, rowHeights=heights, style=style, splitByRow=0)
