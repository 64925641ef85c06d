"""The fields of a trial: each thing is written as it is read off, and never with a bare sign."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from msgspec import Struct
from msgspec.structs import replace

from model.design.edits.evidence import note_trial, with_changed
from model.pool.expected import COURSE, expected
from model.pool.kinds import KINDS
from model.pool.results import results
from model.pool.ways import WAYS, Way
from model.units import Unit, parse_mass, parse_number
from model.water.balance import GRAVITY
from tui import stamp
from tui.forms.entry import Entry
from tui.forms.kinds import LENGTH, LONG_TEXT, Chosen, Kind, Options, Typed, number_text

if TYPE_CHECKING:
    from model.design import Design, Foam, Trial, TrialKind
    from model.design.edits import Edit
    from model.design.limits import Limits
    from model.review import Report

FOAM_PIECE = 0.5
"""[m] The piece of foam that is weighed, where nothing else is said."""
_GRAMS = re.compile(r"\s*(k?g)\s*$", re.IGNORECASE)


def read_force(text: str, _unit: Unit) -> float:
    """A force [N]; a scale that reads grams is written with g or kg behind it.

    Raises:
        LengthError: it is no number.
    """
    return parse_mass(text) * GRAVITY if _GRAMS.search(text) else parse_number(text)


def _typed(unit: str) -> Typed:
    return Typed(lambda value, _: number_text(value, 3), lambda text, _: parse_number(text), unit)


MEASURES: dict[str, Kind] = {
    "mass": Typed(lambda value, _: number_text(value * 1000, 1), lambda text, _: parse_mass(text), "g"),
    "angle": _typed("degrees"),
    "force": Typed(lambda value, _: number_text(value, 3), read_force, "N"),
    "time": _typed("s"),
    "minutes": _typed("min"),
    "length": LENGTH,
}


class Spot(Struct, frozen=True):
    """Something to measure: a kind of trial, of which bar or foam, over which length [m]."""

    kind: TrialKind
    about: str
    over: float

    @property
    def key(self) -> str:
        """The key of its row."""
        return f"{self.kind}:{self.about}"


def foams_in_use(design: Design) -> tuple[Foam, ...]:
    """The foams that floats of this design are cut from."""
    used = {item.foam for item in design.arrangement.floats}
    return tuple(foam for foam in design.supplies.foams if foam.id in used)


class Readings:
    """What is about to be measured: over which length, on which bar.

    Args:
        told: hears that one of them is another now, since no edit says it.
    """

    def __init__(self, told: Callable[[], None]) -> None:
        self.told = told
        self._over: dict[str, float] = {}
        self._bar = ""

    def over(self, report: Report, kind: TrialKind) -> float:
        """The length of the course or of the piece of foam [m]; 0 for what has none."""
        if kind not in ("course", "foam"):
            return 0.0
        last = [each.trial.over for each in results(report.survey) if each.trial.kind == kind]
        return (
            self._over.get(kind)
            or next(iter(last[::-1]), 0.0)
            or (COURSE if kind == "course" else FOAM_PIECE)
        )

    def bar(self, report: Report) -> str:
        """The bar of which the pipe still showing is measured."""
        bars = report.survey.frame.bars
        tried = [each.trial.about for each in results(report.survey) if each.trial.kind == "showing"]
        wanted = (self._bar, *tried[::-1], *bars)
        return next((bar for bar in wanted if bar in bars), "")

    def entries(self, report: Report, spot: Spot) -> tuple[Entry, ...]:
        """What is read off, over which length, and a remark."""
        return (*self._where(report, spot), *(_reading(spot, way) for way in WAYS[spot.kind]), _remark(spot))

    def _where(self, report: Report, spot: Spot) -> list[Entry]:
        if spot.over:
            label = "Length of the course" if spot.kind == "course" else "Length of the piece"
            help_ = "Write it before the time." if spot.kind == "course" else "Write it before the weight."
            return [Entry("trial-over", label, LENGTH, lambda report: self.over(report, spot.kind),
                          lambda length: self._keep_over(spot.kind, length), help_,
                          field=("trials", "over"))]  # fmt: skip
        if spot.kind == "showing":
            return [Entry("trial-bar", "Which bar", Chosen(_bars), self.bar, self._keep_bar,
                          "The bar that was pushed together.")]  # fmt: skip
        return []

    def _keep_over(self, kind: str, length: float) -> Edit:
        self._over[kind] = length
        self.told()
        return _unchanged

    def _keep_bar(self, bar: str) -> Edit:
        self._bar = bar
        self.told()
        return _unchanged


def _unchanged(design: Design) -> Design:
    """It is kept for the reading that comes next, and is noted with it."""
    return design


def _bars(report: Report) -> Options:
    return tuple((f"{bar.letter} {bar.name}", bar.id) for bar in report.survey.frame.bars.values())


def standing_trial(report: Report, spot: Spot) -> Trial | None:
    """The newest trial that stands of a thing."""
    found = [each.trial for each in results(report.survey) if each.newest]
    return next((each for each in found if (each.kind, each.about) == (spot.kind, spot.about)), None)


def _reading(spot: Spot, way: Way) -> Entry:
    def get(report: Report) -> float | None:
        trial = standing_trial(report, spot)
        same = trial is not None and trial.over == spot.over
        return way.reading(trial.value) if trial and same else None

    def edit(reading: Any) -> Edit:
        return lambda design: _noted(design, spot, way.value(reading)) if reading is not None else design

    help_ = KINDS[spot.kind].how
    kind = MEASURES[way.measure]
    return Entry(
        f"trial-{way.key}",
        way.label,
        kind,
        get,
        edit,
        help_,
        optional=True,
        about=KINDS[spot.kind].title,
        limits=lambda report: _reads(report, spot),
    )


def _reads(report: Report, spot: Spot) -> Limits:
    """What can be read off; of a piece of pipe no more can show than there is."""
    reads = KINDS[spot.kind].reads
    cut = report.survey.frame.bars[spot.about].cut if spot.kind == "showing" else None
    return replace(reads, most=cut, why="the whole piece") if cut else reads


def _noted(design: Design, spot: Spot, value: float) -> Design:
    """The trial with what the model says of it now."""
    from model.survey import survey

    model = expected(survey(design), spot.kind, over=spot.over or COURSE, about=spot.about)
    return note_trial(
        design, spot.kind, value, stamp.now(), model=model, over=spot.over, about=spot.about, who=stamp.who()
    )


def _remark(spot: Spot) -> Entry:
    def get(report: Report) -> str:
        trial = standing_trial(report, spot)
        return trial.notes if trial else ""

    def edit(words: str) -> Edit:
        return lambda design: _remarked(design, spot, words)

    help_ = "What was special: who read the scale, wind, how often it was tried. Write it after the reading."
    return Entry("trial-notes", "Remark", LONG_TEXT, get, edit, help_, about=KINDS[spot.kind].title)


def _remarked(design: Design, spot: Spot, words: str) -> Design:
    """The remark on the newest trial of a thing; without a trial there is nothing to remark on."""
    same = [t for t in design.evidence.trials if t.stands and (t.kind, t.about) == (spot.kind, spot.about)]
    return with_changed(design, "trials", same[-1].id, notes=words) if same else design
