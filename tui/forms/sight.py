"""Bringing what matters into sight."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from textual.widget import Widget


def reveal(widget: Widget) -> None:
    """Scroll, once all is laid out, so that a widget is seen, and what has the focus where both fit."""
    widget.call_after_refresh(_reveal, widget)


def _reveal(widget: Widget) -> None:
    if widget.is_attached:
        for each in (widget, widget.screen.focused):
            if each is not None:
                each.scroll_visible(animate=False, immediate=True)
