"""``poolwright check``: the survey of a design in words, of several as a table, or as JSON for programs."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct

from tui.cli_files import load_designs
from tui.cli_text import columns, indented, plain

if TYPE_CHECKING:
    from model.coach.finding import Finding, Remedy
    from model.review import Report

READY, FIX, UNREADABLE = 0, 1, 2
COLUMNS = ("file", "title", "verdict", "size", "weight", "in water", "trim", "cost", "must", "should")


class Outcome(Struct, frozen=True):
    """What a command prints, and how it ends."""

    output: str
    errors: tuple[str, ...]
    status: int


def check(files: Sequence[str], *, as_json: bool) -> Outcome:
    """Check design files; those that can be read are told even where others cannot."""
    from model.review import review

    designs, errors = load_designs(files)
    reports = [(file, review(design)) for file, design in designs]
    status = READY
    if any(report.musts for _, report in reports):
        status = FIX
    if len(reports) < len(files):
        status = UNREADABLE
    return Outcome(_output(reports, as_json=as_json, several=len(files) > 1), tuple(errors), status)


def _output(reports: list[tuple[str, Report]], *, as_json: bool, several: bool) -> str:
    if as_json:
        from model.check import check_document

        return json.dumps([check_document(report, file) for file, report in reports], indent=2) + "\n"
    if several:
        lines = table(reports) if reports else []
    else:
        lines = [line for file, report in reports for line in words(file, report)]
    return "".join(f"{line}\n" for line in lines)


def words(file: str, report: Report) -> list[str]:
    """The survey of one design, a line each."""
    from model.survey import motion_of
    from model.units import format_mass
    from tui.phrases import lift_text, money_text, power_text, size_lines, speed_text, stalled_text, trim_text

    survey, unit = report.survey, report.design.units
    numbers = [
        ("Verdict", report.verdict_words),
        *size_lines(survey.extents, unit),
        ("Weight", format_mass(survey.balance.mass)),
        ("In water", lift_text(survey.balance)),
        ("Trim", trim_text(survey.balance)),
        ("Speed", speed_text(motion_of(survey))),
        ("Power", power_text(survey.wiring)),
        *((("Held fast", held),) if (held := stalled_text(survey)) else ()),
        ("Money", money_text(survey)),
    ]
    return [
        plain(f"{report.design.title} ({file})"),
        *columns(numbers),
        *_section("Saw cuts", _cut_lines(report)),
        *_section("Fittings", _fitting_lines(report)),
        *_section("Findings", _finding_lines(report)),
    ]


def table(reports: list[tuple[str, Report]]) -> list[str]:
    """A line for each design."""
    return columns([COLUMNS, *(_row(file, report) for file, report in reports)])


def _row(file: str, report: Report) -> list[str]:
    from model.units import format_mass
    from tui.phrases import box_text, lift_text, trim_text

    survey = report.survey
    return [
        file,
        report.design.title,
        report.verdict,
        box_text(survey.extents.size, report.design.units) if survey.extents.box else "-",
        format_mass(survey.balance.mass),
        lift_text(survey.balance),
        trim_text(survey.balance),
        f"{survey.bill.spent:.2f} {survey.bill.currency}",
        str(len(report.musts)),
        str(sum(finding.severity == "should" for finding in report.findings)),
    ]


def _section(heading: str, lines: list[str]) -> list[str]:
    return ["", heading, *indented(lines or ["none"])]


def _cut_lines(report: Report) -> list[str]:
    from model.units import format_length

    unit, survey = report.design.units, report.survey
    rows = [
        (group.letter, format_length(group.cut, unit), group.pipe.name, [bar.name for bar in group.bars])
        for group in survey.cuts
    ]
    unknown = [bar.name for bar in survey.frame.bars.values() if bar.cut is None]
    if unknown:
        rows.append(("?", "length not known yet", "", unknown))
    return columns(
        [letter, f"{len(bars)} x {length}", pipe, ", ".join(bars)] for letter, length, pipe, bars in rows
    )


def _fitting_lines(report: Report) -> list[str]:
    from model.check import fittings_used

    return columns(
        [f"{len(joints)} x {match.fitting.name}", ", ".join(joints)]
        for match, joints in fittings_used(report.survey.frame)
    )


def _finding_lines(report: Report) -> list[str]:
    from model.check import proved

    return [line for finding, remedy in proved(report) for line in _one_finding(finding, remedy)]


def _one_finding(finding: Finding, remedy: Remedy | str | None) -> list[str]:
    told = plain(f"{finding.severity:<6}  {finding.step}: {finding.message}")
    if remedy is None or isinstance(remedy, str):
        return [told]
    return [told, plain(f"{'':<6}  remedy: {remedy.label}")]
