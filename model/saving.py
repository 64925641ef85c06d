"""Writing a file so that at every moment either the old one or the new one is whole.

A temporary file in the same folder is written, flushed to the disk and moved into place.
"""

import os
import time
from contextlib import suppress
from pathlib import Path

from model.errors import FileProblem
from model.reading import PathText

MARK = ".poolwright-part"
BUSY_TRIES = 20 if os.name == "nt" else 0
"""On Windows scanners and sync programs hold files for a moment."""
BUSY_PAUSE = 0.1
"""[s]"""
NEW_FILE_MODE = 0o666
"""As any program makes a file; the user's own mask takes its part away."""


def write_bytes(path: PathText, data: bytes) -> None:
    """Put bytes in place of a file; a symbolic link is written through, the mode is kept.

    Raises:
        FileProblem: it cannot be written; what was there is unharmed and nothing is left behind.
    """
    try:
        target = Path(os.path.realpath(path))
        if target.exists() and not os.access(target, os.W_OK):
            raise FileProblem(str(path), "", "a file that is write-protected", "one that may be written over")
        part = target.with_name(f"{_part_start(target)}{os.getpid()}{MARK}")
        try:
            _write_through(part, data)
            _keep_mode(target, part)
            _move(part, target)
        finally:
            part.unlink(missing_ok=True)
        _sync_folder(target.parent)
    except (OSError, ValueError) as problem:
        raise _unwritable(str(path), problem) from problem


def sweep_leftovers(path: PathText) -> None:
    """Remove temporary files that a power cut left beside a file.

    For whoever holds the lock of that file: otherwise another session may be writing one now.
    """
    with suppress(OSError, ValueError):
        target = Path(os.path.realpath(path))
        for part in target.parent.iterdir():
            if part.name.startswith(_part_start(target)) and part.name.endswith(MARK):
                part.unlink(missing_ok=True)


def _part_start(target: Path) -> str:
    """Cut short, since a file name may be as long as its disk allows."""
    return f".{target.name[:40]}."


def _write_through(part: Path, data: bytes) -> None:
    flags = os.O_WRONLY | os.O_CREAT | os.O_TRUNC | getattr(os, "O_BINARY", 0)
    descriptor = os.open(part, flags, NEW_FILE_MODE)
    with os.fdopen(descriptor, "wb") as stream:
        stream.write(data)
        stream.flush()
        os.fsync(stream.fileno())


def _keep_mode(target: Path, part: Path) -> None:
    with suppress(FileNotFoundError):
        part.chmod(target.stat().st_mode & 0o7777)


def _move(part: Path, target: Path) -> None:
    for _ in range(BUSY_TRIES):
        try:
            os.replace(part, target)
            return
        except PermissionError:
            time.sleep(BUSY_PAUSE)
    os.replace(part, target)


def _sync_folder(folder: Path) -> None:
    """So that the new name survives a power cut too; not every file system offers it."""
    if os.name == "nt":
        return
    with suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


def _unwritable(file: str, problem: OSError | ValueError) -> FileProblem:
    if isinstance(problem, FileNotFoundError | NotADirectoryError):
        return FileProblem(file, "", "no such folder", "the name of a file in a folder that is there")
    if isinstance(problem, IsADirectoryError):
        return FileProblem(file, "", "a folder", "the name of a file")
    if isinstance(problem, PermissionError):
        return FileProblem(file, "", "a place where you may not write", "a folder of your own")
    reason = (problem.strerror or str(problem)) if isinstance(problem, OSError) else "an impossible name"
    expected = "room to write; nothing was changed, save it elsewhere"
    return FileProblem(file, "", f"an obstacle to writing ({reason.lower()})", expected)
