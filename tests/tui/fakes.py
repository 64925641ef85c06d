"""A design with faults, and pages that do little, for tests of what is around the pages."""

import asyncio
import time
from functools import cache

from textual.containers import VerticalScroll
from textual.reactive import reactive
from textual.widgets import Input, Static

from model.presets import find_preset, load_preset
from tui.messages import EditRequested


@cache
def box_design():
    """A starter frame without its thrusters, floats, ballast and openings."""
    design = load_preset(find_preset("starter", "tall-and-steady"))
    bare = design.arrangement.but(thrusters=(), floats=(), ballasts=(), openings=())
    return design.but(title="Bare box", arrangements=(bare,))


class FakePage(VerticalScroll, can_focus=False):
    """A page with one field, the title of the design, over a lot of lines."""

    HELP = "What the fake page is for."
    report = reactive(None)

    def makers(self):
        return ()

    def compose(self):
        yield Static(f"The page {self.id}")
        yield Input(id="title")
        for number in range(60):
            yield Static(f"line {number}")

    def watch_report(self, report):
        if report is not None and self.is_mounted:
            self.refresh_fields()

    def on_mount(self):
        if self.report is not None:
            self.refresh_fields()

    def refresh_fields(self):
        with self.prevent(Input.Changed):
            self.query_one(Input).value = self.report.design.title

    def on_input_submitted(self, event):
        title = event.value
        self.post_message(EditRequested(f"title {title}", lambda design: design.but(title=title)))

    def focus_about(self, about, section=""):
        self.about, self.asked = about, section
        self.query_one(Input).focus()


def screen_text(app):
    """What stands on the screen, as lines of text."""
    strips = app.screen._compositor.render_strips()  # Textual has no public way to read its screen
    return "\n".join("".join(segment.text for segment in strip).rstrip() for strip in strips)


PATIENCE = 20.0
"""[s]"""
FRAME = 1 / 50
"""[s] a little longer than Textual takes from one picture to the next"""
FRAMES = 2
"""What a key sets off is laid out in the first, and what the new layout sets off is done in the second."""
STILL = 3
"""Turns of the loop with nothing to do, one after the other, before it counts as still."""


async def settled(*_):
    """Let the app do what it has to do, and what follows from that."""
    loop, given_up = asyncio.get_running_loop(), time.perf_counter() + PATIENCE
    for _ in range(FRAMES):
        await asyncio.sleep(FRAME)
        still = 0
        while still < STILL and time.perf_counter() < given_up:
            await asyncio.sleep(0)
            still = 0 if loop._ready else still + 1  # asyncio has no public way to ask what waits its turn


async def until(pilot, condition, what):
    """Let the app go on until a condition holds."""
    given_up = time.perf_counter() + PATIENCE
    while not condition():
        if time.perf_counter() > given_up:
            raise AssertionError(f"{what} never came; the screen was\n{screen_text(pilot.app)}")
        await pilot.pause(0.02)


def flowing(text):
    """Text without boxes and line ends, so that a wrapped sentence is whole again."""
    return " ".join("".join(" " if mark in "║│" else mark for mark in text).split())


async def see(pilot, text):
    """Let the app go on until a text stands on the screen."""

    def there():
        shown = screen_text(pilot.app)
        return text in shown or text in flowing(shown)

    await until(pilot, there, repr(text))
