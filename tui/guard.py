"""The one guard against what nobody expected: it says so in words, and that nothing is lost."""

from __future__ import annotations

import sys
import traceback
from collections.abc import Callable
from contextlib import suppress
from io import StringIO
from typing import TYPE_CHECKING

from rich.console import Console

if TYPE_CHECKING:
    from textual.app import App

DETAILS = "last-error.txt"
FAILED = 1


def guarded(make: Callable[[], App[str]]) -> int:
    """Run an app and print its last word; the exit status.

    Its own report of an error goes to a file, ours to the screen.
    """
    details = StringIO()
    status = FAILED
    try:
        app = make()
        app.error_console = Console(file=details, width=110, markup=False)
        last_word = app.run()
        if last_word:
            print(last_word)
        status = app.return_code or 0
    except Exception:  # noqa: BLE001 - the one guard
        traceback.print_exc(file=details)
    if details.getvalue():
        print(_words(details.getvalue()), file=sys.stderr)
        return FAILED
    return status


def _words(details: str) -> str:
    from model.journal import state_folder

    folder = state_folder()
    where = folder / DETAILS
    with suppress(OSError):
        folder.mkdir(parents=True, exist_ok=True)
        where.write_text(details, encoding="utf-8")
    return (
        "Poolwright came upon an error of its own and had to stop.\n"
        f"Your work is not lost: every change is kept in {folder},\n"
        "and is offered to you when you open the design again.\n"
        f"What went wrong is written in {where}, for whoever looks after this program."
    )
