"""One row of a form: label, entry, unit, and under it the sentence when the entry was refused."""

from __future__ import annotations

from contextlib import contextmanager
from textwrap import wrap
from typing import TYPE_CHECKING, Any

from textual.containers import Grid
from textual.content import Content
from textual.widget import Widget
from textual.widgets import Checkbox, Input

from model.errors import PoolwrightError
from tui.forms.box import Box
from tui.forms.choice import Choice
from tui.forms.entry import Entry
from tui.forms.kinds import Chosen, Several, Typed, YesNo
from tui.messages import EditRequested

if TYPE_CHECKING:
    from collections.abc import Iterator

    from textual.widgets import TextArea

    from model.design import Design
    from model.review import Report

LABEL_WIDTH = 23
UNIT_WIDTH = 9
LONG_HEIGHT = 3
SEVERAL_COLUMNS = 3


def _text_area() -> TextArea:
    from textual.widgets import TextArea  # few pages have one

    area = TextArea(compact=True)
    area.styles.border = ("none", "transparent")  # three lines leave no room for one
    return area


class FieldRow(Widget):
    """Draws its label, unit and sentence itself, so that a row is two widgets and not five."""

    DEFAULT_CSS = """
    FieldRow { height: 1; layout: horizontal; }
    FieldRow > * { margin-left: 23; margin-right: 9; width: 1fr; }
    FieldRow > Input { height: 1; padding: 0 1; }
    FieldRow > TextArea { height: 3; border: none; padding: 0; }
    FieldRow > Checkbox { width: auto; }
    FieldRow > Grid { grid-size: 3; height: 2; margin: 0 0 0 23; grid-rows: 1; }
    """

    def __init__(self, entry: Entry, report: Report) -> None:
        self.entry, self.report = entry, report
        self.refusal = ""
        self.pending = False
        self._shown: tuple[Any, ...] = ()
        kind = entry.kind
        options = kind.options if isinstance(kind, Several) else ()
        self.boxes = [Box(words, compact=True) for words, _ in options]
        self._editor = self._make_editor()
        super().__init__(self._editor)
        self.styles.height = self._editor_height()

    def _make_editor(self) -> Widget:
        """The editor for the kind of value; as far as it can be filled before it is mounted."""
        kind = self.entry.kind
        if isinstance(kind, Typed):
            text = self._text(self.entry.get(self.report))
            return _text_area() if kind.long else Input(text, compact=True)
        if isinstance(kind, Chosen):
            return Choice(self.entry.label)
        if isinstance(kind, YesNo):
            return Box("yes", self.entry.get(self.report), compact=True)
        return Grid(*self.boxes)

    def on_mount(self) -> None:
        """Fill what is not filled by its constructor."""
        self.repaint()

    def on_resize(self) -> None:
        """A refusal may need more or fewer lines."""
        if self.refusal:
            self._set_height()

    @property
    def editor(self) -> Widget:
        """The widget that takes the focus."""
        return self.boxes[0] if self.boxes else self._editor

    def render(self) -> Content:
        """Label on the left, unit on the right, the refusal on the lines below."""
        label = self.entry.label[: LABEL_WIDTH - 1].ljust(LABEL_WIDTH)
        gap = max(0, self.size.width - LABEL_WIDTH - UNIT_WIDTH + 1)
        parts: list[Any] = [label, (" " * gap + self._unit()[: UNIT_WIDTH - 1], "dim")]
        blank = "\n" * (self._editor_height() - 1)
        parts += [(f"{blank}\n{line}", "$text-error") for line in self._refusal_lines()]
        return Content.assemble(*parts)

    def show(self, report: Report, entry: Entry) -> None:
        """Show the value in a new report, which may be that of another record.

        What is being typed stays while the value under it stays.
        """
        self.entry, self.report = entry, report
        if self.is_mounted and self._look() != self._shown:
            self.refuse("")
            self.repaint()
            self.refresh()

    def _look(self) -> tuple[Any, ...]:
        """What decides how the row looks."""
        kind = self.entry.kind
        options = kind.options(self.report) if isinstance(kind, Chosen) else ()
        return self.entry.about, self.entry.label, self._unit(), self.entry.get(self.report), options

    def repaint(self) -> None:
        """Set the editor to the value of the design, without asking for a change."""
        value, editor = self.entry.get(self.report), self.editor
        self.pending, self._shown = False, self._look()
        with self._quiet():
            if isinstance(editor, Input):
                editor.value = self._text(value)
            elif isinstance(editor, Choice) and isinstance(self.entry.kind, Chosen):
                editor.options, editor.value = self.entry.kind.options(self.report), value
            elif isinstance(self.entry.kind, Several):
                for (_, each), box in zip(self.entry.kind.options, self.boxes, strict=True):
                    box.value = each in value
            elif isinstance(editor, Checkbox):
                editor.value = value
            else:
                editor.text = self._text(value)

    @contextmanager
    def _quiet(self) -> Iterator[None]:
        with self.prevent(type(self.editor).Changed):
            yield

    def refuse(self, sentence: str) -> None:
        """Show one sentence under the field, or none."""
        if sentence != self.refusal:
            self.refusal = sentence
            self._set_height()
            self.refresh()

    def commit(self, *, leaving: bool = False) -> None:
        """Ask for the edit that was typed; a refused one says why, and what was there stays."""
        if not self.pending:
            return
        editor = self.editor
        typed = editor.value if isinstance(editor, Input) else getattr(editor, "text", "")
        if typed == self._text(self.entry.get(self.report)):
            self.pending = False
            self.refuse("")
            return
        try:
            value = self._read(typed)
            self._ask(value, typed)
        except PoolwrightError as problem:
            self.refuse(self._sentence(problem, leaving))
            if leaving:
                self.repaint()

    def _sentence(self, problem: PoolwrightError, leaving: bool) -> str:
        words = str(problem).rstrip(".")
        if not leaving:
            return f"! {words}."
        kept = self._text(self.entry.get(self.report)) or "empty"
        return f"! {words}; it is still {kept}."

    def _read(self, typed: str) -> Any:
        kind = self.entry.kind
        assert isinstance(kind, Typed)
        if self.entry.optional and not typed.strip():
            return None
        return kind.read(typed, self.report.design.units)

    def _ask(self, value: Any, words: str) -> None:
        """Try the edit here, so that a refusal stands beside its field, and ask for it."""
        edit = self.entry.edit(value)
        edit(self.report.design)
        self.pending = False
        self.refuse("")
        about = f" of {self.entry.about}" if self.entry.about else ""
        shown = " ".join(words.split())[:40] or "empty"
        unit = f" {self._unit()}" if self._unit() and words[-1:].isdigit() else ""
        self.post_message(EditRequested(f"{self.entry.label}{about}: {shown}{unit}", edit))

    def _choose(self, value: Any, words: str) -> None:
        try:
            self._ask(value, words)
        except PoolwrightError as problem:
            self.refuse(f"! {str(problem).rstrip('.')}.")
            self.repaint()

    def on_input_changed(self, event: Input.Changed) -> None:
        """Something was typed; nothing is asked yet."""
        event.stop()
        self.pending = True

    def on_text_area_changed(self, event: TextArea.Changed) -> None:
        """Something was typed; nothing is asked yet."""
        event.stop()
        self.pending = True

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Enter asks for the change."""
        event.stop()
        self.commit()

    def on_descendant_blur(self) -> None:
        """Leaving the field asks for the change."""
        self.commit(leaving=True)

    def on_choice_changed(self, event: Choice.Changed) -> None:
        """Something else was chosen."""
        event.stop()
        words = next((words for words, value in event.choice.options if value == event.value), "")
        self._choose(event.value, words)

    def on_checkbox_changed(self, event: Checkbox.Changed) -> None:
        """Yes or no, or one of several."""
        event.stop()
        kind = self.entry.kind
        if isinstance(kind, Several):
            value = tuple(each for (_, each), box in zip(kind.options, self.boxes, strict=True) if box.value)
            self._choose(value, ", ".join(str(each) for each in value))
        else:
            self._choose(event.value, "yes" if event.value else "no")

    def _text(self, value: Any) -> str:
        kind = self.entry.kind
        if value is None or not isinstance(kind, Typed):
            return ""
        return kind.show(value, self.report.design.units)

    def _unit(self) -> str:
        kind = self.entry.kind
        if not isinstance(kind, Typed):
            return ""
        design: Design = self.report.design
        return {"length": design.units, "money": design.brief.currency}.get(kind.unit, kind.unit)

    def _editor_height(self) -> int:
        kind = self.entry.kind
        if isinstance(kind, Several):
            return -(-len(kind.options) // SEVERAL_COLUMNS)
        return LONG_HEIGHT if isinstance(kind, Typed) and kind.long else 1

    def _refusal_lines(self) -> list[str]:
        return wrap(self.refusal, max(20, self.size.width)) if self.refusal else []

    def _set_height(self) -> None:
        self.styles.height = self._editor_height() + len(self._refusal_lines())
