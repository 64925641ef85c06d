"""The first question: what do you want to do?"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import PurePath
from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.content import Content
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from tui.dialogs.dialog import Dialog
from tui.shelf import Recent

if TYPE_CHECKING:
    from model.presets import Preset

KEYS = "Up and Down to choose, Enter to begin. F1 tells more, F10 leaves."
HELP = (
    "Poolwright helps your team to design a small underwater vehicle from plastic pipe, step by step. This "
    "is the first question: which design do you want to work on?\n\n"
    "Go on with opens a design that you had open before. A new design begins from a finished frame that you "
    "change as you like, or from an empty one. The demo is there to try things on: nothing that you do there "
    "touches your own files. A saved file may also lie on a stick.\n\n"
    "You can do nothing wrong here: a new design is saved by itself, and the old ones stay as they are."
)
HELP_KEYS = (
    ("Up, Down", "Go to another line of the list; the line under the list says more about it."),
    ("Enter", "Begin with what is under the bar."),
    ("F1", "This help; F1 or Esc closes it."),
    ("Esc", "Back to the design on screen, where there is one."),
    ("F10", "Leave Poolwright."),
)
SHOWN_RECENT = 4


class StartDialog(Dialog[str | None]):
    """Gives "recent:PATH", "starter:NAME", "empty", "demo" or "open"; None for Esc, where that is allowed.

    Args:
        recent: what was open last.
        starters: the frames to begin from.
        note: a sentence to say first, such as why a file could not be opened.
        first: whether nothing is open yet, so that there is nothing to go back to.
    """

    BINDINGS: list[BindingType] = [
        ("escape", "back", "Back"),
        Binding("f1", "help", "Help"),
        Binding("f10,ctrl+q", "app.quit", "Quit", priority=True),
    ]

    def __init__(
        self, recent: Iterable[Recent], starters: Iterable[Preset], note: str = "", first: bool = True
    ) -> None:
        self.recent, self.starters = tuple(recent)[:SHOWN_RECENT], tuple(starters)
        self.note, self.first = note, first
        self.about: dict[str, str] = {}
        super().__init__()

    def compose(self) -> ComposeResult:
        """One list of everything there is to begin with, and more about what is under the bar."""
        with Vertical(classes="box tall"):
            yield Static("Poolwright: what do you want to do?", classes="title")
            if self.note:
                yield Static(Content(self.note), classes="error")
            yield OptionList(*self._options(), compact=True)
            yield Static("", id="about", markup=False)
            yield Static(KEYS, classes="hint")

    def on_mount(self) -> None:
        """Put the bar on the first thing that can be chosen."""
        self.query_one(OptionList).action_first()
        self.query_one(OptionList).focus()

    def _options(self) -> Iterator[Option]:
        if self.recent:
            yield _heading("Go on with")
            for each in self.recent:
                yield self._option(f"recent:{each.path}", each.title, _place(each.path))
        yield _heading("Begin a new design from")
        for preset in self.starters:
            about = preset.problem or preset.summary
            yield self._option(
                f"starter:{preset.name}", preset.title or preset.name, about, bool(preset.problem)
            )
        yield self._option(
            "empty", "An empty frame", "No bar yet: draw your own on the page Layout, bar by bar."
        )
        yield _heading("Or")
        yield self._option(
            "demo", "Look at the demo", "A finished design to try things on, apart from your files."
        )
        yield self._option("open", "Open a saved file", "One of yours, or one from a stick.")

    def _option(self, id: str, name: str, about: str, disabled: bool = False) -> Option:
        self.about[id] = about
        line = Content.assemble("  ", (name, "bold"), (f"  {about}", "$text-muted"))
        return Option(line, id=id, disabled=disabled)

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        """Say more about what is under the bar."""
        self.query_one("#about", Static).update(Content(self.about.get(event.option_id or "", "")))

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Give what was chosen."""
        self.dismiss(event.option_id)

    def action_help(self) -> None:
        """What this screen is for, and its keys."""
        from tui.dialogs.help import HelpDialog  # it brings the pages, which nobody waits for here

        self.app.push_screen(HelpDialog("What do you want to do?", HELP, HELP_KEYS, session=False))

    def action_back(self) -> None:
        """Back to the design on screen, if there is one."""
        if not self.first:
            self.dismiss(None)


def _place(path: str) -> str:
    """A file's name, then its folder, which may be cut off at the end of a line."""
    where = PurePath(path)
    return f"{where.name} in {where.parent}"


def _heading(text: str) -> Option:
    return Option(Content.styled(text, "bold $text-primary"), disabled=True)
