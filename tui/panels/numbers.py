"""The numbers that every step moves: size against its limit, weight, lift, trim, money."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from model.units import format_mass
from tui.phrases import lift_text, money_text, size_lines, trim_text

if TYPE_CHECKING:
    from tui.guide import Shown


class NumbersPanel(Widget):
    """The numbers, one to a line."""

    shown: reactive[Shown | None] = reactive(None)

    def render(self) -> Content:
        """The lines as text: a bold name, then the value."""
        return Content("\n").join(
            Content.assemble((f"{name:<10}", "$text-muted"), text) for name, text in self.lines()
        )

    def lines(self) -> list[tuple[str, str]]:
        """The name and the value of each number."""
        if self.shown is None or not self.shown.ready:
            return []
        survey, unit = self.shown.report.survey, self.shown.report.design.units
        return [
            *size_lines(survey.extents, unit),
            ("Weight", format_mass(survey.balance.mass)),
            ("In water", lift_text(survey.balance)),
            ("Trim", trim_text(survey.balance)),
            ("Money", money_text(survey)),
        ]
