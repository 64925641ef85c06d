"""Our own SVG pictures as shapes with their style, for a renderer that is no browser.

Only what our drawings are made of is known: polygon, circle, rect, line and text, styled by rules for
an element or a class.
"""

import re
from collections.abc import Iterator, Mapping
from xml.etree import ElementTree

from msgspec import Struct

SPACE = "{http://www.w3.org/2000/svg}"
Style = Mapping[str, str]
_RULE = re.compile(r"([^{}]+)\{([^{}]*)\}")
_TURN = re.compile(r"rotate\(-90 ")


class Figure(Struct, frozen=True):
    """A shape or a text of a picture [mm], y down.

    Attributes:
        kind: "polygon", "circle", "line" or "text".
        points: corners, ends, the middle of a circle, or where a text stands.
        radius: of a circle.
        words: of a text; ``anchor`` is "start", "middle" or "end"; ``upright`` is read from the right.
    """

    kind: str
    points: tuple[tuple[float, float], ...]
    style: Style
    radius: float = 0.0
    words: str = ""
    anchor: str = "start"
    upright: bool = False


class Read(Struct, frozen=True):
    """A picture: its size [mm], and its figures in the order in which they are drawn."""

    width: float
    height: float
    figures: tuple[Figure, ...]


def read_svg(svg: str) -> Read:
    """The figures of one of our pictures."""
    root = ElementTree.fromstring(svg)
    rules = _rules("".join(node.text or "" for node in root.iter(f"{SPACE}style")))
    width, height = (float(root.attrib[side].removesuffix("mm")) for side in ("width", "height"))
    return Read(width, height, tuple(_figures(root, rules)))


def _rules(text: str) -> dict[str, dict[str, str]]:
    """The style of each element and of each class (with its dot)."""
    rules: dict[str, dict[str, str]] = {}
    for names, body in _RULE.findall(text):
        style = dict(part.split(":", 1) for part in body.split(";") if ":" in part)
        clean = {name.strip(): value.strip() for name, value in style.items()}
        for name in names.split(","):
            rules.setdefault(name.strip(), {}).update(clean)
    return rules


def _figures(root: ElementTree.Element, rules: Mapping[str, Style]) -> Iterator[Figure]:
    for node in root.iter():
        kind = node.tag.removeprefix(SPACE)
        style: dict[str, str] = dict(rules.get(kind, {}))
        for name in node.get("class", "").split():
            style.update(rules.get(f".{name}", {}))
        figure = _figure(kind, node, style)
        if figure:
            yield figure


def _figure(kind: str, node: ElementTree.Element, style: Style) -> Figure | None:
    def number(name: str) -> float:
        return float(node.get(name, "0"))

    if kind == "polygon":
        pairs = (pair.split(",") for pair in node.get("points", "").split())
        return Figure(kind, tuple((float(x), float(y)) for x, y in pairs), style)
    if kind == "rect":
        x, y, wide, high = (number(name) for name in ("x", "y", "width", "height"))
        corners = ((x, y), (x + wide, y), (x + wide, y + high), (x, y + high))
        return Figure("polygon", corners, style)
    if kind == "circle":
        return Figure(kind, ((number("cx"), number("cy")),), style, number("r"))
    if kind == "line":
        return Figure(kind, ((number("x1"), number("y1")), (number("x2"), number("y2"))), style)
    if kind == "text":
        upright = bool(_TURN.match(node.get("transform", "")))
        anchor, words = node.get("text-anchor", "start"), node.text or ""
        return Figure(kind, ((number("x"), number("y")),), style, 0.0, words, anchor, upright)
    return None
