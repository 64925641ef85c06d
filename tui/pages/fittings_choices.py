"""What fits a joint: every fitting with its price and sockets in words; where none does, ways to rebuild."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.vehicle.choices import Choice, choices
from tui.forms.kinds import Options, mass_text
from tui.forms.listing import ListSection
from tui.pages.words import money, sizes, steps_words

if TYPE_CHECKING:
    from model.coach.finding import Finding, Remedy
    from model.frame.layout import JointPlace
    from model.review import Report
    from model.vectors import Grid

NONE_FITS = "none fits"
SHOWN = 4
"""Fittings that are listed in full under the table; the list behind the field has all."""


def words_of(ways: tuple[Grid, ...]) -> str:
    """Directions in words."""
    return ", ".join(steps_words(to) for to in sorted(ways, reverse=True))


def directions(joint: JointPlace) -> str:
    """Where the bars of a joint leave it."""
    return ", ".join(steps_words(arm.to) for arm in joint.arms) or "no bar"


def choice_words(report: Report, choice: Choice) -> str:
    """A fitting on one line: price, weight, what is spare, what is in the box, its size."""
    parts = [
        money(report, choice.fitting.price),
        f"{mass_text(choice.fitting.mass)} g",
        f"spare socket {words_of(choice.spare)}" if choice.spare else "none spare",
    ]
    if choice.held:
        parts.append(f"{choice.held} in the box")
    parts.append(sizes(report, choice.size))
    return f"{choice.fitting.name}: {', '.join(parts)}"


def joint_note(report: Report, key: str) -> str:
    """Every fitting that fits, the one that sits there marked; or what to do where none does."""
    joint = report.survey.frame.joints[key]
    fits = choices(report.design, joint)
    head = f"Bars leave: {directions(joint)}."
    if not fits:
        return f"{head} No fitting of the stock has sockets like that. Press 'Ways to rebuild it'."
    lines = [f"{'►' if choice.used else ' '} {choice_words(report, choice)}" for choice in fits[:SHOWN]]
    more = [f"  and {len(fits) - SHOWN} more, all with spare sockets"] if len(fits) > SHOWN else []
    return "\n".join((head, *lines, *more))


def fitting_options(report: Report, key: str) -> Options:
    """The fittings that fit a joint, and the one that is picked even where it does not."""
    joint = report.survey.frame.joints[key]
    fits = choices(report.design, joint)
    listed: Options = tuple((choice_words(report, choice), choice.fitting.id) for choice in fits)
    best = f"the best that fits ({fits[0].fitting.name})" if fits else f"let it be ({NONE_FITS})"
    picked = next(each.fitting for each in report.survey.arrangement.joints if each.id == key)
    odd: Options = ()
    if picked is not None and picked not in {choice.fitting.id for choice in fits}:
        odd = ((f"{_name(report, picked)} (does not fit)", picked),)
    return ((best, None), *listed, *odd)


def _name(report: Report, fitting: str) -> str:
    return next((each.name for each in report.design.stock.fittings if each.id == fitting), fitting)


def trouble(report: Report, key: str) -> Finding | None:
    """What the coach says about the fitting of a joint, the worst first."""
    return next(
        (
            finding
            for finding in report.findings
            if finding.step == "fittings" and (finding.about.kind, finding.about.id) == ("joint", key)
        ),
        None,
    )


def ways_to_rebuild(section: ListSection) -> None:
    """Show each way to put the joint right with what it takes, and take the one that is chosen."""
    from tui.dialogs.ways import WaysDialog

    report, key = section.report, section.table.chosen
    if report is None or key is None:
        return
    finding = trouble(report, key)
    if finding is None:
        name = report.survey.frame.joints[key].name
        section.say(f"! Nothing is wrong with the fitting at '{name}'; this is for joints that none fits.")
        return

    def taken(remedy: Remedy | None) -> None:
        if remedy is not None:
            section.ask(remedy.label, remedy.edit)

    section.app.push_screen(WaysDialog(report, finding), taken)
