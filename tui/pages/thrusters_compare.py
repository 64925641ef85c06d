"""Speed against handling: the design at other sizes, or beside another design, as a table and as plots."""

from __future__ import annotations

from functools import partial
from operator import methodcaller
from pathlib import Path
from typing import TYPE_CHECKING

from model.compare import Comparison, beaten_words, compared, standing_of_design
from model.design import Design
from model.drawing.trade import letter_of, trade_svg, trades
from model.errors import FileProblem
from model.files import load_design
from model.presets import find_preset, load_preset, presets
from model.solve.sweep import Sweep, size_sweep
from tui.forms.proposal import Offer, ProposalSection, Way
from tui.forms.section import Act
from tui.messages import WriteRequested
from tui.raster.scatter import scatter
from tui.shelf import recents

if TYPE_CHECKING:
    from model.review import Report
    from tui.forms.kinds import Options

WHY = (
    "Small and light is quick, large and wide is steady: compare the design with itself from 70 to 130 % "
    "of its size, or with another design. The best compromise is yours to choose."
)
COLUMNS = (
    ("m/s", 6),
    ("turn s", 8),
    ("N m", 6),
    ("pitch", 7),
    ("cm2", 6),
    ("g", 6),
    ("cost", 8),
)
NO_FRAME = "There is no frame yet."
PLOT = (44, 11)
"""Columns and rows for the dots of a plot."""
PLOT_NOTE = "A small letter is a design that another beats; + is where two stand in one place."
PICTURE = "trade.svg"


class Compared(Offer, frozen=True, dict=True):
    """What came of it, and the designs side by side."""

    comparison: Comparison | None = None


class CompareSection(ProposalSection):
    """The same design at other sizes, or beside another one."""

    def __init__(self) -> None:
        acts = (
            Act("other", "Another design", methodcaller("ask_other")),
            Act("picture", "Write as SVG", methodcaller("write_picture")),
        )
        sizes_way = Way("sizes", "Sizes 70 to 130 %", sizes)
        super().__init__("Compare", lambda _: WHY, (sizes_way,), takes=False, acts=acts)

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
    lines = [*side_by_side(found), "", *plots(found)]
    return Compared("", "\n".join(lines), None, found)


def _design(word: str) -> Design:
    kind, _, name = word.partition(":")
    if kind not in ("demo", "starter"):
        return load_design(Path(word)).design
    payload = load_preset(find_preset(kind, name))
    assert isinstance(payload, Design)
    return payload


def side_by_side(found: Comparison) -> list[str]:
    """A line for each measure; a star marks the best, both if they are even."""
    heads = [f"{letter_of(number)} {item.name}" for number, item in enumerate(found.standings)]
    lines = [f"{'':29}{heads[0][:22]:<24}{heads[1][:22]}"]
    for row in found.rows:
        cells = [f"{text}{' *' if number in row.best else ''}" for number, text in enumerate(row.texts)]
        words = row.name.split(",")[0]
        measured = f"{words}, {row.unit}" if row.unit else words
        lines.append(f"{measured[:28]:<29}{cells[0]:<24}{cells[1]}")
    return [*lines, *beaten_words([item.name for item in found.standings], found)]


def plots(found: Comparison) -> list[str]:
    """The plots, one below the other."""
    drawn = [line for plot in trades(found) for line in (*scatter(plot, *PLOT), "")]
    return [*drawn, PLOT_NOTE] if drawn else ["No plot: without a thruster that drives it there is no speed."]


def sizes(report: Report) -> Offer:
    """A table of sizes; those that another beats in everything say so."""
    if not report.survey.frame.bars:
        return Offer("", NO_FRAME, None)
    sweep = size_sweep(report.survey)
    lines = [*table(sweep), "", *plots(sweep.comparison)]
    return Compared("", "\n".join(lines), None, sweep.comparison)


def table(sweep: Sweep) -> list[str]:
    """A line for each size, with its letter and its numbers, and one for what is wrong with it."""
    rows = sweep.comparison.rows
    head = "   size " + "".join(f"{name:>{width}}" for name, width in COLUMNS)
    lines = [head]
    for number, point in enumerate(sweep.points):
        standing = sweep.comparison.standings[number]
        cells = "".join(
            f"{row.texts[number].split(',')[0].split(' ')[0]:>{width}}"
            for row, (_, width) in zip(rows, COLUMNS, strict=False)
        )
        says = ["too large"] if standing.fits is False else []
        says += [] if standing.builds else ["cannot be built"]
        says += [] if point.floats_fit else ["floats too long"]
        worse = sweep.comparison.beaten[number]
        says += [f"{sweep.comparison.standings[worse].name} beats it"] if worse is not None else []
        lines.append(f"{letter_of(number)} {standing.name:>5} {cells}")
        lines += [f"{'':8}{', '.join(says)}"] if says else []
    return lines
