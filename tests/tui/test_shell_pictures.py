"""Text pictures of every page on a small and a large screen, kept as plain files that a diff can show.

After a change that is meant, make them anew and read the diff:
``POOLWRIGHT_DRAW=1 .venv/bin/python -m pytest tests/tui/test_shell_pictures.py``.
"""

import os
from pathlib import Path

import pytest

from tests.tui.fakes import screen_text, see
from tui.app import Poolwright
from tui.steps import STEPS

FOLDER = Path(__file__).resolve().parent.parent / "pictures" / "session"
SIZES = [(80, 24), (120, 40)]
DRAW = bool(os.environ.get("POOLWRIGHT_DRAW"))
STILL = 0.4
"""[s] Remedies are proved and fields filled by the time that nothing has changed for so long."""


async def still(pilot):
    """The text of the screen once it has stopped changing."""
    before = None
    while (now := screen_text(pilot.app)) != before:
        before = now
        await pilot.pause(STILL)
    return now + "\n"


def compare(name, text):
    """A picture against the one that is kept."""
    kept = FOLDER / f"{name}.txt"
    if DRAW:
        kept.parent.mkdir(parents=True, exist_ok=True)
        kept.write_text(text, encoding="utf-8")
    assert text == kept.read_text(encoding="utf-8"), f"{name} looks different now"


@pytest.mark.parametrize("size", SIZES, ids=lambda size: "x".join(map(str, size)))
async def test_every_page_looks_as_it_is_kept(size):
    async with Poolwright("demo").run_test(size=size) as pilot:
        await see(pilot, "Next:")
        for step in STEPS:
            await pilot.app.screen.action_go(step.key)
            compare(f"{step.key}-{size[0]}x{size[1]}", await still(pilot))


@pytest.mark.parametrize("size", SIZES, ids=lambda size: "x".join(map(str, size)))
async def test_the_start_and_the_help_look_as_they_are_kept(size):
    async with Poolwright().run_test(size=size) as pilot:
        await see(pilot, "what do you want to do?")
        compare(f"start-{size[0]}x{size[1]}", await still(pilot))
    async with Poolwright("demo").run_test(size=size) as pilot:
        await see(pilot, "Next:")
        await still(pilot)
        await pilot.press("f1")
        compare(f"help-{size[0]}x{size[1]}", await still(pilot))


async def test_findings_with_their_remedies_look_as_they_are_kept(box_file):
    async with Poolwright(str(box_file)).run_test(size=(120, 40)) as pilot:
        await see(pilot, "Next:")
        await pilot.app.screen.action_go("thrusters")
        await see(pilot, " remedy: ")
        compare("findings-120x40", await still(pilot))


async def test_the_plain_ascii_screen_looks_as_it_is_kept(monkeypatch):
    monkeypatch.setenv("POOLWRIGHT_ASCII", "1")
    async with Poolwright("demo").run_test(size=(120, 40)) as pilot:
        await see(pilot, "Next:")
        text = await still(pilot)
        assert text.isascii()
        compare("ascii-120x40", text)
