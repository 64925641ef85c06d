"""Pages for the pool: the card, the lists, the inspection sheet, and the wiring."""

from model.building.cautions import DEFER, ELECTRIC, WATER
from model.drawing.diagram_svg import diagram_svg
from model.drawing.wires import wiring_scene
from model.pool.card import kit_words, pool_card
from model.pool.safety import AFTER_DIVE, PRE_DIVE, inspection
from model.power.diagram import wiring_lines
from model.sheets.blocks import Block, Caution, Heading, Listed, Page, Picture, Signature, Table, Words
from model.survey import Survey


def pool_sheet(survey: Survey) -> Page:
    """What to expect and to measure, with room to write."""
    card = pool_card(survey)
    rows = tuple((line.title, line.model, line.spread, line.measured, "") for line in card)
    columns = ("what", "the model says", "how sure", "measured last", "measured today")
    how = tuple(f"{line.title}: {line.how}" for line in card)
    blocks: tuple[Block, ...] = (
        Caution(WATER),
        Table(columns, rows, (0.2, 0.22, 0.24, 0.16, 0.18)),
        Heading("Take along"),
        Listed(tuple(kit_words(survey))),
        Heading("How to measure"),
        Listed(how),
    )
    return Page("pool-card", "Pool card", blocks)


def dive_sheet() -> Page:
    """What is gone through before and after every dive."""
    blocks: tuple[Block, ...] = (
        Caution(WATER),
        Heading("Before the dive"),
        Listed(PRE_DIVE, (False,) * len(PRE_DIVE)),
        Heading("After the dive"),
        Listed(AFTER_DIVE, (False,) * len(AFTER_DIVE)),
        Words(DEFER),
        Signature(("Tether handler", "Driver", "At the battery", "Date")),
    )
    return Page("dive-list", "Before and after the dive", blocks)


def inspection_sheet(survey: Survey) -> Page:
    """What an adult looks at and signs."""
    checks = inspection(survey)
    blocks: tuple[Block, ...] = (
        Words("To be gone through by an adult, with the team, before the first dive and after every change."),
        Listed(checks, (False,) * len(checks)),
        Words(DEFER),
        Signature(("Name of the adult", "Signature", "Date", "Kept out of the water because of")),
    )
    return Page("inspection", "Inspection sheet", blocks)


def wiring_sheet(survey: Survey) -> Page | None:
    """The wiring as planned, or None where none is."""
    wires = survey.wiring
    if wires is None:
        return None
    unit = survey.design.units
    blocks: tuple[Block, ...] = (
        Caution(ELECTRIC),
        Picture(
            "wiring",
            "battery, fuses, switches and motors",
            diagram_svg(wiring_scene(survey.arrangement, wires, unit)),
        ),
        Listed(wiring_lines(survey.arrangement, wires, unit)),
    )
    return Page("wiring", "Wiring sheet", blocks, across=True)
