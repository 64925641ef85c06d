"""Opening a file and naming one: a field to type in, over the folder to pick from."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from pathlib import Path

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import HorizontalGroup, Vertical
from textual.content import Content
from textual.widgets import Button, Input, OptionList, Static
from textual.widgets.option_list import Option

from tui.dialogs.dialog import Dialog
from tui.dialogs.field import Field
from tui.shelf import SUFFIX

Attempt = Callable[[Path], Awaitable[str]]
"""Tries a path; gives "" where it worked, else one sentence that says why not."""
ENTRIES_MOST = 500


class FileDialog(Dialog[bool]):
    """Asks for a file until one works; gives whether one did.

    Args:
        title: the question.
        button: what the button says.
        start: the folder to begin in, or a path to begin with.
        attempt: what is done with the path.
        suffix: of the files that are listed.
    """

    BINDINGS: list[BindingType] = [
        ("escape", "dismiss(False)", "Back"),
        Binding("f10", "dismiss(False)", "Back"),
    ]

    def __init__(self, title: str, button: str, start: Path, attempt: Attempt, suffix: str = SUFFIX) -> None:
        self.question, self.button, self.attempt, self.suffix = title, button, attempt, suffix
        self.folder = start if start.is_dir() else start.parent
        self.typed = "" if start.is_dir() else start.name
        super().__init__()

    def compose(self) -> ComposeResult:
        """The question, the folder, the field, what went wrong, the buttons."""
        with Vertical(classes="box tall"):
            yield Static(self.question, classes="title")
            yield Static("", id="folder", classes="hint", markup=False)
            yield OptionList(id="entries", compact=True)
            yield Field(self.typed, placeholder="or type its name or path here (Tab)", id="path")
            yield Static("", id="problem", classes="error", markup=False)
            with HorizontalGroup(classes="answers"):
                yield Button(self.button, id="go", compact=True)
                yield Button("Back (Esc)", id="back", compact=True)

    def on_mount(self) -> None:
        """Show the folder."""
        self._list()
        self.query_one("#entries" if not self.typed else "#path").focus()

    def _list(self) -> None:
        """Show the folders and files of the folder."""
        self.query_one("#folder", Static).update(Content(f"In {self.folder}:"))
        entries = self.query_one("#entries", OptionList)
        entries.clear_options()
        entries.add_option(Option("..  (the folder above)", id=".."))
        for path in _entries(self.folder, self.suffix):
            name = f"{path.name}/" if path.is_dir() else path.name
            entries.add_option(Option(Content(name), id=path.name))
        entries.highlighted = min(1, entries.option_count - 1)

    @on(OptionList.OptionSelected, "#entries")
    async def _picked(self, event: OptionList.OptionSelected) -> None:
        chosen = self.folder.parent if event.option_id == ".." else self.folder / (event.option_id or "")
        await self._take(chosen)

    @on(Input.Submitted, "#path")
    @on(Button.Pressed, "#go")
    async def _submitted(self) -> None:
        typed = self.query_one("#path", Input).value.strip().strip("\"'")
        if not typed:
            self._say("Type the name of a file, or pick one from the list.")
            return
        await self._take(self.folder / Path(typed).expanduser())

    @on(Button.Pressed, "#back")
    def _back(self) -> None:
        self.dismiss(False)

    async def _take(self, path: Path) -> None:
        """A folder is shown; a file is tried."""
        if path.is_dir():
            self.folder = path.resolve()
            self._list()
            return
        problem = await self.attempt(path)
        if problem:
            self._say(problem)
        else:
            self.dismiss(True)

    def _say(self, sentence: str) -> None:
        self.query_one("#problem", Static).update(Content(sentence))


def _entries(folder: Path, suffix: str) -> list[Path]:
    """Folders first, then files of a suffix, by name; nothing where the folder cannot be read."""
    try:
        found = [path for path in folder.iterdir() if not path.name.startswith(".")]
    except OSError:
        return []
    wanted = [path for path in found if path.is_dir() or path.suffix.lower() == suffix]
    return sorted(wanted, key=lambda path: (not path.is_dir(), path.name.lower()))[:ENTRIES_MOST]
