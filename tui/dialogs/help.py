"""Help: what the page is for, then every key."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import HorizontalGroup, VerticalScroll
from textual.content import Content
from textual.widget import Widget
from textual.widgets import Button, Static

from tui.actions import ACTIONS
from tui.dialogs.dialog import Dialog

MOVING = (
    ("Tab", "Go to the next field or list; Shift+Tab goes back."),
    ("Enter", "Press the button, open the list, or accept what you typed."),
    ("Arrows", "Move in a list."),
)


class HelpDialog(Dialog[None]):
    """The help of one page.

    Args:
        title: the name of the page.
        text: its help in plain paragraphs.
        own: keys of the page itself, with what they do.
    """

    BINDINGS: list[BindingType] = [("escape,f1,enter", "dismiss(None)", "Close")]

    def __init__(self, title: str, text: str, own: tuple[tuple[str, str], ...] = ()) -> None:
        self.page_title, self.text, self.own = title, text, own
        super().__init__()

    def compose(self) -> ComposeResult:
        """Paragraphs, then a table of keys, in a box that scrolls."""
        keys = [(action.key_name, action.help) for action in ACTIONS if action.keys]
        with VerticalScroll(classes="box tall"):
            yield Static(Content(self.page_title), classes="title")
            yield Static(Content(self.text), classes="why")
            for heading, rows in (
                ("Keys of this page", self.own),
                ("Moving about", MOVING),
                ("Keys", tuple(keys)),
            ):
                if rows:
                    yield Static(Content(heading), classes="section")
                    for key, text in rows:
                        with HorizontalGroup():
                            yield Static(Content(key), classes="key")
                            yield Static(Content(text), classes="text")
            yield Button("Close (Esc)", compact=True, classes="close")

    def on_button_pressed(self) -> None:
        """Close it."""
        self.dismiss(None)


def own_keys(page: Widget) -> tuple[tuple[str, str], ...]:
    """The keys that a page and what is on it have for themselves."""
    found: dict[str, str] = {}
    for widget in (page, *page.query("*")):
        if type(widget).__module__.startswith("tui."):
            for binding in Binding.make_bindings(type(widget).BINDINGS):
                found[binding.key.capitalize()] = binding.tooltip or binding.description
    return tuple(found.items())
