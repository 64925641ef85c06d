"""Pages as one HTML file that opens and prints without a network.  Every word is escaped."""

from base64 import b64encode
from collections.abc import Iterator, Sequence
from html import escape

from model.sheets.blocks import Block, Caution, Heading, Listed, Page, Picture, Signature, Table, Words

STYLE = """
body { font: 15px/1.45 sans-serif; max-width: 62em; margin: 2em auto; padding: 0 1em; color: #111; }
h1 { font-size: 1.6em; border-bottom: 2px solid #111; } h2 { font-size: 1.1em; margin-bottom: 0.2em; }
table { border-collapse: collapse; width: 100%; margin: 0.6em 0; }
th, td { border: 1px solid #888; padding: 0.2em 0.4em; text-align: left; vertical-align: top; }
th, td, li, p { overflow-wrap: anywhere; }
td.number { text-align: right; } th { background: #eee; }
.caution { border: 3px solid #b06000; background: #fff3d6; padding: 0.3em 0.8em; }
img { max-width: 100%; height: auto; border: 1px solid #ccc; } p { white-space: pre-line; }
section { break-after: page; } nav ol { columns: 2; }
@media print { body { margin: 0; max-width: none; font-size: 11px; } nav { display: none; } }
"""


def html_text(pages: Sequence[Page], title: str) -> str:
    """The whole file."""
    return "\n".join(_lines(pages, title)) + "\n"


def _lines(pages: Sequence[Page], title: str) -> Iterator[str]:
    yield "<!DOCTYPE html>"
    yield '<html lang="en">'
    yield f'<head><meta charset="utf-8"><title>{words(title)}</title>'
    yield '<meta name="viewport" content="width=device-width, initial-scale=1">'
    yield f"<style>{STYLE}</style></head>"
    yield "<body>"
    yield "<nav><ol>"
    yield from (f'<li><a href="#{escape(page.name)}">{words(page.title)}</a></li>' for page in pages)
    yield "</ol></nav>"
    for page in pages:
        yield f'<section id="{escape(page.name)}"><h1>{words(page.title)}</h1>'
        for block in page.blocks:
            yield from _block(block, pages)
        yield "</section>"
    yield "</body>"
    yield "</html>"


def _block(block: Block, pages: Sequence[Page]) -> Iterator[str]:
    if isinstance(block, Heading):
        yield f"<h2>{words(block.words)}</h2>"
    elif isinstance(block, Words):
        yield f"<p>{words(block.words)}</p>"
    elif isinstance(block, Listed):
        yield from _listed(block)
    elif isinstance(block, Caution):
        yield f'<div class="caution"><strong>Caution</strong>{"".join(_listed(Listed(block.lines)))}</div>'
    elif isinstance(block, Table):
        yield from _table(block, {page.name for page in pages})
    elif isinstance(block, Picture):
        data = b64encode(block.svg.encode()).decode()
        yield f'<p><img alt="{words(block.alt)}" src="data:image/svg+xml;base64,{data}"></p>'
    elif isinstance(block, Signature):
        yield from (f"<p>{words(line)}: ____________________</p>" for line in block.lines)


def _listed(block: Listed) -> Iterator[str]:
    marks = ["[x] " if done else "[ ] " for done in block.ticked] or [""] * len(block.lines)
    yield "<ul>"
    yield from (f"<li>{mark}{words(line)}</li>" for mark, line in zip(marks, block.lines, strict=True))
    yield "</ul>"


def _table(block: Table, names: set[str]) -> Iterator[str]:
    """A table; what stands in a column called "page" leads to that page."""
    head = "".join(f"<th>{words(name)}</th>" for name in block.columns)
    yield f"<table><thead><tr>{head}</tr></thead><tbody>"
    for row in block.rows:
        cells = []
        for number, (column, cell) in enumerate(zip(block.columns, row, strict=True)):
            leads = column == "page" and cell in names
            shown = f'<a href="#{escape(cell)}">{words(cell)}</a>' if leads else words(cell)
            style = ' class="number"' if number in block.numbers else ""
            cells.append(f"<td{style}>{shown}</td>")
        yield f"<tr>{''.join(cells)}</tr>"
    yield "</tbody></table>"


def words(text: str) -> str:
    """Text that is safe inside a page; letters that HTML cannot hold are left out."""
    return escape("".join(letter for letter in text if letter.isprintable() or letter in "\n\t"))
