"""What is done with whole designs: begin, open, save under another name, quit.

Loaded after the first frame, since it brings the model; a dialog is loaded when it is first shown.
Everything here runs in a worker of the app, so that it can wait for the answer of a dialog.
"""

from __future__ import annotations

from asyncio import to_thread
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from model.errors import FileProblem
from tui.opening import Opened, demo_design, hold, new_design, open_file
from tui.screens.session import SessionScreen
from tui.session import Session
from tui.shelf import SUFFIX, Recent, designs_folder, recents, remember, remembered

if TYPE_CHECKING:
    from tui.app import Poolwright

DEMO = "demo"


class Desk:
    """The designs of one app; at most one is open.

    Args:
        app: where dialogs and the session are shown.
    """

    def __init__(self, app: Poolwright) -> None:
        self.app = app
        self.screen: SessionScreen | None = None
        self._opened: Opened | None = None

    async def begin(self, word: str | None) -> None:
        """Open what was named on the command line, or ask."""
        if word is None:
            await self.choose()
            return
        path = Path(word).absolute()
        problem = await self._try(demo_design if word == DEMO else partial(open_file, path))
        if not problem:
            await self._show()
        elif path.suffix == SUFFIX and path.parent.is_dir() and not path.exists():
            await self.choose(f"There is no {path.name} yet. What you begin now is kept in it.", path)
        else:
            await self.choose(problem)

    async def choose(self, note: str = "", begun: Path | None = None) -> None:
        """Ask what to do until a design is open, or the team goes back to the one that is.

        Args:
            note: to be said first.
            begun: the file to keep a new design in; its folder and name are chosen where there is none.
        """
        from model.presets import presets
        from tui.dialogs.start import StartDialog

        while True:
            starters = await to_thread(presets, "starter")
            known = await to_thread(recents)
            dialog = StartDialog(known, starters, note, first=self.screen is None)
            answer = await self.app.push_screen_wait(dialog)
            if answer is None:
                return
            kind, _, name = answer.partition(":")
            note = await self._take(kind, name, begun)
            if self._opened is not None:
                await self._show()
                return

    async def _take(self, kind: str, name: str, begun: Path | None) -> str:
        """Open what was chosen; a sentence where it did not work."""
        if kind == "recent":
            return await self._try(partial(open_file, Path(name)))
        if kind == DEMO:
            return await self._try(demo_design)
        if kind in ("starter", "empty"):
            from tui.dialogs.naming import NamingDialog

            where = f"in {begun}" if begun else f"in the folder {designs_folder()}"
            title = await self.app.push_screen_wait(NamingDialog("Our vehicle", where))
            return await self._try(partial(new_design, name or None, title, begun)) if title else ""
        await self.ask_file()
        return ""

    async def ask_file(self) -> bool:
        """Ask for a file and load it; whether one was."""
        from tui.dialogs.files import FileDialog

        folder = designs_folder() if designs_folder().is_dir() else Path.cwd()
        dialog = FileDialog("Which file do you want to open?", "Open", folder, self._try_file)
        return bool(await self.app.push_screen_wait(dialog))

    async def open(self) -> None:
        """Ask for a file and show it in place of the design on screen."""
        if await self.ask_file():
            await self._show()

    async def _try_file(self, path: Path) -> str:
        return await self._try(partial(open_file, path))

    async def _try(self, load: Callable[[], Opened]) -> str:
        """Load a design in a thread; a sentence where it did not work."""
        try:
            self._opened = await to_thread(load)
        except FileProblem as problem:
            return str(problem)
        return ""

    async def _show(self) -> None:
        """Show what was opened, after the question of what was left from last time."""
        opened, self._opened = self._opened, None
        if opened is None or not await self.leave():
            return
        session = Session(opened.design)
        last = remembered(opened.keeper.path)
        seen, step = (last.seen, last.step) if last else ((), "brief")
        screen = SessionScreen(session, opened.keeper, seen, step)
        old, self.screen = self.screen, screen
        await (self.app.switch_screen(screen) if old else self.app.push_screen(screen))
        await screen.painted.wait()
        opened = await to_thread(hold, opened)
        screen.saving = opened.keeper.state
        if opened.notes:
            screen.said = " ".join(opened.notes)
        if opened.keeper.unsaved:
            screen.save()
        if opened.left is not None:
            await self._offer(screen, opened)
        self.remember()

    async def _offer(self, screen: SessionScreen, opened: Opened) -> None:
        """Offer the work of last time that never reached the file."""
        question = (
            f"There is work from last time that was not saved (last: {opened.left_label}).\n\n"
            "Do you want to take it? If you leave it, it is gone for good."
        )
        answer = await self._ask(question, {"take": "Take it", "leave": "Leave it"})
        if answer == "leave":
            opened.keeper.forget()
        else:
            screen.take_over("work from last time", opened.left)

    async def _ask(self, question: str, answers: dict[str, str]) -> str | None:
        from tui.dialogs.ask import Ask

        return await self.app.push_screen_wait(Ask(question, answers))

    async def leave(self) -> bool:
        """Make the design on screen safe; False where the team wants to stay with it."""
        screen = self.screen
        if screen is None:
            return True
        await screen.commit()
        self.remember()
        if not await screen.save_now():
            why = screen.keeper.problem or screen.keeper.why_not
            question = f"Your changes are not in a file yet: {why}.\n\nWhat do you want to do?"
            answers = {"as": "Save under another name", "stay": "Stay here", "leave": "Leave without them"}
            answer = await self._ask(question, answers)
            if answer == "as":
                return await self.save_as() and await self.leave()
            if answer != "leave":
                return False
        screen.keeper.close()
        return True

    async def quit(self) -> None:
        """Save and leave, with a word about where the file is."""
        if await self.leave():
            self.app.exit(self._whereabouts())

    def _whereabouts(self) -> str | None:
        """Where the design is kept, to be read when the screen is gone."""
        if self.screen is None or not self.screen.keeper.digest:
            return None
        return f"{self.screen.session.design.title} is saved in {self.screen.keeper.path}"

    async def save_as(self) -> bool:
        """Ask for a new name and go on in it; whether it was saved."""
        screen = self.screen
        if screen is None:
            return False
        from tui.dialogs.files import FileDialog

        dialog = FileDialog("Save it as", "Save", screen.keeper.path, screen.save_under)
        saved = bool(await self.app.push_screen_wait(dialog))
        self.remember()
        return saved

    def remember(self) -> None:
        """Put the design on screen at the top of what was open last; the demo stays apart."""
        if self.screen is None or self.screen.keeper.path.parent.name == DEMO:
            return
        shown, path = self.screen.state, str(self.screen.keeper.path)
        remember(Recent(path, self.screen.session.design.title, shown.step, tuple(sorted(shown.seen))))
