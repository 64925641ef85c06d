"""The drawing panel in a running app: what it shows, its keys, and that it draws no more than it must."""

from dataclasses import dataclass

import pytest
from textual.app import App

from model.coach.finding import About
from model.survey import Survey, survey
from tests.drawing_designs import box_design
from tui.panels.drawing import LOOKS, NOTHING, VIEWS, DrawingPanel
from tui.raster.canvas import text_of

NOT_THE_FRAME = ("thrusters", "floats", "ballasts", "attachments", "openings", "plugs")


@dataclass
class Shown:
    """As much of a report as the panel asks for."""

    survey: Survey


class Host(App):
    CSS = "DrawingPanel { height: 1fr; }"

    def compose(self):
        yield DrawingPanel()

    @property
    def panel(self):
        return self.query_one(DrawingPanel)


def report(**changes):
    return Shown(survey(box_design(**changes)))


def screen_text(app):
    lines = app.screen._compositor.render_strips()
    return "\n".join("".join(segment.text for segment in strip).rstrip() for strip in lines)


async def test_it_is_blank_until_there_is_a_report_and_without_bars_it_says_so():
    async with Host().run_test(size=(80, 24)) as pilot:
        assert not screen_text(pilot.app).strip()
        bare = box_design()
        bare = bare.arranged(**dict.fromkeys(NOT_THE_FRAME, ()), bars=(), joints=(), tether=None)
        pilot.app.panel.report = Shown(survey(bare))
        await pilot.pause()
        assert NOTHING in screen_text(pilot.app)


async def test_a_report_is_drawn_on_the_screen():
    async with Host().run_test(size=(120, 40)) as pilot:
        pilot.app.panel.report = report()
        await pilot.pause()
        text = screen_text(pilot.app)
        for words in (
            "Front: port on the right",
            "Top: bow at the bottom",
            "Side, from port",
            "Oblique",
            "389 mm",
            "Third angle",
        ):
            assert words in text


@pytest.mark.parametrize(
    ("size", "view"), [((120, 40), "three"), ((80, 24), "three"), ((60, 20), "front"), ((80, 20), "front")]
)
async def test_a_small_panel_shows_one_view_with_its_name(size, view):
    async with Host().run_test(size=size) as pilot:
        panel = pilot.app.panel
        panel.report = report()
        await pilot.pause()
        assert panel.shown_view == view
        assert "Front" in screen_text(pilot.app)


async def test_keys_turn_through_the_views():
    async with Host().run_test(size=(80, 24)) as pilot:
        panel = pilot.app.panel
        panel.report = report()
        panel.focus()
        seen = []
        for _ in VIEWS:
            await pilot.press("v")
            seen.append(panel.view)
        assert sorted(seen) == sorted(VIEWS)
        assert panel.view == "three"


async def test_arrows_turn_the_oblique_view():
    async with Host().run_test(size=(80, 24)) as pilot:
        panel = pilot.app.panel
        panel.report = report()
        panel.view = "oblique"
        panel.focus()
        await pilot.pause()
        before = text_of(panel.rows())
        await pilot.press("right", "up")
        assert panel.turned == (45, 40)
        assert text_of(panel.rows()) != before
        await pilot.press(*["up"] * 9)
        assert panel.turned[1] == 90


async def test_angle_and_names_at_a_key():
    async with Host().run_test(size=(120, 40)) as pilot:
        panel = pilot.app.panel
        panel.report = report()
        panel.focus()
        await pilot.press("a", "n")
        text = screen_text(pilot.app)
        assert "First angle" in text
        assert "joint 002" in text


async def test_what_is_under_the_cursor_is_marked():
    async with Host().run_test(size=(80, 24)) as pilot:
        panel = pilot.app.panel
        panel.report = report()
        panel.view = "side"
        panel.marked = About("bar", "b4")
        await pilot.pause()
        assert "▬▬" in screen_text(pilot.app)


async def test_ascii_keeps_to_ascii():
    async with Host().run_test(size=(120, 40)) as pilot:
        panel = pilot.app.panel
        panel.report = report()
        panel.ascii = True
        await pilot.pause()
        assert text_of(panel.rows()).isascii()


async def test_it_draws_again_only_when_something_changed(monkeypatch):
    drawn = []
    draw = DrawingPanel._draw
    monkeypatch.setattr(DrawingPanel, "_draw", lambda panel: drawn.append(1) or draw(panel))
    async with Host().run_test(size=(80, 24)) as pilot:
        panel = pilot.app.panel
        panel.report = shown = report()
        await pilot.pause()
        count = len(drawn)
        panel.report = shown
        panel.refresh()
        await pilot.pause()
        assert len(drawn) == count
        panel.report = report()
        await pilot.pause()
        assert len(drawn) == count + 1


async def test_a_new_size_is_drawn_anew():
    async with Host().run_test(size=(80, 24)) as pilot:
        panel = pilot.app.panel
        panel.report = report()
        await pilot.pause()
        await pilot.resize_terminal(120, 40)
        await pilot.pause()
        assert len(panel.rows()) == 40


def test_every_role_has_a_style():
    from typing import get_args

    from model.drawing.scene import Role
    from tui.panels.drawing import PARTS

    shown = {PARTS.get(role, role) for role in get_args(Role)} - {"mount", "fitting", "name"}
    assert shown <= LOOKS.keys()


def test_the_panel_brings_no_model_in_before_it_draws():
    import subprocess
    import sys

    code = "import sys, tui.panels.drawing; print(any(name.split('.')[0] == 'model' for name in sys.modules))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


async def test_a_click_asks_for_a_mark_on_what_is_there():
    asked = []

    class Listening(Host):
        def on_mark_requested(self, event):
            asked.append((event.kind, event.id))

    async with Listening().run_test(size=(80, 24)) as pilot:
        panel = pilot.app.panel
        panel.report = report()
        panel.view = "side"
        await pilot.pause()
        row = next(y for y, line in enumerate(screen_text(pilot.app).splitlines()) if " D ═" in line)
        column = screen_text(pilot.app).splitlines()[row].index(" D ") + 1
        await pilot.click(DrawingPanel, offset=(column, row))
        await pilot.click(DrawingPanel, offset=(0, 0))
        assert asked[0][0] == "bar"
        assert asked[1] == ("", "")
