"""All that is printed of one design: the pages, and the files that they make."""

import re
from collections.abc import Callable, Sequence

from model.design import Design
from model.money.ledger_csv import csv_text, ledger_csv
from model.money.shopping import PipePlan, pipe_plan
from model.review import Report
from model.sheets.bench_pages import build_list, cut_sheet, drill_sheet, plan_page
from model.sheets.blocks import Page, PaperName, Picture
from model.sheets.drawing_pages import drawing_pages
from model.sheets.html import html_text
from model.sheets.notebook import notebook
from model.sheets.pool_pages import dive_sheet, inspection_sheet, pool_sheet, wiring_sheet
from model.sheets.shop_pages import shopping_list, shopping_rows
from model.survey import Survey
from model.units import METRES

Progress = Callable[[str, int, int], None]
"""Called with what is being made, its number and how many there are."""


def sheet_pages(report: Report, paper: PaperName) -> tuple[Page, ...]:
    """The pages of the pack, in the order in which they are used."""
    survey = report.survey
    plan = pipe_plan(report.design, survey.frame)
    wires = wiring_sheet(survey)
    return (
        shopping_list(survey, plan),
        *drawing_pages(survey, paper),
        cut_sheet(survey),
        plan_page(survey, plan),
        drill_sheet(survey),
        build_list(survey, plan),
        *((wires,) if wires else ()),
        inspection_sheet(survey),
        pool_sheet(survey),
        dive_sheet(),
    )


def sheet_files(
    report: Report,
    paper: PaperName,
    made: str = "",
    others: Sequence[Design] = (),
    told: Progress | None = None,
) -> dict[str, bytes]:
    """Every file of the pack by its name: PDF, notebook, drawings, tables.

    Args:
        made: the day, for the foot of each page.
        others: designs for the notebook to compare with.
        told: hears what is being made.
    """
    from model.sheets.pdf import pdf_bytes

    design = report.design
    pages = sheet_pages(report, paper)
    stem = file_stem(design.title)
    foot = " - ".join(word for word in (design.title, design.team, made) if word)
    files = {f"{stem}-sheets.pdf": pdf_bytes(pages, paper, design.title, foot, told)}
    if told:
        told("Notebook", len(pages), len(pages))
    files[f"{stem}-notebook.html"] = html_text(notebook(report, others), design.title).encode()
    for page in pages:
        for block in page.blocks:
            if isinstance(block, Picture):
                files[f"{stem}-{block.name}.svg"] = block.svg.encode()
    plan = pipe_plan(design, report.survey.frame)
    files[f"{stem}-cut-list.csv"] = cut_csv(report.survey).encode()
    files[f"{stem}-shopping-list.csv"] = shopping_csv(report.survey, plan).encode()
    files[f"{stem}-ledger.csv"] = ledger_csv(design).encode()
    return files


def cut_csv(survey: Survey) -> str:
    """The cut list as a table: lengths as plain numbers in mm and inches."""
    rows: list[tuple[str, ...]] = [("piece", "quantity", "length_mm", "length_in", "pipe", "bars")]
    for group in survey.cuts:
        inches = f"{group.cut / METRES['in']:.4f}"
        names = "; ".join(bar.name for bar in group.bars)
        rows.append(
            (group.letter, str(len(group.bars)), f"{group.cut * 1000:.2f}", inches, group.pipe.name, names)
        )
    return csv_text(rows)


def shopping_csv(survey: Survey, plan: PipePlan) -> str:
    """The shopping list as a table."""
    return csv_text([("what", "quantity", "each", "together", "counts"), *shopping_rows(survey, plan)])


def file_stem(title: str) -> str:
    """A title as the start of a file name that every system takes.

    >>> file_stem("Newt / 3: <final>"), file_stem("...")
    ('newt-3-final', 'vehicle')
    """
    words = re.findall(r"[a-z0-9]+", title.lower())
    return "-".join(words)[:40].strip("-") or "vehicle"
