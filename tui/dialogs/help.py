"""Help: what the page is for, then every key."""

from __future__ import annotations

from collections.abc import Iterable

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import HorizontalGroup, Vertical, VerticalScroll
from textual.content import Content
from textual.widget import Widget
from textual.widgets import Button, Static

from tui.actions import ACTIONS, key_name
from tui.dialogs.dialog import Dialog
from tui.guide import MARKS
from tui.pages.page import Page

MOVING = (
    ("Tab", "Go to the next field or list; Shift+Tab goes back."),
    ("Enter", "Press the button, open the list, or accept what you typed."),
    ("Arrows", "Move in a list."),
    ("Esc", "In a field: bring back what stood there before you typed. Else: back to the page."),
)


class HelpDialog(Dialog[None]):
    """The help of one page.

    Args:
        title: the name of the page.
        text: its help in plain paragraphs.
        own: keys of the page itself, with what they do.
        session: whether the keys of the session are told too; a question in front of it has only its own.
    """

    BINDINGS: list[BindingType] = [("escape,f1,enter", "dismiss(None)", "Close")]

    def __init__(
        self, title: str, text: str, own: tuple[tuple[str, str], ...] = (), *, session: bool = True
    ) -> None:
        self.page_title, self.text, self.own, self.session = title, text, own, session
        super().__init__()

    def compose(self) -> ComposeResult:
        """Paragraphs, then a table of keys, in a box that scrolls."""
        sections = self._sections() if self.session else (("Keys", self.own),)
        with Vertical(classes="box tall"):
            with VerticalScroll(classes="text"):
                yield Static(Content(self.page_title), classes="title")
                yield Static(Content(self.text), classes="why")
                for heading, rows in sections:
                    if rows:
                        yield Static(Content(heading), classes="section")
                        yield from _table(rows)
            yield Button("Close (Esc)", compact=True)

    def _sections(self) -> tuple[tuple[str, Iterable[tuple[str, str]]], ...]:
        keys = [(action.key_name, action.help) for action in ACTIONS if action.keys]
        return (
            ("In lists and fields of this page", self.own),
            ("Moving about", MOVING),
            ("Keys", keys),
            ("What stands behind a step, in the second line of the screen", MARKS),
        )

    def on_button_pressed(self) -> None:
        """Close it."""
        self.dismiss(None)


def _table(rows: Iterable[tuple[str, str]]) -> ComposeResult:
    for key, text in rows:
        with HorizontalGroup():
            yield Static(Content(key), classes="key")
            yield Static(Content(text), classes="what")


def own_keys(page: Widget) -> tuple[tuple[str, str], ...]:
    """What the field with the focus is for; then the keys of a page and of what is on it, each once."""
    found: dict[str, str] = {}
    focused = page.screen.focused
    if isinstance(page, Page) and focused is not None and page in focused.ancestors:
        found["Here"] = page.help_of(focused)
    classes = {kind: None for widget in (page, *page.query("*")) for kind in type(widget).__mro__}
    for kind in classes:
        if kind.__module__.startswith("tui."):
            for binding in Binding.make_bindings(vars(kind).get("BINDINGS", ())):
                key = binding.key_display or key_name(binding.key)
                found.setdefault(key, binding.tooltip or binding.description)
    return tuple(found.items())
