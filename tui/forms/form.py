"""A form: rows for the entries of one record at a time."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content
from textual.message import Message
from textual.widget import Widget
from textual.widgets import Input

from tui.forms.boxes import Boxes
from tui.forms.choice import Choice
from tui.forms.entry import Entry
from tui.forms.row import FieldRow
from tui.forms.sight import reveal

if TYPE_CHECKING:
    from textual.events import DescendantBlur
    from textual.widgets import TextArea

    from model.review import Report


class Form(Widget):
    """Shows entries; the rows stay where the new entries have the same keys.

    It draws labels, units and refusals itself; only the editors are widgets.
    """

    DEFAULT_CSS = """
    Form { height: auto; layout: vertical; }
    Form > * { margin: 0 9 0 23; width: 1fr; }
    Form > Input { height: 1; padding: 0 1; }
    Form > TextArea { height: 3; border: none; padding: 0; }
    Form > .-no-unit { margin: 0 0 0 23; }
    """

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "escape", "give_up", "As it was", id="form.back", show=False, tooltip="Forget what is half typed"
        )
    ]

    class Shown(Message):
        """Other values are shown, and what a field is for may have changed with them."""

    def __init__(self) -> None:
        self.rows: list[FieldRow] = []
        """From top to bottom."""
        super().__init__()

    def render(self) -> Content:
        """What stands round the editors."""
        width = self.size.width
        return Content("\n").join(line for row in self.rows for line in row.lines(width))

    def show(self, report: Report, entries: tuple[Entry, ...]) -> None:
        """Show these entries with their values in a report."""
        if [entry.key for entry in entries] != [row.entry.key for row in self.rows]:
            self.remove_children()
            self.rows = [FieldRow(self, entry, report) for entry in entries]
            self.mount_all([row.editor for row in self.rows])
            return
        for row, entry in zip(self.rows, entries, strict=True):
            row.show(report, entry)
        self.post_message(self.Shown())

    def repaint(self) -> None:
        """Put back the values of the design, save where something is being typed."""
        for row in self.rows:
            if not row.pending:
                row.repaint()

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Esc belongs to the form only while something is half typed."""
        return action != "give_up" or self._half_typed() is not None

    def action_give_up(self) -> None:
        """Put back what stood in the field, and stay there."""
        if row := self._half_typed():
            row.refuse("")
            row.repaint()

    def _half_typed(self) -> FieldRow | None:
        row = self.row_of(self.screen.focused)
        return row if row is not None and row.pending else None

    def row_of(self, editor: Widget | None) -> FieldRow | None:
        """The row of an editor, None where it is gone."""
        return next((row for row in self.rows if row.editor is editor), None)

    def on_resize(self) -> None:
        """A refusal may need more or fewer lines."""
        for row in self.rows:
            if row.refusal:
                row.make_room()

    def on_input_changed(self, event: Input.Changed) -> None:
        """Something was typed; nothing is asked yet."""
        self._typed(event)

    def on_text_area_changed(self, event: TextArea.Changed) -> None:
        """Something was typed; nothing is asked yet."""
        self._typed(event)

    def _typed(self, event: Input.Changed | TextArea.Changed) -> None:
        event.stop()
        if (row := self.row_of(event.control)) and not row.pending:
            row.pending = True
            reveal(row.editor)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Enter asks for the change."""
        event.stop()
        if row := self.row_of(event.control):
            row.commit()

    def on_descendant_blur(self, event: DescendantBlur) -> None:
        """Leaving the field asks for the change."""
        if row := self.row_of(event.widget):
            row.commit(leaving=True)

    def on_choice_changed(self, event: Choice.Changed) -> None:
        """Something else was chosen."""
        event.stop()
        if row := self.row_of(event.choice):
            words = next((words for words, value in event.choice.options if value == event.value), "")
            row.choose(event.value, words)

    def on_boxes_changed(self, event: Boxes.Changed) -> None:
        """A box was ticked, or its tick taken away."""
        event.stop()
        if row := self.row_of(event.boxes):
            row.tick(event.boxes.ticked)
