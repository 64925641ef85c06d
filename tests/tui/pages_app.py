"""An app with one page and nothing else: it keeps the design, makes the edits, takes them back."""

from importlib import import_module
from pathlib import Path
from typing import Any

from textual.app import App, ComposeResult
from textual.pilot import Pilot
from textual.widgets import Input

import tui
from model.design import Design
from model.errors import PoolwrightError
from model.presets import load_preset, presets
from model.review import Report, review
from tui.forms.form import Form
from tui.forms.row import FieldRow
from tui.messages import EditRequested, MarkRequested
from tui.pages.page import Page

PAGES = (
    "brief",
    "stock",
    "layout",
    "fittings",
    "thrusters",
    "gear",
    "wires",
    "floats",
    "holes",
    "money",
    "build",
    "pool",
)
SIZES = ((78, 18), (56, 32))
"""Columns and lines that a page gets within its margins on a screen of 80 x 24 and of 120 x 40."""


class PageApp(App[None]):
    """One page on a design, dressed as in the session."""

    CSS_PATH = str(Path(tui.__file__).parent / "session.tcss")
    VERTICAL_BREAKPOINTS = [(0, "-short"), (30, "-tall")]
    BINDINGS = [("f2", "undo", "Undo")]

    def __init__(self, key: str, design: Design) -> None:
        super().__init__()
        self.key, self.design, self.past = key, design, []
        self.labels: list[str] = []
        self.marked: list[tuple[str, str]] = []

    def compose(self) -> ComposeResult:
        yield getattr(import_module(f"tui.pages.{self.key}"), f"{self.key.title()}Page")(
            id=f"page-{self.key}"
        )

    @property
    def page(self) -> Page:
        return self.query_one(Page)

    @property
    def report(self) -> Report:
        return review(self.design)

    def on_mount(self) -> None:
        self.page.report = self.report
        self.page.focus_first()

    def on_edit_requested(self, event: EditRequested) -> None:
        try:
            changed = event.edit(self.design)
        except PoolwrightError:
            self.page.refresh_fields()
            return
        if changed != self.design:
            self.past.append(self.design)
            self.labels.append(event.label)
            self.present(changed)

    def on_mark_requested(self, event: MarkRequested) -> None:
        self.marked.append((event.kind, event.id))

    def action_undo(self) -> None:
        if self.past:
            self.present(self.past.pop())

    def present(self, design: Design) -> None:
        self.design = design
        self.page.report = self.report

    @property
    def rows(self) -> list[FieldRow]:
        """The rows of the open section."""
        return [row for form in self.page.section.query(Form) for row in form.rows]

    def row(self, key: str) -> FieldRow:
        """The row of an entry in the open section."""
        return next(row for row in self.rows if row.entry.key == key)

    def field(self, key: str) -> Any:
        """The editor in the row of an entry."""
        return self.row(key).editor

    def text(self) -> str:
        """What stands on the screen."""
        rows = self.screen._compositor.render_strips()
        return "\n".join("".join(segment.text for segment in strip).rstrip() for strip in rows)


def demo() -> Design:
    """The finished demo design."""
    design = load_preset(presets("demo")[0])
    assert isinstance(design, Design)
    return design


async def typed(pilot: Pilot[None], field: Input, text: str, *then: str) -> None:
    """Put the focus on a field, write a text in its place, press some keys."""
    field.focus()
    await pilot.pause()
    field.action_home()
    field.action_delete_right_all()
    for letter in text:
        await pilot.press("space" if letter == " " else letter)
    await pilot.press(*then)
    await pilot.pause()


async def opened(app: PageApp, pilot: Pilot[None], title: str) -> Any:
    """The section of a title, opened."""
    titles = [each for each, _ in app.page.makers()]
    section = await app.page.open_section(titles.index(title))
    await pilot.pause()
    return section
