"""Our pictures on a PDF page."""

from typing import Any

from model.sheets.pdf_fonts import BOLD, PLAIN, printable
from model.sheets.svg_reading import Figure, Read, Style, read_svg

MM = 72 / 25.4
"""[points] in a millimetre."""


def draw_picture(canvas: Any, svg: str, left: float, top: float, scale: float = 1.0) -> None:
    """One picture with its upper left corner at a place.

    Args:
        canvas: of reportlab.
        left, top: on the page [points], y up.
        scale: 1 keeps the size of the picture, mm for mm.
    """
    read = read_svg(svg)
    canvas.saveState()
    canvas.translate(left, top)
    canvas.scale(scale, scale)
    for figure in read.figures:
        _draw(canvas, figure)
    canvas.restoreState()


def picture_size(svg: str) -> tuple[float, float]:
    """Width and height [points]."""
    read: Read = read_svg(svg)
    return read.width * MM, read.height * MM


def _draw(canvas: Any, figure: Figure) -> None:
    points = [(x * MM, -y * MM) for x, y in figure.points]
    if figure.kind == "text":
        _write(canvas, figure, points[0])
        return
    filled, stroked = _pens(canvas, figure.style, figure.kind)
    if figure.kind == "line":
        canvas.line(*points[0], *points[1])
    elif figure.kind == "circle":
        canvas.circle(*points[0], figure.radius * MM, stroke=stroked, fill=filled)
    elif points:
        path = canvas.beginPath()
        path.moveTo(*points[0])
        for point in points[1:]:
            path.lineTo(*point)
        path.close()
        canvas.drawPath(path, stroke=stroked, fill=filled)


def _pens(canvas: Any, style: Style, kind: str) -> tuple[int, int]:
    """Set colours and widths; whether to fill and whether to stroke."""
    fill, stroke = style.get("fill", "#000"), style.get("stroke", "none")
    if fill != "none":
        canvas.setFillColorRGB(*_colour(fill), alpha=float(style.get("fill-opacity", "1")))
    if stroke != "none":
        canvas.setStrokeColorRGB(*_colour(stroke))
        canvas.setLineWidth(float(style.get("stroke-width", "1")) * MM)
        dashes = [float(part) * MM for part in style.get("stroke-dasharray", "").split()]
        canvas.setDash(dashes)
    return int(fill != "none" and kind != "line"), int(stroke != "none")


def _write(canvas: Any, figure: Figure, at: tuple[float, float]) -> None:
    size = float(figure.style.get("font-size", "3.5px").removesuffix("px")) * MM
    font = BOLD if figure.style.get("font-weight") == "bold" else PLAIN
    words = printable(figure.words)
    long = canvas.stringWidth(words, font, size)
    back = {"start": 0.0, "middle": long / 2, "end": long}[figure.anchor]
    canvas.saveState()
    canvas.translate(*at)
    if figure.upright:
        canvas.rotate(90)
    canvas.setFont(font, size)
    if "paint-order" in figure.style:
        canvas.setFillColorRGB(1, 1, 1, alpha=0.8)
        canvas.rect(-back - 1, -size * 0.2, long + 2, size, stroke=0, fill=1)
    canvas.setFillColorRGB(0, 0, 0, alpha=1)
    canvas.drawString(-back, 0, words)
    canvas.restoreState()


def _colour(text: str) -> tuple[float, float, float]:
    """Red, green and blue from 0 to 1 of a colour like #000 or #b9cfe4.

    >>> _colour("#f00"), _colour("#ffffff")
    ((1.0, 0.0, 0.0), (1.0, 1.0, 1.0))
    """
    digits = text.removeprefix("#")
    if len(digits) == 3:
        digits = "".join(2 * digit for digit in digits)
    red, green, blue = (int(digits[start : start + 2], 16) / 255 for start in (0, 2, 4))
    return red, green, blue
