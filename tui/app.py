"""The application: a first frame at once, then the model, then the session."""

from __future__ import annotations

import gc
import os
import traceback
from asyncio import to_thread
from collections.abc import Sequence
from typing import TYPE_CHECKING

from rich.text import Text
from textual import on, work
from textual.app import App, ComposeResult
from textual.filter import LineFilter
from textual.message import Message
from textual.widgets import Static

from tui.ascii import AsciiFilter
from tui.guard import guarded
from tui.themes import DARK, LIGHT

if TYPE_CHECKING:
    from tui.desk import Desk

ASCII_VARIABLE = "POOLWRIGHT_ASCII"
GARBAGE_THRESHOLDS = (20_000, 20, 50)
GARBAGE_DELAY = 1.0
"""[s] After the model is loaded, by when the first page and the panels are there too."""


class Opening(Static):
    """The first frame; once it is painted the rest is loaded."""

    def on_show(self) -> None:
        """It has its place on the screen, and is painted before messages are handled."""
        self.post_message(self.Painted())

    class Painted(Message):
        """The first frame is out."""


class Poolwright(App[str]):
    """The guided session.

    Args:
        word: the file to open, "demo", or None to be asked.
    """

    TITLE = "Poolwright"
    CSS_PATH = ["app.tcss", "session.tcss"]  # all at once: a sheet that comes later has all parsed anew
    ENABLE_COMMAND_PALETTE = False

    def __init__(self, word: str | None = None) -> None:
        super().__init__()
        self.word = word
        self.desk: Desk | None = None
        self.ascii_filter = AsciiFilter(enabled=os.environ.get(ASCII_VARIABLE, "") not in ("", "0"))
        self.animation_level = "none"
        self.register_theme(DARK)
        self.register_theme(LIGHT)
        self.theme = DARK.name

    @property
    def ascii_mode(self) -> bool:
        """Whether the screen is shown in plain ASCII."""
        return self.ascii_filter.enabled

    def get_line_filters(self) -> Sequence[LineFilter]:
        """The usual filters, and ours where it is wanted."""
        usual = super().get_line_filters()
        return [*usual, self.ascii_filter] if self.ascii_mode else usual

    def _fatal_error(self) -> None:
        """A plain traceback for the guard to put away.

        Textual's own prints every local variable, which takes half a minute on a large design.  The
        name is not public: should it go, its own is used again and all else stays right.
        """
        self.panic(Text(traceback.format_exc()))

    def compose(self) -> ComposeResult:
        """The first frame: light, so that it is there at once."""
        yield Opening("Poolwright\nopening ...", id="opening")

    @on(Opening.Painted)
    @work
    async def begin(self) -> None:
        """Load the model beside the screen, then begin."""
        desk = await to_thread(_load_desk)
        self.desk = desk(self)
        self.set_timer(GARBAGE_DELAY, _collect_garbage_again)
        await self.desk.begin(self.word)

    def action_ascii(self) -> None:
        """Plain ASCII, on or off."""
        self.ascii_filter.enabled = not self.ascii_filter.enabled
        if self.desk and self.desk.screen:
            self.desk.screen.draw()
        self.refresh_css(animate=False)

    def action_colours(self) -> None:
        """Light or dark colours."""
        self.theme = LIGHT.name if self.theme == DARK.name else DARK.name

    @work
    async def action_leave(self) -> None:
        """Save and leave."""
        if self.desk is None:
            self.exit()
        else:
            await self.desk.quit()

    @work
    async def action_new_design(self) -> None:
        """Begin from a starter, or open something else."""
        if self.desk:
            await self.desk.choose()

    @work
    async def action_open_file(self) -> None:
        """Open a saved design."""
        if self.desk:
            await self.desk.open()

    @work
    async def action_save_as(self) -> None:
        """Save under another name."""
        if self.desk:
            await self.desk.save_as()


def _collect_garbage_again() -> None:
    """What is loaded now stays, and need not be looked through again and again.

    Painting makes many short-lived objects: with the usual thresholds a step takes a fifth longer.
    """
    gc.freeze()
    gc.set_threshold(*GARBAGE_THRESHOLDS)
    gc.enable()


def _load_desk() -> type[Desk]:
    from tui.desk import Desk

    return Desk


def run(word: str | None = None) -> int:
    """Run the session; the exit status."""
    return guarded(lambda: Poolwright(word))
