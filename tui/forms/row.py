"""One row of a form: label, editor, unit, and under it the sentence when the entry was refused."""

from __future__ import annotations

from textwrap import wrap
from typing import TYPE_CHECKING, Any

from textual.content import Content
from textual.widgets import Input

from model.errors import LengthError, PoolwrightError
from tui.forms.boxes import Boxes
from tui.forms.choice import Choice
from tui.forms.entry import Entry
from tui.forms.kinds import Chosen, Several, Typed
from tui.forms.line import Line
from tui.forms.sight import reveal
from tui.messages import EditRequested

if TYPE_CHECKING:
    from textual.widget import Widget
    from textual.widgets import TextArea

    from model.design import Design
    from model.design.limits import Limits
    from model.review import Report

LABEL_WIDTH = 23
UNIT_WIDTH = 9
LONG_HEIGHT = 3
YES = (("yes", True),)


def _text_area(text: str) -> TextArea:
    from textual.widgets import TextArea  # few pages have one

    area = TextArea(text, compact=True)
    area.styles.border = ("none", "transparent")  # three lines leave no room for one
    return area


class FieldRow:
    """An entry with its editor; the form draws what stands round it, so that a row is one widget, not five.

    Args:
        form: where the editor is; it is painted and laid out anew where the row changes.
        entry: what can be typed or chosen.
        report: where its value comes from.
    """

    def __init__(self, form: Widget, entry: Entry, report: Report) -> None:
        self.form, self.entry, self.report = form, entry, report
        self.refusal = ""
        self.pending = False
        self.editor = self._make_editor()
        """The widget that takes the focus."""
        self._fit()
        self._shown = self._look()

    def _make_editor(self) -> Widget:
        """The editor for the kind of value, with the value in it."""
        kind, value = self.entry.kind, self.entry.get(self.report)
        if isinstance(kind, Typed):
            return (_text_area if kind.long else Line)(self._text(value))
        if isinstance(kind, Chosen):
            return Choice(self.entry.label, kind.options(self.report), value)
        return Boxes(kind.options if isinstance(kind, Several) else YES, self._ticked())

    def _fit(self) -> None:
        """Where no unit stands behind it, the editor takes that room too."""
        styled = self.editor.is_attached  # what comes to be is styled when it is put on the page
        self.editor.set_class(not self._unit(), "-no-unit", update=styled)

    def _ticked(self) -> tuple[Any, ...]:
        """The values whose boxes are ticked."""
        value = self.entry.get(self.report)
        return tuple(value) if isinstance(self.entry.kind, Several) else (True,) * bool(value)

    @property
    def help(self) -> str:
        """What the field is for, and the keys where they are not plain."""
        keys = " Left and right choose a box, Space ticks it." if isinstance(self.entry.kind, Several) else ""
        return f"{' '.join(self.entry.told.split())}{keys}"

    def lines(self, width: int) -> list[Content]:
        """What stands round the editor: label on the left, unit on the right, the refusal below."""
        label = self.entry.label[: LABEL_WIDTH - 1].ljust(LABEL_WIDTH)
        gap = max(0, width - LABEL_WIDTH - UNIT_WIDTH + 1)
        first = Content.assemble(label, (" " * gap + self._unit()[: UNIT_WIDTH - 1], "dim"))
        below = [Content("")] * (self._editor_height() - 1)
        return [first, *below, *(Content.styled(line, "$text-error") for line in self._refusal_lines())]

    def show(self, report: Report, entry: Entry) -> None:
        """Show the value in a new report, which may be that of another record.

        What is being typed stays while the value under it stays.
        """
        self.entry, self.report = entry, report
        if self._look() != self._shown:
            self._fit()
            self.refuse("")
            self.repaint()
            self.form.refresh()

    def _look(self) -> tuple[Any, ...]:
        """What decides how the row looks."""
        kind = self.entry.kind
        options = kind.options(self.report) if isinstance(kind, Chosen) else ()
        return self.entry.about, self.entry.label, self._unit(), self.entry.get(self.report), options

    def repaint(self) -> None:
        """Set the editor to the value of the design, without asking for a change."""
        value, editor = self.entry.get(self.report), self.editor
        self.pending, self._shown = False, self._look()
        with self.form.prevent(type(editor).Changed):
            if isinstance(editor, Line):
                editor.value = self._text(value)
            elif isinstance(editor, Choice) and isinstance(self.entry.kind, Chosen):
                editor.options, editor.value = self.entry.kind.options(self.report), value
            elif isinstance(editor, Boxes):
                editor.ticked = self._ticked()
            else:
                editor.text = self._text(value)

    def refuse(self, sentence: str) -> None:
        """Show one sentence under the field, or none."""
        if sentence != self.refusal:
            self.refusal = sentence
            self.make_room()
            self.form.refresh()
            if sentence:
                reveal(self.editor)

    def make_room(self) -> None:
        """Leave as many lines below the editor as its refusal takes."""
        top, right, _, left = self.editor.styles.margin
        self.editor.styles.margin = (top, right, len(self._refusal_lines()), left)

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
            self.refuse(self._sentence(problem, typed, leaving))
            if leaving:
                self.repaint()

    def _sentence(self, problem: PoolwrightError, typed: str, leaving: bool) -> str:
        words = str(problem).rstrip(".")
        if words.startswith("expected "):  # a check of the document, which does not know the field's name
            from tui.forms.refusal import found_words  # seldom needed

            words = f"{self.entry.label}: found {found_words(typed, self._unit())}; {words}"
        said = f"! {words[:1].upper()}{words[1:]}."
        if not leaving:
            return said
        return f"{said} It is still {self._text(self.entry.get(self.report)) or 'empty'}."

    def _read(self, typed: str) -> Any:
        kind = self.entry.kind
        assert isinstance(kind, Typed)
        if self.entry.optional and not typed.strip():
            return None
        value = kind.read(typed, self.report.design.units)
        limits = self.entry.allowed(self.report)
        if limits is not None and not limits.hold(value):
            raise LengthError(self._beyond(limits, value, typed))
        return value

    def _beyond(self, limits: Limits, value: Any, typed: str) -> str:
        """What is said of a value beyond its limits, with the name of the field."""
        from tui.forms.refusal import bound_words, found_words, refusal  # seldom needed

        kind, unit = self.entry.kind, self._unit()
        assert isinstance(kind, Typed)

        def say(bound: float) -> str:
            return bound_words(kind, bound, self.report.design.units, unit)

        return f"{self.entry.label}: {refusal(limits, value, found_words(typed, unit), say)}"

    def _ask(self, value: Any, words: str) -> None:
        """Try the edit here, so that a refusal stands beside its field, and ask for it."""
        edit = self.entry.edit(value)
        edit(self.report.design)
        self.pending = False
        self.refuse("")
        label = self.entry.label
        if self.entry.about:
            label = f"{self.entry.about}, {label[:1].lower()}{label[1:]}"
        shown = " ".join(words.split())[:40] or "empty"
        unit = f" {self._unit()}" if self._unit() and words[-1:].isdigit() else ""
        self.form.post_message(EditRequested(f"{label}: {shown}{unit}", edit))

    def choose(self, value: Any, words: str) -> None:
        """Ask for the edit that was chosen; a refused one says why, and what was there stays."""
        try:
            self._ask(value, words)
        except PoolwrightError as problem:
            self.refuse(f"! {str(problem).rstrip('.')}.")
            self.repaint()

    def tick(self, ticked: tuple[Any, ...]) -> None:
        """Ask for yes or no, or for several values at once."""
        if isinstance(self.entry.kind, Several):
            self.choose(ticked, ", ".join(str(each) for each in ticked))
        else:
            self.choose(bool(ticked), "yes" if ticked else "no")

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
        if isinstance(self.editor, Boxes):
            return max(1, self.editor.size.height)
        return LONG_HEIGHT if isinstance(self.entry.kind, Typed) and self.entry.kind.long else 1

    def _refusal_lines(self) -> list[str]:
        return wrap(self.refusal, max(20, self.form.size.width)) if self.refusal else []
