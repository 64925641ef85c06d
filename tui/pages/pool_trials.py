"""The section Trials: the card; what is measured goes in here and stands beside the model."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from model.pool.card import ORDER
from model.pool.corrections import correction
from model.pool.expected import COURSE, expected
from model.pool.kinds import KINDS
from model.pool.results import Result, difference_words, results
from model.units import format_length
from tui.forms.acts import Act
from tui.forms.items import Column, Row
from tui.forms.listing import Listing, ListSection
from tui.pages.noting import AUTHOR
from tui.pages.pool_fields import Readings, Spot, foams_in_use

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.review import Report

NOTHING = (
    "! This line corrects nothing: it is not measured, it agrees, or it is so far off that something else "
    "must be wrong. Measure again."
)
CODES = {"trial.weight-off": "weight", "trial.trim-off": "pitch", "trial.spare-off": "spare"}


class Trials:
    """The card; it remembers the course, the piece of foam and the bar that are about to be measured."""

    def __init__(self) -> None:
        self.readings = Readings(self.show_again)
        self.list = self.section()

    def show_again(self) -> None:
        """Show the model for another length or bar."""
        if self.list.report is not None:
            self.list.call_later(self.list.show, self.list.report)

    def section(self) -> ListSection:
        """The section Trials."""
        return ListSection(
            Listing(
                title="Trials",
                columns=(
                    Column("Measure"),
                    Column("Model", 16, right=True),
                    Column("Measured", 16, right=True, least=52),
                    Column("Off by", 14, least=74),
                ),
                rows=self.rows,
                entries=lambda report, key: self.readings.entries(report, self.spot(report, key)),
                marks=lambda report, key: ("", ""),
                empty="",
                acts=(Act("correct", "Correct the model", self.correct), AUTHOR),
                facts=standing,
                note=self.note,
                locate=locate,
            )
        )

    def spots(self, report: Report) -> Sequence[Spot]:
        """Everything that can be measured."""
        pool = [Spot(kind, "", self.readings.over(report, kind)) for kind in ORDER]
        bench = [
            Spot("foam", foam.id, self.readings.over(report, "foam")) for foam in foams_in_use(report.design)
        ]
        bar = self.readings.bar(report)
        return (*pool, *bench, *((Spot("showing", bar, 0.0),) if bar else ()))

    def spot(self, report: Report, key: str) -> Spot:
        """What a row measures."""
        return next(spot for spot in self.spots(report) if spot.key == key)

    def rows(self, report: Report) -> list[Row]:
        """A row for each thing to measure."""
        return [Row(spot.key, self._cells(report, spot)) for spot in self.spots(report)]

    def _cells(self, report: Report, spot: Spot) -> tuple[str, ...]:
        kind, unit = KINDS[spot.kind], report.design.units
        model = expected(report.survey, spot.kind, over=spot.over or COURSE, about=spot.about)
        result = result_of(report, spot)
        measured = kind.words(result.trial.value, unit) if result else "-"
        off = difference_words(report.survey, result) if result else "-"
        title = f"time, {format_length(spot.over, unit)}" if spot.kind == "course" else kind.title
        said = kind.words(model, unit) if model is not None else "-"
        return title, *(short(words) for words in (said, measured, off))

    def note(self, report: Report, key: str) -> str:
        """How it is measured; what came of it, and what it may correct."""
        spot = self.spot(report, key)
        result = result_of(report, spot)
        lines = [f"How: {KINDS[spot.kind].how}"]
        if result:
            lines.insert(0, result_words(report, result))
            found = correction(report.survey, result)
            lines.insert(1, f"{found.label}: {found.why}.") if found else None
        return "\n".join(lines)

    def correct(self, section: ListSection) -> None:
        """Take the correction of the chosen line."""
        report, key = section.report, section.table.chosen
        result = result_of(report, self.spot(report, key)) if report and key else None
        found = correction(report.survey, result) if report and result else None
        if found is None:
            section.say(NOTHING)
        else:
            section.ask(f"{found.label}: {found.why}", found.edit)


SHORTER = ((" degrees", "°"), (", it ", " "), (" side up", " up"), ("as the model says", "agrees"))


def short(words: str) -> str:
    """Words as they go into a column.

    >>> short("0.3 degrees, starboard side up")
    '0.3°, starboard up'
    """
    for long, brief in SHORTER:
        words = words.replace(long, brief)
    return words


def trials_section() -> ListSection:
    """The section Trials."""
    return Trials().list


def result_of(report: Report, spot: Spot) -> Result | None:
    """The newest trial that stands of a thing."""
    found = [result for result in results(report.survey) if result.newest]
    return next(
        (each for each in found if (each.trial.kind, each.trial.about) == (spot.kind, spot.about)), None
    )


def result_words(report: Report, result: Result) -> str:
    """Measured, what the model said then and says now, and the difference."""
    words, unit, trial = KINDS[result.trial.kind].words, report.design.units, result.trial
    then = words(trial.model, unit) if trial.model is not None else "nothing"
    now = words(result.model, unit) if result.model is not None else "nothing"
    model = f"the model says {now}" if now == then else f"the model said {then}, and says {now} now"
    off = difference_words(report.survey, result)
    return f"Measured {words(trial.value, unit)}; {model}: {off}."


def standing(report: Report) -> str:
    """How many trials there are."""
    found = results(report.survey)
    better = sum(correction(report.survey, each) is not None for each in found if each.newest)
    more = f" {better} may correct the model." if better else ""
    count = "1 trial is" if len(found) == 1 else f"{len(found)} trials are"
    return f"{count} noted. What is measured stands beside the model.{more}"


def locate(report: Report, about: About) -> str | None:
    """The line that the coach speaks of; its findings of trials are about the whole vehicle."""
    if about.kind not in ("", "design"):
        return None
    kinds = [CODES[finding.code] for finding in report.findings if finding.code in CODES]
    return f"{kinds[0]}:" if kinds else None
