"""Pages for the bench: cut sheet, cutting plan, drill sheet, build list."""

from collections.abc import Iterator

from model.building.cautions import DEBURR, DEFER, DRILL, SAW
from model.building.fitting_steps import side_words
from model.building.order import build_steps
from model.design.edits.evidence import done_steps
from model.drawing.diagram_svg import diagram_svg
from model.drawing.sticks import cutting_scene
from model.frame.letters import CutGroup
from model.money.shopping import PipePlan
from model.sheets.blocks import Block, Caution, Heading, Listed, Page, Picture, Table, Words
from model.sheets.template import Template, holes_by_bar, template_svg, templates
from model.survey import Survey
from model.units import format_length


def cut_sheet(survey: Survey) -> Page:
    """What to saw, with fractions of an inch, mm and a box for each piece."""
    rows = tuple(_cut_row(group) for group in survey.cuts)
    columns = ("piece", "pieces", "mm", "inches", "push-to mark", "which bars", "sawn")
    unknown = [bar.name for bar in survey.frame.bars.values() if bar.cut is None]
    blocks: list[Block] = [
        Caution((*SAW, *DEBURR)),
        Words("Lengths stand in mm and in inches to the nearest 1/16: use one ruler for all pieces."),
        Table(columns, rows, (0.08, 0.09, 0.09, 0.12, 0.18, 0.29, 0.15), (1, 2)),
        Words(
            "The push-to mark is pencilled on the pipe so far from its end: pushed home, it lies at the face "
            "of the fitting. Measure one dry joint of your own first: every cut follows it."
        ),
    ]
    if unknown:
        blocks.append(Words(f"No cut yet, since no fitting fits at an end: {', '.join(unknown)}."))
    return Page("cut-sheet", "Cut sheet", tuple(blocks))


def _cut_row(group: CutGroup) -> tuple[str, ...]:
    depths = sorted({format_length(depth, "mm") for bar in group.bars for depth in bar.insertions})
    inches = sorted({format_length(depth, "in") for bar in group.bars for depth in bar.insertions})
    return (
        group.letter,
        str(len(group.bars)),
        format_length(group.cut, "mm", with_unit=False),
        format_length(group.cut, "in"),
        f"{' / '.join(depths)} ({' / '.join(inches)})",
        ", ".join(bar.name for bar in group.bars),
        " ".join("[ ]" for _ in group.bars),
    )


def plan_page(survey: Survey, plan: PipePlan) -> Page:
    """Which piece comes out of which stick."""
    cost = f"{plan.cost:.2f} {survey.bill.currency}"
    proven = "no plan is cheaper" if plan.proven else "a cheaper plan may exist"
    svg = diagram_svg(cutting_scene(plan, survey.frame, survey.design.units))
    blocks: list[Block] = [
        Words(
            f"Pipe to buy: {cost}; {proven}. Saw the shortest pieces first, while the stick is long to hold."
        ),
        Picture("cutting-plan", "each stick with its pieces", svg),
        Caution(SAW),
    ]
    if plan.unsold:
        names = ", ".join(bar.name for bar in plan.unsold)
        blocks.insert(0, Words(f"No length on sale or in the box is long enough for: {names}."))
    return Page("cutting-plan", "Cutting plan", tuple(blocks))


def drill_sheet(survey: Survey) -> Page:
    """Every hole in a table, then templates to wrap round the pipe."""
    unit = survey.design.units
    rows = []
    for id, holes in holes_by_bar(survey).items():
        bar = survey.frame.bars[id]
        end = survey.frame.joints[bar.joints[0]].name
        for hole in holes:
            at, size = format_length(hole.from_end, unit), format_length(hole.diameter, unit)
            deep = "right through" if hole.through else "one wall"
            where = f"{at} from {end}, on the {side_words(hole.face)}"
            rows.append((f"{bar.letter} {bar.name}", hole.name, where, size, deep, "[ ]"))
    blocks: list[Block] = [
        Caution(DRILL),
        Words("Distances are from the sawn end of the pipe to the middle of the hole. Pilot hole first."),
        Table(
            ("pipe", "hole", "where", "drill", "depth", "done"),
            tuple(rows),
            (0.22, 0.26, 0.24, 0.09, 0.11, 0.08),
        ),
    ]
    papers = templates(survey)
    if papers:
        blocks.append(Heading("Templates, true size"))
        blocks.append(
            Words(
                "Cut one out, wrap it round its pipe with the print outside and the named edge on its line, "
                "turn the word for a side to that side of the vehicle, tape it, and punch through each cross."
            )
        )
        blocks += _alike(papers, survey)
    if not rows:
        blocks = [Words("Nothing is drilled in this design.")]
    return Page("drill-sheet", "Drill sheet", tuple(blocks))


def _alike(papers: tuple[Template, ...], survey: Survey) -> Iterator[Block]:
    for number, paper in enumerate(papers, 1):
        svg = template_svg(paper, survey.design.units)
        yield Picture(f"template-{number}", f"holes of {paper.bar.name}, true size", svg, True)


def build_list(survey: Survey, plan: PipePlan) -> Page:
    """Every step of the build, to tick."""
    done = done_steps(survey.design)
    blocks: list[Block] = [Words(DEFER)]
    for number, step in enumerate(build_steps(survey, plan), 1):
        blocks.append(Heading(f"{number}. {step.title}"))
        if step.cautions:
            blocks.append(Caution(step.cautions))
        blocks.append(Words(f"Tool: {step.tool}."))
        blocks.append(Listed(step.pieces))
        blocks.append(Listed((f"Done. {step.check}",), (step.id in done,)))
    return Page("build-list", "Build list", tuple(blocks))
