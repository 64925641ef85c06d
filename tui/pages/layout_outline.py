"""The section Outline: how much it shows to the water, and what it passes through."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.hoop import smallest_gate, smallest_hoop
from model.silhouette import silhouettes
from tui.forms.items import Column, Row
from tui.forms.listing import Listing
from tui.pages.words import area, bare, shown

if TYPE_CHECKING:
    from model.review import Report

NOTES = {
    "front": "What stops it when it drives ahead. Less is quicker.",
    "side": "What stops it when it slides sideways, or when the water pushes it.",
    "top": "What stops it when it climbs or dives.",
    "hoop": "The smallest ring that it can drive through, straight ahead. Leave room for steering.",
    "gate": "Its whole width and height from ahead. Leave room for steering.",
}
VIEWS = (("front", "seen from ahead"), ("side", "seen from the side"), ("top", "seen from above"))


def outline_rows(report: Report) -> list[Row]:
    """Three areas, the smallest hoop and the smallest gate."""
    survey, brief = report.survey, report.design.brief
    if not survey.parts:
        return []
    areas = silhouettes(survey.parts)
    hoop, gate = smallest_hoop(survey.parts), smallest_gate(survey.parts)
    rows = [Row(view, (words, area(getattr(areas, view)), "-")) for view, words in VIEWS]
    if hoop:
        limit = "no rule" if brief.hoop is None else shown(report, brief.hoop)
        rows.append(Row("hoop", ("smallest hoop", shown(report, hoop.diameter), limit)))
    if gate:
        wide = " x ".join(bare(report, side) for side in gate)
        limit = "no rule" if brief.gate is None else " x ".join(bare(report, side) for side in brief.gate)
        rows.append(Row("gate", ("smallest gate, wide x high", wide, limit)))
    return rows


def outline_note(report: Report, key: str) -> str:
    """What a line means, and whether the vehicle passes through what the brief has."""
    limits = {"hoop": report.design.brief.hoop, "gate": report.design.brief.gate}
    if limits.get(key) is None:
        return NOTES[key]
    tight = any(finding.code == f"size.{key}-tight" for finding in report.findings)
    verdict = f"It does not pass through the {key} of the brief." if tight else "It passes."
    return f"{NOTES[key]} {verdict}"


OUTLINE = Listing(
    title="Outline",
    columns=(Column("Outline"), Column("This one", 16, right=True), Column("The brief", 12, right=True)),
    rows=outline_rows,
    entries=lambda report, key: (),
    marks=lambda report, key: (key, ""),
    empty="No bars yet: there is nothing to see.",
    note=outline_note,
)
