"""Drawings to scale, each on a page across."""

from model.drawing.scene import Place, Sheet
from model.drawing.solid import solid_sheet
from model.drawing.svg import sheet_svg
from model.sheets.blocks import PAPERS, Page, PaperName, Picture
from model.survey import Survey

HEAD = 12.0
"""[mm] That the head of a page takes."""
ROUND = 10.0
"""[mm] Margin round a drawing."""


def drawing_pages(survey: Survey, paper: PaperName) -> tuple[Page, ...]:
    """The three views with their dimensions, and one from the corner."""
    if not survey.frame.bars:
        return ()
    tall, wide = PAPERS[paper]
    size = (wide - 2 * ROUND, tall - 2 * ROUND - HEAD)
    title = _title(survey)
    sheet = solid_sheet(survey)
    views = sheet_svg(sheet, title, size)
    turned = next(place.scene for place in sheet.places if place.scene.name == "oblique")
    corner = sheet_svg(Sheet("", (Place(turned, 0, 0),)), title, size)
    return (
        Page(
            "drawing",
            "Drawing, three views",
            (Picture("three-views", "front, top and side", views, True),),
            True,
        ),
        Page("view", "Drawing, from the bow and port", (Picture("view", "the vehicle", corner, True),), True),
    )


def _title(survey: Survey) -> str:
    team = survey.design.team
    return f"{survey.design.title}, {team}" if team else survey.design.title
