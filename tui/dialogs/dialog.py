"""What all dialogs share: a box in front of the screen, dressed by the session's stylesheet."""

from __future__ import annotations

from typing import TypeVar

from textual.screen import ModalScreen

Answer = TypeVar("Answer")


class Dialog(ModalScreen[Answer]):
    """A question in front of the session; Esc goes back without an answer."""

    CSS_PATH = "../session.tcss"

    def __init__(self) -> None:
        super().__init__(classes="dialog")
