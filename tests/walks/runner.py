"""Keyboard walks: what a person does, line by line, in a text file.

One order a line; blank lines and lines that begin with ``#`` say nothing.

    start [WORD]        begin, as ``poolwright [WORD]`` does; with a copy of a file of this folder
    press KEY ...       press keys one after the other; KEY*3 presses it three times
    type "TEXT"         type a text
    see "TEXT"          wait until the text stands on the screen; line ends and boxes do not count
    gone "TEXT"         wait until the text stands there no more
    fix                 press F5 as long as the next thing to do offers a remedy, until all is ready
    size 80x24          make the window another size
    kill                the lid is shut, the power is gone: nothing is saved from here on
    reopen              begin again with the design that was open
    ready               what is in the file has no finding that must be fixed
    clear               what is in the file lies level within 2 degrees, floats with 10 to 40 g to spare and
                        keeps less than a millilitre of air in any attitude
"""

import os
import shlex
import shutil
from contextlib import AsyncExitStack
from pathlib import Path

from model.files import load_design
from model.review import review
from tests.tui.fakes import flowing, screen_text, see, until
from tui.app import Poolwright

HERE = Path(__file__).parent
FIXES_MOST = 12
READY = "ready to build"
OFFER = "F5 takes this remedy"


class Walk:
    """One walk at one size.

    Args:
        size: columns and rows to begin with.
    """

    def __init__(self, size):
        self.size, self.path, self.pilot = size, None, None
        self.stack = AsyncExitStack()

    async def run(self, file):
        """Do every order of a file, then end."""
        try:
            await self.follow(file)
        finally:
            await self.stack.aclose()

    async def follow(self, file):
        """Do every order of a file; an error names its line."""
        for number, line in enumerate(Path(file).read_text(encoding="utf-8").splitlines(), 1):
            order, *words = shlex.split(line, comments=True) or [""]
            if order:
                await self.do(order, words, f"{Path(file).name} line {number}: {line.strip()}")

    async def do(self, order, words, where):
        try:
            await getattr(self, f"do_{order}")(*words)
        except AssertionError as problem:
            raise AssertionError(f"{where}\n{problem}") from problem

    async def do_start(self, word=None):
        if word in {file.name for file in HERE.glob("*.toml")}:
            folder = Path(os.environ["POOLWRIGHT_DESIGNS"])
            folder.mkdir(parents=True, exist_ok=True)
            word = shutil.copy(HERE / word, folder)
        self.pilot = await self.stack.enter_async_context(Poolwright(word).run_test(size=self.size))

    async def do_press(self, *keys):
        for key in keys:
            name, _, times = key.partition("*")
            await self.pilot.press(*[name] * int(times or 1))

    async def do_type(self, text):
        await self.pilot.press(*("space" if letter == " " else letter for letter in text))

    async def do_see(self, text):
        await see(self.pilot, text)
        self.note_path()

    async def do_gone(self, text):
        await until(self.pilot, lambda: text not in self.shown, f"a screen without {text!r}")

    async def do_fix(self):
        for _ in range(FIXES_MOST):
            await until(self.pilot, lambda: READY in self.shown or OFFER in self.shown, "a remedy")
            if READY in self.shown:
                return
            await self.fix_one()
        raise AssertionError(f"not ready after {FIXES_MOST} remedies")

    async def fix_one(self):
        """Press F5 and wait for the change."""
        history = self.pilot.app.screen.session.history
        await self.pilot.press("f5")
        await until(self.pilot, lambda: self.pilot.app.screen.session.history is not history, "a change")

    @property
    def shown(self):
        """The text on the screen, flowing."""
        return flowing(screen_text(self.pilot.app))

    async def do_size(self, size):
        columns, rows = map(int, size.split("x"))
        await self.pilot.resize_terminal(columns, rows)

    async def do_kill(self):
        self.note_path()
        self.pilot.app.desk.screen.keeper.journal.release()  # as the system does for a process that is gone
        await self.stack.aclose()
        self.stack = AsyncExitStack()

    async def do_reopen(self):
        await self.do_start(str(self.path))

    async def do_ready(self):
        self.note_path()
        screen = self.pilot.app.desk.screen
        await until(self.pilot, lambda: not screen.keeper.unsaved, "a saved design")
        musts = [finding.message for finding in review(load_design(self.path).design).musts]
        assert musts == [], musts

    async def do_clear(self):
        found = review(load_design(self.path).design).survey
        assert max(abs(found.balance.pitch), abs(found.balance.roll)) <= 2, found.balance
        assert 0.010 <= found.balance.spare <= 0.0405, found.balance
        left = {state.attitude.name: state.caught.volume * 1e6 for state in found.air.attitudes}
        assert max(left.values()) < 1, left

    def note_path(self):
        """Remember which file is open."""
        desk = self.pilot.app.desk
        if desk and desk.screen:
            self.path = desk.screen.keeper.path
