"""The autosave journal, and the lock that keeps two sessions off one file.

Both lie in the user's state folder, named by a hash of the design's path, so that nothing but the
design stands beside the design.  Each edit adds one line to the journal, which is on the disk
before the call returns; a good save cuts it.  A journal that cannot be read never stops a start.
"""

from __future__ import annotations

import hashlib
import json
import os
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import asdict

from model.errors import FileProblem
from model.reading import PathText
from model.saving import sweep_leftovers, write_bytes

if TYPE_CHECKING:
    from filelock import BaseFileLock

STATE_FOLDER_VARIABLE = "POOLWRIGHT_STATE"
"""Names another folder for journals and locks."""
NEW_MOST = 50
"""How many sessions may hold a design that has no file yet."""
JOURNAL_BYTES = 8_000_000
"""A longer journal is cut to its last line, so that a long lesson does not fill the disk."""


class Entry(Struct, frozen=True):
    """One edit.

    Attributes:
        when: as the caller's clock said it; the model has none.
        label: what was done, in words.
        text: the whole design after it, as TOML.
        digest: of the file that the design was read from or saved to last, or None.
    """

    when: str
    label: str
    text: str
    digest: str | None = None


class Journal(Struct):
    """The edits of one design since its last good save, and the lock on its file.

    Attributes:
        name: what its files in the state folder are called, without the ending.
        read_only: whether another session holds the design; ``why`` is the sentence that says so,
            or that says why there is no journal.
    """

    name: str
    read_only: bool = False
    why: str = ""
    _lock: BaseFileLock | None = None

    @property
    def path(self) -> Path:
        """Where the edits are kept."""
        return state_folder() / f"{self.name}.jsonl"

    def record(self, entry: Entry) -> None:
        """Add an edit; it is on the disk when this returns.  A read-only session leaves no trace.

        Raises:
            FileProblem: it cannot be written; the session goes on without.
        """
        if self.read_only:
            return
        # the line break before it keeps a line that a power cut tore from swallowing this one
        line = f"\n{json.dumps(asdict(entry))}\n".encode()
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            if self.path.exists() and self.path.stat().st_size > JOURNAL_BYTES:
                write_bytes(self.path, line)
            else:
                _append(self.path, line)
        except OSError as problem:
            raise _no_room(self.path, problem, "room for the autosave; save the design now") from problem

    def entries(self) -> tuple[Entry, ...]:
        """The edits since the last good save, oldest first; what cannot be read is left out."""
        try:
            lines = self.path.read_bytes().splitlines()
        except OSError:
            return ()
        found = (_entry(line) for line in lines)
        return tuple(entry for entry in found if entry is not None)

    def cut(self) -> None:
        """Forget the edits: after a good save, or when the team does not want them."""
        if not self.read_only:
            with suppress(OSError):
                self.path.unlink(missing_ok=True)

    def release(self) -> None:
        """Let another session have the design; the edits stay."""
        if self._lock is not None:
            self._lock.release()


def state_folder() -> Path:
    """The folder of journals and locks; it need not be there."""
    named = os.environ.get(STATE_FOLDER_VARIABLE)
    if named:
        return Path(named)
    from platformdirs import user_state_path

    return user_state_path("poolwright", appauthor=False)


def claim(path: PathText | None) -> Journal:
    """The journal of a design, with the lock on it if it is free; None for a design without a file.

    Never raises: a session without a state folder goes on, and ``why`` says so.  What a power cut
    left beside the file is swept, since no other session can be writing it.
    """
    if path is None:
        return _claim_new()
    journal = _claim(hashed(os.path.normcase(os.path.realpath(path))))
    if journal.read_only:
        journal.why = (
            f"{path} is open in another session on this computer; it is open for reading only here. "
            "Save it under another name to work on a copy"
        )
    else:
        sweep_leftovers(path)
    return journal


def hashed(known_as: str) -> str:
    """What the journal and the lock of a design are called, without the ending."""
    return hashlib.sha256(known_as.encode("utf-8", "surrogateescape")).hexdigest()[:24]


def _claim_new() -> Journal:
    """The first journal of a design without a file that no running session holds.

    After a crash that is the one it left, so that its edits can be offered.
    """
    journal = _claim(hashed("new 1"))
    for number in range(2, NEW_MOST + 1):
        if not journal.read_only:
            return journal
        journal = _claim(hashed(f"new {number}"))
    journal.why = f"{NEW_MOST} sessions hold a new design already; save this one under a name of its own"
    return journal


def _claim(name: str) -> Journal:
    from filelock import FileLock, Timeout  # 7 ms, which the first page can do without

    folder = state_folder()
    lock = FileLock(folder / f"{name}.lock", blocking=False, thread_local=False)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        lock.acquire()
    except Timeout:
        return Journal(name, read_only=True)
    except OSError as problem:
        return Journal(name, why=str(_no_room(folder, problem, "a folder for the autosave; save often")))
    except NotImplementedError:  # a disk that knows no locks
        return Journal(name, why=f"{folder}: found a disk without locks; open each design once only")
    return Journal(name, _lock=lock)


def _append(path: Path, line: bytes) -> None:
    with path.open("ab") as stream:
        stream.write(line)
        stream.flush()
        os.fsync(stream.fileno())


def _entry(line: bytes) -> Entry | None:
    try:
        raw = json.loads(line)
        when, label, text, digest = (raw[key] for key in ("when", "label", "text", "digest"))
    except (ValueError, KeyError, TypeError, RecursionError):
        return None
    if not all(isinstance(item, str) for item in (when, label, text)):
        return None
    return Entry(when, label, text, digest if isinstance(digest, str) else None)


def _no_room(path: Path, problem: OSError, expected: str) -> FileProblem:
    reason = (problem.strerror or str(problem)).lower()
    return FileProblem(str(path), "", f"an obstacle to writing ({reason})", expected)
