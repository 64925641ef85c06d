"""Speed against handling: the design at other sizes, or beside another design, as a table and as plots."""

from __future__ import annotations

from functools import partial
from operator import methodcaller
from pathlib import Path
from typing import TYPE_CHECKING

from textual.content import Content
from textual.widgets import Static

from model.compare import Comparison, beaten_words, compared, standing_of_design
from model.design import Design
from model.drawing.trade import sign_of, trade_svg, trades
from model.errors import FileProblem
from model.files import load_design
from model.presets import find_preset, load_preset, presets
from model.solve.sweep import Sweep, size_sweep
from tui.forms.acts import Act
from tui.forms.proposal import Offer, ProposalSection, Way
from tui.messages import WriteRequested
from tui.raster.canvas import text_of
from tui.raster.scatter import BEATEN, scatter
from tui.shelf import recents

if TYPE_CHECKING:
    from model.review import Report
    from tui.forms.kinds import Options
    from tui.raster.canvas import Row

WHY = (
    "Small and light is quick, large and wide is steady: compare the design with itself from 70 to 130 % "
    "of its size, or with another design. The best compromise is yours to choose."
)
COLUMNS = (
    ("m/s", 5),
    ("turn s", 7),
    ("N m", 5),
    ("bow up", 7),
    ("cm2", 5),
    ("g", 6),
    ("cost", 7),
)
NAMES = (
    *("top speed, m/s", "quarter turn, s", "steadiness, N m", "bow up, deg", "head-on, cm2", "weight, g"),
    *("cost", "size limit", "can be built"),
)
"""The rows of two designs side by side."""
NAME, CELL = 17, 18
NO_FRAME = "There is no frame yet."
PLOT = (44, 11)
"""Columns and rows for the dots of a plot."""
PLOT_NOTE = "A small grey letter is a design that another beats; + is where two stand in one place."
NO_PLOT = "No plot: without a thruster that drives it there is no speed."
GREY = "$foreground-muted"
"""The look of what is beaten; letter and sentence say it too."""
PICTURE = "trade.svg"


class Compared(Offer, frozen=True, dict=True):
    """What came of it, in rows that tell what is beaten, and the designs side by side."""

    rows: tuple[Row, ...] = ()
    comparison: Comparison | None = None


def compared_offer(rows: list[Row], comparison: Comparison) -> Compared:
    """An offer of these rows; there is nothing to take."""
    return Compared("", text_of(rows), None, tuple(rows), comparison)


def greyed(rows: tuple[Row, ...]) -> Content:
    """The rows with what is beaten in grey."""
    lines = (Content.assemble(*((text, GREY if role else "") for text, role in row)) for row in rows)
    return Content("\n").join(lines)


class CompareSection(ProposalSection):
    """The same design at other sizes, or beside another one."""

    def __init__(self) -> None:
        acts = (
            Act("other", "Another design", methodcaller("ask_other")),
            Act("picture", "Write as SVG", methodcaller("write_picture")),
        )
        sizes_way = Way("sizes", "Sizes 70 to 130 %", sizes)
        super().__init__("Compare", lambda _: WHY, (sizes_way,), takes=False, acts=acts)

    def _offered(self, offer: Offer | None) -> None:
        super()._offered(offer)
        if isinstance(offer, Compared):
            self.query_one(".note", Static).update(greyed(offer.rows))

    def ask_other(self) -> None:
        """Let another design be picked, and compare with it."""
        self.pick(
            "Compare with which design?",
            others(),
            lambda word: self.work_out(Way("other", "", partial(beside, word))),
        )

    def write_picture(self) -> None:
        """Write the plots beside the design's file."""
        comparison = self.offer.comparison if isinstance(self.offer, Compared) else None
        if comparison is None or self.report is None:
            self.say("! There is no plot yet: press one of the other buttons first.")
            return
        self.say("")
        title = f"{self.report.design.title}: speed against handling"
        self.post_message(WriteRequested(PICTURE, trade_svg(trades(comparison), title)))


def others() -> Options:
    """The designs that were open, and the ready-made ones, each with the word that finds it."""
    opened = [(f"{recent.title} ({Path(recent.path).name})", recent.path) for recent in recents()]
    made = [
        (f"{preset.title} (ready-made)", f"{kind}:{preset.name}")
        for kind in ("demo", "starter")
        for preset in presets(kind)
        if not preset.problem
    ]
    return (*opened, *made)


def beside(word: str, report: Report) -> Offer:
    """This design beside another; a sentence where that cannot be read."""
    try:
        other = _design(word)
    except FileProblem as problem:
        return Offer("", str(problem), None)
    found = compared([standing_of_design(report.design), standing_of_design(other)])
    return compared_offer([*side_by_side(found), [], *plots(found)], found)


def _design(word: str) -> Design:
    kind, _, name = word.partition(":")
    if kind not in ("demo", "starter"):
        return load_design(Path(word)).design
    payload = load_preset(find_preset(kind, name))
    assert isinstance(payload, Design)
    return payload


def side_by_side(found: Comparison) -> list[Row]:
    """A row for each measure; a star marks the best, both if they are even."""
    heads = [f"{sign_of(found, number)} {item.name}" for number, item in enumerate(found.standings)]
    rows = [_pair("", heads, found)]
    for name, row in zip(NAMES, found.rows, strict=True):
        cells = [f"{text}{' *' if number in row.best else ''}" for number, text in enumerate(row.texts)]
        rows.append(_pair(name, [cell.replace(" to ", "..") for cell in cells], found))
    names = [item.name for item in found.standings]
    return [*rows, *([(words, "")] for words in beaten_words(names, found))]


def _pair(name: str, cells: list[str], found: Comparison) -> Row:
    """A row of two designs, each in its look."""
    shown = (f"{cell[:CELL]:<{CELL + 1}}" for cell in cells)
    return [(f"{name:<{NAME}}", ""), *((text, look(found, number)) for number, text in enumerate(shown))]


def look(found: Comparison, number: int) -> str:
    """The role of a design: whether another beats it."""
    return "" if found.beaten[number] is None else BEATEN


def plots(found: Comparison) -> list[Row]:
    """The plots, one below the other."""
    drawn = [row for plot in trades(found) for row in (*scatter(plot, *PLOT), [])]
    return [*drawn, [(PLOT_NOTE if drawn else NO_PLOT, "")]]


def sizes(report: Report) -> Offer:
    """A table of sizes; those that another beats in everything say so."""
    if not report.survey.frame.bars:
        return Offer("", NO_FRAME, None)
    sweep = size_sweep(report.survey)
    return compared_offer([*table(sweep), [], *plots(sweep.comparison)], sweep.comparison)


def table(sweep: Sweep) -> list[Row]:
    """A row for each size, with its letter and its numbers, and one for what is wrong with it."""
    head = "   size " + "".join(f"{name:>{width}}" for name, width in COLUMNS)
    rows: list[Row] = [[(head, "")]]
    for number in range(len(sweep.points)):
        rows += [[(line, look(sweep.comparison, number))] for line in _size_lines(sweep, number)]
    return rows


def _size_lines(sweep: Sweep, number: int) -> list[str]:
    found = sweep.comparison
    standing = found.standings[number]
    cells = "".join(
        f"{row.texts[number].split(',')[0].split(' ')[0]:>{width}}"
        for row, (_, width) in zip(found.rows, COLUMNS, strict=False)
    )
    says = _faults(sweep, number)
    line = f"{sign_of(found, number)} {standing.name:>5} {cells}"
    return [line, f"{'':8}{', '.join(says)}"] if says else [line]


def _faults(sweep: Sweep, number: int) -> list[str]:
    """What is wrong with one size, and which other beats it."""
    found = sweep.comparison
    standing, worse = found.standings[number], found.beaten[number]
    says = ["too large"] if standing.fits is False else []
    says += [] if standing.builds else ["cannot be built"]
    says += [] if sweep.points[number].floats_fit else ["floats too long"]
    return says + ([f"{found.standings[worse].name} beats it"] if worse is not None else [])
