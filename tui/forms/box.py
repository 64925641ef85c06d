"""A box to tick that can be read without colour."""

from __future__ import annotations

from textual.content import Content
from textual.widgets import Checkbox


class Box(Checkbox):
    """Shows ``[x]`` or ``[ ]`` before its label."""

    DEFAULT_CSS = """
    Box { border: none; padding: 0; height: 1; background: transparent; }
    Box:focus { background: $primary; color: $text; text-style: bold; border: none; }
    """

    def render(self) -> Content:
        """The mark and the label."""
        return Content(f"[{'x' if self.value else ' '}] {self.label.plain}")
