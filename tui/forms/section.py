"""A section of a page: a form, a table with the form of its chosen item, or figures to read."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.widget import Widget
from textual.widgets import Static

from model.errors import PoolwrightError
from tui.forms.acts import Act, ActButton, Acts
from tui.forms.entry import Entry
from tui.forms.form import Form
from tui.forms.kinds import Options
from tui.forms.pick import Pick
from tui.forms.sight import reveal
from tui.messages import EditRequested

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.design.edits import Edit
    from model.review import Report


SOON = "..."
"""Stands for figures that are still being worked out: the fields do not wait for them."""


class Section(Vertical):
    """What every section can do.

    Attributes:
        title: what stands in the row of sections.
    """

    DEFAULT_CSS = """
    Section { height: auto; }
    Section > .error { color: $text-error; height: auto; }
    Section > .facts, Section > .note { height: auto; }
    """
    title = ""
    report: Report | None = None
    first_selectors = ("Input, Choice, Boxes, ItemTable", "ActButton")
    """What takes the focus first: a button only where there is nothing else, since Enter presses it."""

    def show(self, report: Report) -> None:
        """Show a new report."""
        raise NotImplementedError

    def finds(self, report: Report, about: About) -> bool:
        """Whether what a finding is about stands in this section."""
        raise NotImplementedError

    def point_at(self, about: About) -> None:
        """Put the focus on what a finding is about."""
        self.focus_first()

    def focus_first(self) -> None:
        """Put the focus on the first thing that takes it, as soon as there is one."""
        if not self._focus_now():
            self.call_after_refresh(self._focus_now)

    def _focus_now(self) -> bool:
        for selector in self.first_selectors:
            for widget in self.query(selector):
                if widget.focusable and all(node.display for node in widget.ancestors_with_self):
                    self.screen.set_focus(widget)
                    return True
        return False

    def help_of(self, widget: Widget) -> str:
        """What the field or the table that has the focus is for, or ""."""
        row = widget.parent.row_of(widget) if isinstance(widget.parent, Form) else None
        return row.help if row else ""

    def on_act_button_pressed(self, event: ActButton.Pressed) -> None:
        """Do what the button says."""
        event.stop()
        event.act.run(self)

    def say(self, words: str) -> None:
        """Say in one sentence what could not be done, or nothing."""
        error = self.query_one(".error", Static)
        put_text(error, words)
        if words:
            reveal(error)

    def ask(self, label: str, edit: Edit) -> None:
        """Ask for an edit; what cannot be done is said here in one sentence."""
        if self.report is None:
            return
        try:
            edit(self.report.design)
        except PoolwrightError as problem:
            words = str(problem).rstrip(".")
            self.say(f"! {words[:1].upper()}{words[1:]}.")
            return
        self.say("")
        self.post_message(EditRequested(label, edit))

    def pick(self, question: str, options: Options, then: Callable[[Any], None], present: Any = None) -> None:
        """Let one thing be picked, and go on with it."""

        def picked(answer: tuple[Any] | None) -> None:
            if answer is not None:
                then(answer[0])

        self.app.push_screen(Pick(question, options, present), picked)

    def repaint(self) -> None:
        """Put back what the design has, where nothing is being typed."""
        for form in self.query(Form):
            form.repaint()


class FormSection(Section):
    """Figures to read, and a form.

    Args:
        title: in the row of sections.
        entries: the entries in a report.
        facts: derived numbers above the form.
        kinds: the kinds of thing that are put right here.
    """

    def __init__(
        self,
        title: str,
        entries: Callable[[Report], tuple[Entry, ...]],
        facts: Callable[[Report], str] | None = None,
        kinds: tuple[str, ...] = (),
        acts: tuple[Act, ...] = (),
    ) -> None:
        self.title, self.entries, self.facts, self.kinds, self.acts = title, entries, facts, kinds, acts
        super().__init__()

    def compose(self) -> ComposeResult:
        """The figures, the buttons, the form."""
        if self.facts:
            yield Static("", markup=False, classes="facts")
        if self.acts:
            yield Acts(self.acts)
        yield hidden_static("error")
        yield Form()

    def show(self, report: Report) -> None:
        """Show a new report."""
        self.report = report
        if self.facts:
            put_text(self.query_one(".facts", Static), self.facts(report) if report.ready else SOON)
        self.query_one(Form).show(report, self.entries(report))

    def finds(self, report: Report, about: About) -> bool:
        """Whether it is one of the kinds of this section."""
        return about.kind in self.kinds


def hidden_static(name: str) -> Static:
    """A Static of a class that takes no line until there is something to say."""
    widget = Static("", markup=False, classes=name)
    widget.display = False
    return widget


def put_text(widget: Static, text: str) -> None:
    """New text in a Static, only where it differs: painting costs time.  An empty one takes no line."""
    if str(widget.content) != text:
        widget.update(text)
    widget.display = bool(text)
