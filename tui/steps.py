"""The steps of the session, in order.  A step's page is imported when it is first opened."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

from msgspec import Struct

if TYPE_CHECKING:
    from textual.widget import Widget


class Step(Struct, frozen=True):
    """One step: a page, and the findings that are put right there."""

    key: str
    title: str
    purpose: str
    module: str
    page: str

    def page_class(self) -> type[Widget]:
        """The class of its page, imported now."""
        found: type[Widget] = getattr(import_module(self.module), self.page)
        return found

    def sections(self) -> tuple[str, ...]:
        """The titles of the sections of its page, as the page declares them; imported now."""
        page: Any = self.page_class()()
        return tuple(title for title, _ in page.makers())


def _step(key: str, title: str, purpose: str) -> Step:
    return Step(key, title, purpose, f"tui.pages.{key}", f"{title}Page")


STEPS = (
    _step("brief", "Brief", "Write down the rules and the task, so that nothing surprises you later."),
    _step("stock", "Stock", "Say which pipe and fittings you have, and what they really measure."),
    _step("layout", "Layout", "Choose the frame and its size; the saw cuts follow."),
    _step("fittings", "Fittings", "See which fitting sits at each corner, and count them."),
    _step("thrusters", "Thrusters", "Place the motors, and plan how each one is held."),
    _step("gear", "Gear", "Place the hook, the camera and the tether."),
    _step("wires", "Wires", "Plan battery, fuses and cable, so that the volts arrive and nothing melts."),
    _step("floats", "Floats", "Make it float level with a little lift to spare."),
    _step("holes", "Holes", "Let water into the pipes and air out, or seal them for good."),
    _step("money", "Money", "See what it costs, and keep under the limit."),
    _step("build", "Build", "Saw, drill and join in an order that saves work; tick what is done."),
    Step(
        "pool", "Pool day", "Try it in water, measure, and correct the model.", "tui.pages.pool", "PoolPage"
    ),
)
BY_KEY = {step.key: step for step in STEPS}
OTHERWISE = {"pool day": "pool"}
"""Steps of the coach whose page has another key."""


def page_of(step: str) -> str:
    """The key of the page on which a finding of a step of the coach is put right."""
    return OTHERWISE.get(step, step)


def after(key: str) -> Step | None:
    """The step after this one, or None at the end."""
    place = STEPS.index(BY_KEY[key]) + 1
    return STEPS[place] if place < len(STEPS) else None


def before(key: str) -> Step | None:
    """The step before this one, or None at the start."""
    place = STEPS.index(BY_KEY[key])
    return STEPS[place - 1] if place else None
