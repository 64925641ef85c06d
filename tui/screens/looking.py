"""What keys do to what is looked at: panels, views, the page and its help; the design stays as it is."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial, wraps
from inspect import isawaitable
from typing import Any

from textual import work

from tui.screens.showing import LOOKS, Showing, following
from tui.steps import BY_KEY

ANGLES = {
    "third": "each view lies on the side that it is seen from",
    "first": "each view lies on the side away from where it is seen",
}
VIEWS = ("front", "top", "side", "oblique")
"""Those that a key turns through; where there is room, all of them stand side by side."""


def beside(action: Callable[..., Any]) -> Callable[..., Any]:
    """What is done with the panels beside the page: a key that is quicker than they are waits for them."""

    @wraps(action)
    def when_there(screen: Looking, *given: Any) -> Any:
        if screen.complete.is_set():
            return action(screen, *given)
        return screen.when_complete(partial(action, screen, *given))

    return when_there


class Looking(Showing):
    """The screen with the keys by which one looks about."""

    @work
    async def when_complete(self, act: Callable[[], object]) -> None:
        """Do something as soon as the panels are there."""
        await self.complete.wait()
        acting = act()
        if isawaitable(acting):
            await acting

    @beside
    def action_look(self) -> None:
        """The next panel on a small screen, the next view on a large one."""
        if self.wide:
            self.drawing.view = following(VIEWS, self.drawing.view)
        else:
            self.look = following(LOOKS, self.look)
            self._focus_look()

    def _focus_look(self) -> None:
        targets = {"drawing": self.drawing, "findings": self.findings}
        if self.look == "page":
            self.focus_page()
        elif self.look in targets:
            self.set_focus(targets[self.look])

    @beside
    def action_view(self, view: str) -> None:
        """Turn the drawing."""
        self.drawing.view = view
        if not self.wide or view == "three":
            self.look = "drawing"

    @beside
    async def action_draw(self) -> None:
        """The cursor on the drawing, as large as the window, to edit the frame there."""
        await self.commit()
        self.look = "drawing"
        if self.wide:
            self.drawing.view = "three"
        elif self.drawing.view == "oblique":
            self.drawing.view = VIEWS[0]
        self.drawing.focus()

    @beside
    def action_angle(self) -> None:
        """Third or first angle, on a sheet with all views."""
        self.drawing.action_angle()
        self.action_view("three")
        angle = self.drawing.angle
        room = "" if self.wide else " A wider window shows all of them at once."
        self.said = f"Drawing in {angle} angle: {ANGLES[angle]}.{room}"

    @beside
    def action_names(self) -> None:
        """The names of the joints in the drawing, or none."""
        self.drawing.action_names()

    def action_back(self) -> None:
        """The page in front again."""
        self.look = "page"
        self.focus_page()

    @beside
    def action_findings(self) -> None:
        """The list of findings."""
        self.look = "findings"
        self.findings.focus()

    def action_page_up(self) -> None:
        """Scroll the page up."""
        self.page.scroll_page_up(animate=False)

    def action_page_down(self) -> None:
        """Scroll the page down."""
        self.page.scroll_page_down(animate=False)

    @beside
    def action_help(self) -> None:
        """The help of the page, and every key."""
        from tui.dialogs.help import HelpDialog, own_keys

        title, about = BY_KEY[self.state.step].title, self.page
        if self.drawing.has_focus:
            title, about = "Drawing", self.drawing
        self.app.push_screen(HelpDialog(title, getattr(about, "HELP", ""), own_keys(about)))
