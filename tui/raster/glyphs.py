"""The signs of the drawings: one set of characters that old console fonts have, one in plain ASCII.

The first set keeps to single and double box lines, shades, triangles and bullets, which the fonts
of old Windows consoles carry; they lack heavy and rounded lines, half blocks and braille.
"""

from msgspec import Struct, field

UP, RIGHT, DOWN, LEFT = 1, 2, 4, 8
RISING, FALLING = 16, 32
"""Which ways a line leaves a cell: four arms, and the two slopes of bars at 45 degrees."""

NAME_MOST = 24
"""Letters of a name that are shown."""


class Glyphs(Struct, frozen=True, dict=True):
    """A set of signs.

    Attributes:
        pipe, thin: characters for the sixteen sets of arms, for bars and for other lines.
        marked: a bar under the cursor, across and upright.
        arrows: by heading, to the right and up.
        fills: by role.
        cut: where a long name is cut off.
        signs: by role.
        pen: where a bar was begun.
    """

    pipe: str
    thin: str
    marked: str
    arrows: dict[tuple[int, int], str]
    towards: str
    away: str
    dot: str
    pen: str
    cut: str
    fills: dict[str, str]
    signs: dict[str, str]
    letters: dict[str, str] = field(default_factory=lambda: {"hook": "h", "camera": "c", "attachment": "x"})

    def name(self, text: str) -> str:
        """A name from the team as it can be shown here: not too long, in ASCII where that is asked for."""
        short = text if len(text) <= NAME_MOST else text[: NAME_MOST - 1] + self.cut
        return short.encode("ascii", "replace").decode() if self.cut.isascii() else short

    def line(self, arms: int, *, pipe: bool) -> str:
        """The character for a set of arms; slopes show where no straight arm does."""
        straight = arms & 15
        if straight:
            return (self.pipe if pipe else self.thin)[straight]
        return {RISING: "/", FALLING: "\\"}.get(arms, "X")


BOX = Glyphs(
    pipe=" ║═╚║║╔╠═╝═╩╗╣╦╬",
    thin=" │─└││┌├─┘─┴┐┤┬┼",
    marked="▬█",
    arrows={
        (1, 0): "►",
        (-1, 0): "◄",
        (0, 1): "▲",
        (0, -1): "▼",
        (1, 1): "/",
        (-1, -1): "/",
        (1, -1): "\\",
        (-1, 1): "\\",
    },
    towards="●",
    away="×",
    dot="·",
    pen="♦",
    cut="…",
    fills={"float": "░", "thruster": "▒", "ballast": "▓"},
    signs={
        "end": "○",
        "unfitted": "!",
        "joint": "■",
        "tether": "t",
        "opening": "◦",
        "plug": "•",
        "air": "°",
        "gravity": "▼",
        "buoyancy": "▲",
        "limit": "─ ─",
        "gate": "─ ─",
        "hoop": "· ·",
        "thruster": "▒►",
    },
)
ASCII = Glyphs(
    pipe=" |=+||++=+=+++++",
    thin=" |-+||++-+-+++++",
    marked="##",
    arrows={
        (1, 0): ">",
        (-1, 0): "<",
        (0, 1): "^",
        (0, -1): "v",
        (1, 1): "/",
        (-1, -1): "/",
        (1, -1): "\\",
        (-1, 1): "\\",
    },
    towards="O",
    away="x",
    dot=".",
    pen="&",
    cut="~",
    fills={"float": ":", "thruster": "%", "ballast": "*"},
    signs={
        "end": "O",
        "unfitted": "!",
        "joint": "#",
        "tether": "t",
        "opening": "o",
        "plug": "@",
        "air": "a",
        "gravity": "v",
        "buoyancy": "^",
        "limit": "- -",
        "gate": "- -",
        "hoop": ". .",
        "thruster": "%>",
    },
)


def glyphs(ascii: bool) -> Glyphs:
    """The set to draw with."""
    return ASCII if ascii else BOX


def sign(role: str, signs: Glyphs) -> str:
    """The sign of a role in the legend."""
    if role in signs.letters:
        return signs.letters[role]
    point = {"gravity": "G", "buoyancy": "B"}.get(role, "")
    return (signs.signs.get(role) or signs.fills.get(role, "")) + point
