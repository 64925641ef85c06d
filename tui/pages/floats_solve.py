"""Solving for the floats: the team names bars and pieces, the model finds lengths and places."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.containers import HorizontalGroup
from textual.widgets import Input, Static

from model.errors import LengthError
from model.proved import proved_floats
from model.solve.floats import Wish, usual_bars
from model.units import format_length, parse_length, parse_number
from tui.forms.acts import Act, ActButton
from tui.forms.proposal import Offer, ProposalSection, Way
from tui.forms.ticks import Ticks

if TYPE_CHECKING:
    from model.review import Report


class SolveSection(ProposalSection):
    """Which bars, which foam and how much of it, how many washers; then lengths and places."""

    DEFAULT_CSS = """
    SolveSection HorizontalGroup { height: auto; }
    SolveSection .label { width: 34; }
    SolveSection Input { width: 12; }
    """

    def __init__(self) -> None:
        self._bars: tuple[tuple[str, str], ...] = ()
        self._foam = ""
        super().__init__("Solve", solve_facts, (Way("solve", "Work it out", self.find),), ("lift",))

    def wishes(self) -> ComposeResult:
        """Bars for foam, the foam, how much; washers and bars for them."""
        yield Static("Foam may go on (space ticks a bar):", markup=False)
        yield Ticks(id="foam-bars")
        with HorizontalGroup():
            yield Static("Foam", markup=False, classes="label")
            yield ActButton(Act("foam", "", lambda section: section.pick_foam()))
        with HorizontalGroup():
            yield Static("Foam there is (empty: enough)", markup=False, classes="label")
            yield Input(compact=True, id="foam-length")
        with HorizontalGroup():
            yield Static("Washers there are (empty: none)", markup=False, classes="label")
            yield Input(compact=True, id="washers")
        yield Static("Washers may hang on:", markup=False)
        yield Ticks(id="washer-bars")

    def show(self, report: Report) -> None:
        """Show a new report; the lists of bars are made anew only where bars came or went."""
        super().show(report)
        bars = tuple((bar.id, bar.name) for bar in report.survey.frame.bars.values())
        if bars != self._bars:
            self._bars = bars
            self.query_one("#foam-bars", Ticks).fill(bars, usual_bars(report.survey, 1))
            self.query_one("#washer-bars", Ticks).fill(bars, usual_bars(report.survey, -1))
        foams = {foam.id: foam.name for foam in report.design.supplies.foams}
        used = next((piece.foam for piece in report.design.arrangement.floats), "")
        if self._foam not in foams:
            self._foam = used or next(iter(foams), "")
        named = foams.get(self._foam, "none: take one from a preset")
        self.query_one("#act-foam", ActButton).label = named

    def pick_foam(self) -> None:
        """Choose the foam."""
        report = self.report
        if report is None:
            return

        def picked(foam: str) -> None:
            self._foam = foam
            self.show(report)

        foams = tuple((foam.name, foam.id) for foam in report.design.supplies.foams)
        if foams:
            self.pick("Which foam?", foams, picked, self._foam)
        else:
            self.say("! There is no foam yet: take one from a preset in the section Foam.")

    def work_out(self, way: Way) -> None:
        """Read the wish first; what cannot be read is said."""
        try:
            self._wish = self._read()
        except LengthError as problem:
            self.say(f"! {problem}.")
            return
        self.say("")
        super().work_out(way)

    def _read(self) -> Wish | None:
        report = self.report
        if report is None or not self._foam:
            return None
        length = self.query_one("#foam-length", Input).value.strip()
        washers = self.query_one("#washers", Input).value.strip()
        floats = report.design.arrangement.floats
        return Wish(
            float_bars=self._ticked("#foam-bars"),
            foam=self._foam,
            foam_length=parse_length(length, report.design.units) if length else None,
            beside=floats[0].beside if floats else None,
            weight_bars=self._ticked("#washer-bars"),
            weight=report.design.supplies.washer.mass,
            weights=max(0, int(parse_number(washers))) if washers else 0,
        )

    def _ticked(self, which: str) -> tuple[str, ...]:
        ticks = self.query_one(which, Ticks)
        return tuple(bar for bar, _ in self._bars if bar in ticks.ticked)

    def find(self, report: Report) -> Offer:
        """The floats for the wish that was read."""
        if self._wish is None:
            return Offer("", "There is no foam yet: take one from a preset in the section Foam.", None)
        offer = proved_floats(report, self._wish)
        if offer.design is None:
            return Offer("", offer.words, None)
        arrangement, kept = offer.design.arrangement, report.design.arrangement.ballasts
        unit = report.design.units
        pieces = [f"{piece.name}: {format_length(piece.length, unit)}" for piece in arrangement.floats]
        pieces += [
            f"{weight.name}: {weight.mass * 1000:.0f} g"
            for weight in arrangement.ballasts
            if weight not in kept
        ]
        return Offer("floats worked out", "\n".join([offer.words, *pieces]), offer.design)


def solve_facts(report: Report) -> str:
    """What the solver does."""
    return (
        "Tick the bars that foam may go on, then work it out: lengths to the nearest 5 mm or 1/4 in that "
        "float with 10 to 40 g to spare and lie level. The floats that there are now are replaced."
    )
