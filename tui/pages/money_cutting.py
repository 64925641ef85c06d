"""The section Cutting: which pieces come out of which stick, at the least cost."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.money.shopping import LaidStick, PipePlan, laid, pipe_plan
from model.units import format_length
from tui.forms.proposal import Offer, ProposalSection, Way
from tui.pages.words import money, shown
from tui.raster.sticks import stick_row

if TYPE_CHECKING:
    from model.review import Report

WIDE = 50
"""Cells of the longest stick."""


def cutting_section() -> ProposalSection:
    """The section Cutting."""
    ways = (Way("plan", "Work out the cutting plan", plan_offer),)
    return ProposalSection("Cutting", standing, ways, takes=False)


def standing(report: Report) -> str:
    """What goes into the plan."""
    stock = report.design.stock
    count = sum(bool(bar.cut and bar.cut > 0) for bar in report.survey.frame.bars.values())
    held = sum(piece.count for piece in stock.on_hand.pieces)
    return (
        f"{count} pieces; the saw eats {shown(report, stock.kerf)} a cut. "
        f"{held} pieces of pipe are in the box and come first (Stock page)."
    )


def plan_offer(report: Report) -> Offer:
    """The plan of each pipe size, stick by stick, to scale."""
    plan = pipe_plan(report.design, report.survey.frame)
    lines = [*_bought(report, plan), *_unsold(report, plan)]
    longest = max((stick.source.length for each in plan.plans for stick in each.sticks), default=1.0)
    number = 0
    for each in plan.plans:
        for stick in laid(each, report.survey.frame):
            number += 1
            lines += _stick(report, number, each.pipe.name, stick, longest)
    return Offer("", "\n".join(lines), None)


def _bought(report: Report, plan: PipePlan) -> list[str]:
    lines = [
        f"Buy {line.quantity} x {shown(report, line.length)} of {line.pipe.name}, {money(report, line.total)}"
        for line in plan.to_buy
    ]
    if not plan.plans:
        return ["There is nothing to cut yet."]
    proof = "no plan is cheaper" if plan.proven else "a cheaper plan is not ruled out"
    return [*lines, f"Pipe costs {money(report, plan.cost)}: {proof}."]


def _unsold(report: Report, plan: PipePlan) -> list[str]:
    return [f"! No stick is long enough for {bar.name}, {shown(report, bar.cut)}." for bar in plan.unsold]


def _stick(report: Report, number: int, pipe: str, stick: LaidStick, longest: float) -> list[str]:
    where = "from the box" if stick.source.on_hand else "bought"
    rest = shown(report, stick.rest)
    pieces = [(bar.letter, bar.cut or 0.0) for bar in stick.bars]
    cells = max(1, round(WIDE * stick.source.length / longest))
    named = ", ".join(
        f"{letter} {format_length(cut, report.design.units, with_unit=False)}" for letter, cut in pieces
    )
    return [
        f"Stick {number}: {shown(report, stick.source.length)} of {pipe}, {where}; left over {rest}",
        stick_row(pieces, stick.rest, cells),
        f"  {named}",
    ]
