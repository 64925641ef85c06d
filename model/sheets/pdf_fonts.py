"""The fonts of the PDF: Bitstream Vera, which comes with reportlab."""

from functools import lru_cache
from typing import Any

PLAIN, BOLD = "Vera", "VeraBd"


@lru_cache(maxsize=1)
def _plain() -> Any:
    """The plain font; both are registered with reportlab."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    fonts = [TTFont(name, f"{name}.ttf") for name in (PLAIN, BOLD)]
    for font in fonts:
        pdfmetrics.registerFont(font)
    return fonts[0].face.charWidths


def register_fonts() -> None:
    """Make the fonts known to reportlab."""
    _plain()


def printable(words: str) -> str:
    """Words with a question mark for each letter that the font lacks; the notebook shows them all."""
    known = _plain()
    return "".join(letter if ord(letter) in known else " " if letter.isspace() else "?" for letter in words)
