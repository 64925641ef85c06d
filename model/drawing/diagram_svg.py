"""A diagram as an SVG picture: boxes, lines and words at their places, not to scale."""

from collections.abc import Iterator
from xml.sax.saxutils import escape, quoteattr

from model.drawing.scene import Point, Scene

MARGIN = 8.0
"""[mm] Round the diagram."""
STYLE = """
svg { background: #fff; font-family: sans-serif; }
text { font-size: 3.2px; fill: #000; } .title { font-size: 4.5px; font-weight: bold; }
polygon { fill: #fff; stroke: #000; stroke-width: 0.4; } line { stroke: #000; stroke-width: 0.5; }
.fitting { fill: #f0f0f0; } .ballast { fill: #ddd; } .thruster { fill: #b9cfe4; }
"""


def diagram_svg(scene: Scene) -> str:
    """The whole document: shapes that hold others first, then the lines, then smaller shapes, then words."""
    (left, low), (right, top) = scene.low, scene.high
    wide, high = right - left + 2 * MARGIN, top - low + 2 * MARGIN + 6
    return "\n".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:g}mm" height="{high:g}mm" '
            f'viewBox="0 0 {wide:g} {high:g}">',
            f"<style>{STYLE}</style>",
            f'<text class="title" x="{MARGIN:g}" y="7">{xml_text(scene.title)}</text>',
            *_pieces(scene),
            "</svg>",
        )
    )


def _pieces(scene: Scene) -> Iterator[str]:
    left, top = scene.low[0] - MARGIN, scene.high[1] + MARGIN + 6

    def place(point: Point) -> str:
        return f"{point[0] - left:.2f},{top - point[1]:.2f}"

    def polygon(outline: tuple[Point, ...], role: str) -> str:
        return f"<polygon class={quoteattr(role)} points={quoteattr(' '.join(map(place, outline)))}/>"

    yield from (polygon(shape.outline, shape.role) for shape in scene.shapes if shape.role == "fitting")
    for stroke in scene.strokes:
        (x1, y1), (x2, y2) = (place(point).split(",") for point in stroke.points)
        yield f'<line x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}"/>'
    yield from (polygon(shape.outline, shape.role) for shape in scene.shapes if shape.role != "fitting")
    for label in scene.labels:
        x, y = place(label.at).split(",")
        yield f'<text x="{x}" y="{y}">{xml_text(label.text)}</text>'


def xml_text(text: str) -> str:
    """Text that XML can hold."""
    return escape("".join(sign for sign in text if sign.isprintable()))
