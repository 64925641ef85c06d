"""The notebook: how the design came about, for a judge or a teacher to believe.

The four expectations are those of middle-school engineering design, MS-ETS1-1 to MS-ETS1-4, in our own
words (Next Generation Science Standards).
"""

from collections.abc import Sequence

from model.arrangements import difference_lines, differences
from model.compare import Comparison, Row, compare
from model.design import Decision, Design
from model.drawing.solid import solid_sheet
from model.drawing.svg import sheet_svg
from model.explain import quantities
from model.quantity import Quantity
from model.review import Report
from model.sheets.blocks import Block, Heading, Listed, Page, Picture, Table, Words
from model.sheets.notebook_evidence import build_page, money_page, trials_page
from model.survey import Survey
from model.units import format_length, format_mass

EXPECTATIONS = (
    (
        "MS-ETS1-1",
        "State what the solution must do and what limits it, precisely enough to succeed, with the science "
        "and the effects on people and nature that bear on it.",
        "problem",
    ),
    (
        "MS-ETS1-2",
        "Compare competing designs by a systematic process: how well does each meet the criteria and limits?",
        "alternatives",
    ),
    (
        "MS-ETS1-3",
        "Analyse what tests say of several designs, to find the best of each and join it in a better one.",
        "trials",
    ),
    (
        "MS-ETS1-4",
        "Build a model whose numbers can be tried and changed again and again, towards the best design.",
        "calculations",
    ),
)
"""Code, what is asked, and the page that shows it."""


def notebook(report: Report, others: Sequence[Design] = ()) -> tuple[Page, ...]:
    """All pages of the notebook.

    Args:
        others: designs that it is compared with.
    """
    return (
        _index(report),
        _problem(report),
        _decisions(report),
        _alternatives(report, others),
        _drawings(report.survey),
        _calculations(quantities(report.survey)),
        build_page(report.survey),
        trials_page(report.survey),
        money_page(report.survey),
        _open_points(report),
    )


def _index(report: Report) -> Page:
    design = report.design
    rows = tuple((code, words, page) for code, words, page in EXPECTATIONS)
    blocks: tuple[Block, ...] = (
        Words(f"Team: {design.team or 'not named'}. Units: {design.units}."),
        Words("Which page shows which of the four expectations of middle-school engineering design:"),
        Table(("expectation", "in our words", "page"), rows, (0.15, 0.65, 0.2)),
        *((Words(design.notes),) if design.notes else ()),
    )
    return Page("index", f"Notebook of {design.title}", blocks)


def _problem(report: Report) -> Page:
    brief, unit = report.design.brief, report.design.units
    limits = []
    if brief.size_limit:
        limits.append(f"size: {' x '.join(format_length(side, unit) for side in brief.size_limit)}")
    if brief.spending_limit is not None:
        limits.append(f"spending: {brief.spending_limit:.2f} {brief.currency}")
    if brief.materials:
        limits.append(f"pipe materials: {', '.join(brief.materials)}")
    if brief.hoop:
        limits.append(f"a hoop of {format_length(brief.hoop, unit)} to pass")
    if brief.gate:
        limits.append(f"a gate of {' x '.join(format_length(side, unit) for side in brief.gate)} to pass")
    if brief.load:
        limits.append(f"to lift: {brief.load.name}, {format_mass(brief.load.mass)} in {brief.load.weighed}")
    if brief.supply_limit:
        limits.append(f"supply: {brief.supply_limit:g} V at the most")
    if brief.moves:
        limits.append(f"to move: {', '.join(brief.moves)}")
    water = brief.water
    blocks: tuple[Block, ...] = (
        Words(f"The task: {brief.title}. {brief.task}"),
        Heading("What it must do, and what limits it"),
        Listed(tuple(limits) or ("no limits are written down yet",)),
        Words(
            f"The water: {water.name}, {water.temperature:g} degrees C, {water.salinity:g} g of salt per kg."
        ),
        Words(f"Where the rules come from: {brief.origin or 'not noted'}. {brief.notes}"),
    )
    return Page("problem", "The problem", blocks)


def _decisions(report: Report) -> Page:
    rows = tuple(_decision(entry) for entry in report.design.evidence.log)
    columns = ("when", "what", "from", "to", "why", "who")
    table = Table(columns, rows, (0.12, 0.16, 0.24, 0.24, 0.16, 0.08))
    words = Words("No decision was noted yet.")
    return Page("decisions", "Decisions, as they were made", (table if rows else words,))


def _decision(entry: Decision) -> tuple[str, ...]:
    what = entry.what if entry.stands else f"{entry.what} (taken back {entry.taken_back})"
    return entry.when, what, entry.before, entry.after, entry.why, entry.who


def _alternatives(report: Report, others: Sequence[Design]) -> Page:
    blocks: list[Block] = []
    if not others:
        blocks.append(Words("No other design stands beside this one here; two files can be compared."))
    blocks.append(_compared(compare(report.design, *others)))
    for found in differences(report.design):
        blocks.append(Heading(f"Two arrangements: {report.survey.arrangement.name} and {found.name}"))
        blocks.append(Listed(difference_lines(found)))
    return Page("alternatives", "Alternatives compared", tuple(blocks))


def _compared(found: Comparison) -> Table:
    """The table of the comparison; the best of each row has a star."""
    columns = ("what", *(one.name for one in found.standings))
    rows = tuple(_compared_row(row) for row in found.rows)
    return Table(columns, rows, (0.4, *(0.6 / len(found.standings) for _ in found.standings)))


def _compared_row(row: Row) -> tuple[str, ...]:
    several = len(row.texts) > 1
    texts = (f"{text} *" if several and number in row.best else text for number, text in enumerate(row.texts))
    return f"{row.name} [{row.unit}]" if row.unit else row.name, *texts


def _drawings(survey: Survey) -> Page:
    if not survey.frame.bars:
        return Page("drawings", "Drawings", (Words("Nothing is drawn yet."),))
    svg = sheet_svg(solid_sheet(survey), survey.design.title)
    return Page(
        "drawings", "Drawings", (Picture("notebook-views", "front, top and side with dimensions", svg),)
    )


def _calculations(found: Sequence[Quantity]) -> Page:
    blocks: list[Block] = [
        Words("Each number with its formula in words, what went in, and where it comes from.")
    ]
    for item in found:
        blocks.append(Heading(f"{item.name}: {item.text}"))
        lines = [f"How: {item.formula}", *(f"{name}: {value}" for name, value in item.inputs)]
        lines.append(f"Source: {item.source}")
        if item.spread:
            lines.append(f"How sure: {item.spread}")
        blocks.append(Listed(tuple(lines)))
    return Page("calculations", "Calculations", tuple(blocks))


def _open_points(report: Report) -> Page:
    lines = tuple(f"{finding.severity}: {finding.message}" for finding in report.findings)
    return Page("open-points", "What is still open", (Listed(lines) if lines else Words("Nothing is open."),))
