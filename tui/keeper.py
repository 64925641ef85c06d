"""Keeps one design safe: a line in the journal at every edit, the file a moment later.

Nothing is ever written over that somebody else changed: then the work goes beside it, and the team
is told.  What cannot be saved stays on screen and in the journal.
"""

from __future__ import annotations

import threading
from asyncio import Lock, to_thread
from contextlib import suppress
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from model.errors import FileProblem
from model.files import FileChanged, design_text, save_beside, save_design
from model.journal import Entry, Journal, claim

if TYPE_CHECKING:
    from model.design import Design


class Keeper:
    """Where a design is saved, and whether it is.

    Args:
        path: its file, which need not be there yet.
        digest: of the file as it was read, None where it is not there yet.
        why_not: why it must not be saved there, in a sentence, or "".

    Attributes:
        left: what the journal had when it was claimed, which no session had saved; oldest first.
    """

    def __init__(self, path: Path, digest: str | None, why_not: str = "") -> None:
        self.path, self.digest, self.why_not = path, digest, why_not
        self.problem = ""
        self.left: tuple[Entry, ...] = ()
        self._news: list[str] = []
        self._busy = Lock()
        self._noted: Design | None = None
        self._journal: Journal | None = None
        self._claiming = threading.Lock()

    @property
    def journal(self) -> Journal:
        """Where edits go until the file is saved; claimed when it is first asked for."""
        return self.hold()

    def hold(self) -> Journal:
        """Keep other sessions off the file, from now on."""
        with self._claiming:
            if self._journal is None:
                self._journal = claim(self.path)
                self.left = self._journal.entries()
                if self._journal.read_only:
                    self.why_not = self.why_not or self._journal.why
                elif self._journal.why:
                    self._news.append(f"{self._journal.why}.")
            return self._journal

    @property
    def unsaved(self) -> bool:
        """Whether something was noted that is not in the file."""
        return self._noted is not None

    @property
    def state(self) -> str:
        """Whether it is saved, in a word or two."""
        if self.why_not:
            return "READ ONLY"
        if self.problem:
            return "NOT SAVED"
        if self.unsaved:
            return "saving ..."
        return "saved" if self.digest else ""

    def take_news(self) -> str:
        """What the team should be told, once."""
        news, self._news = " ".join(self._news), []
        return news

    def note(self, label: str, design: Design) -> None:
        """Put an edit into the journal; a journal that cannot be written is said, and the session goes on."""
        self._noted = design
        journal = self.journal
        if self.why_not:
            return
        when = datetime.now().isoformat(timespec="seconds")
        try:
            journal.record(Entry(when, label, design_text(design), self.digest))
        except FileProblem as problem:
            self._news.append(str(problem))

    async def save(self, design: Design) -> bool:
        """Save a design in its file, in a thread; whether it is safe there now."""
        async with self._busy:
            if self.why_not or not self.unsaved:
                return not self.unsaved
            try:
                await to_thread(self._write, design)
            except FileProblem as problem:
                self.problem = str(problem)
                self._news.append(f"NOT SAVED: {problem}")
                return False
            self.problem = ""
            if self._noted is design:
                self._noted = None
                self.journal.cut()
            return not self.unsaved

    def forget(self) -> None:
        """Throw away what the journal has of last time."""
        self.journal.cut()

    async def save_under(self, path: Path, design: Design) -> None:
        """Save a design in a new file and go on there.

        Raises:
            FileProblem: it cannot be written, or there is a file already; nothing has changed.
        """
        async with self._busy:
            digest = await to_thread(save_design, design, path, None)
            self._move(path)
            self.digest, self._noted, self.why_not, self.problem = digest, None, "", ""

    def make_folder(self) -> None:
        """Make the folder of the file where there is none; who writes there says what is wrong with it."""
        with suppress(OSError):
            self.path.parent.mkdir(parents=True, exist_ok=True)

    def _write(self, design: Design) -> None:
        if self.digest is None:
            self.make_folder()
        try:
            self.digest = save_design(design, self.path, self.digest)
        except FileChanged:
            old = self.path
            beside, self.digest = save_beside(design, old)
            self._move(beside)
            self._news.append(
                f"{old.name} was changed by somebody else, so both are kept: yours is {beside.name} now."
            )

    def _move(self, path: Path) -> None:
        """Go on in another file; the journal of the old one is done with."""
        self.journal.cut()
        self.journal.release()
        with self._claiming:
            self.path, self._journal = path, claim(path)

    def close(self) -> None:
        """Let other sessions have the file."""
        self.journal.release()
