"""The page of the wires: planned from nothing, changed branch by branch, written beside the file."""

import pytest

from model.coach.finding import About
from tests.model.thrust_cases import CASES, SETTLED, port, starboard, swimmer
from tests.tui.fakes import see
from tests.tui.pages_app import SIZES, PageApp, demo, opened, typed
from tui.app import Poolwright
from tui.beside import write_beside

PLAN_MISSING = swimmer(port(), starboard(), power=None)
SECTIONS = {
    "power.fuse-missing": "Motors",
    "power.volts-lost": "Cable",
    "power.checks-open": "Checks",
    "thruster.move-missing": "Motors",
}


async def test_a_wiring_is_planned_from_nothing_with_fuses_and_left_out_again():
    app = PageApp("wires", PLAN_MISSING)
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        assert "No wiring planned yet" in app.text()
        await pilot.press("enter")
        await pilot.pause()
        power = app.design.arrangement.power
        assert power is not None
        assert power.main_fuse is not None
        assert all(item.branch.fuse for item in app.design.arrangement.thrusters)
        assert "All running:" in app.text()
        await pilot.press("enter")
        assert "planned already" in app.text()
        await pilot.press("tab", "enter")
        await pilot.pause()
        assert app.design.arrangement.power is None


async def test_without_a_motor_there_is_nothing_to_plan():
    app = PageApp("wires", swimmer(power=None))
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert "Place a motor" in app.text()
        for title in ("Motors", "Cable", "Diagram", "Checks"):
            await opened(app, pilot, title)
        assert app.design.arrangement.power is None


async def test_a_branch_has_its_fuse_colours_and_switch():
    app = PageApp("wires", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, "Motors")
        note = app.page.section.listing.note(app.report, app.design.arrangement.thrusters[0].id)
        assert "Propeller held fast" in app.text()
        assert "its fuse of 3 A blows and spares the motor" in note
        first = app.design.arrangement.thrusters[0]
        await typed(pilot, app.field("branch-fuse"), "2", "enter")
        await typed(pilot, app.field("branch-colours"), "white and green", "enter")
        app.field("branch-switching").focus()
        await pilot.press("right")
        await pilot.pause()
        assert "on-off switch (ahead only)" in app.text()
        branch = app.design.arrangement.thrusters[0].branch
        assert (branch.fuse, branch.colours, branch.switching) == (2.0, ("white", "green"), "on-off switch")
        await typed(pilot, app.field("branch-colours"), "white", "enter")
        assert "not two colours" in app.text()
        assert app.design.arrangement.thrusters[0].branch == branch
        await typed(pilot, app.field("branch-fuse"), "", "enter")
        assert app.design.arrangement.thrusters[0].branch.fuse is None
        assert "main only" in app.text()
        assert app.design.arrangement.thrusters[0].but(branch=first.branch) == first


async def test_a_thin_cable_shows_at_the_motor_and_a_gauge_is_found():
    app = PageApp("wires", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, "Cable")
        await typed(pilot, app.field("power-core_area"), "0,2", "enter")
        worst = max(app.report.survey.wiring.lost.values())
        assert f"{100 * worst:.0f} %" in app.text()
        section = await opened(app, pilot, "Gauges")
        section.focus_first()
        await pilot.press("enter")
        await app.workers.wait_for_complete()
        await pilot.pause()
        assert "Thick enough from" in app.text() or "None is thick enough" in app.text()
        assert "5 m more tether" in section.offer.words
        assert "top speed ahead" in section.offer.words


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_lines_of_the_gauges_fit_the_page(size):
    app = PageApp("wires", demo())
    async with app.run_test(size=size) as pilot:
        section = await opened(app, pilot, "Gauges")
        section.focus_first()
        await pilot.press("enter")
        await app.workers.wait_for_complete()
        await pilot.pause()
        table = [
            line for line in section.offer.words.splitlines() if line.startswith(("one core", *"0123456789"))
        ]
        assert len(table) > 4
        assert max(map(len, table)) <= 52


async def test_the_diagram_tells_of_each_fuse_and_colour():
    app = PageApp("wires", demo())
    async with app.run_test(size=SIZES[1]) as pilot:
        section = await opened(app, pilot, "Diagram")
        text = section.facts(app.report)
        for words in ("fuse 7.5 A", "red and black", "reversing switch"):
            assert words in text


@pytest.mark.parametrize("code", SECTIONS)
async def test_a_finding_leads_to_its_section(code):
    case = next(case for case in CASES if case.code == code)
    app = PageApp("wires", case.shows)
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        app.page.focus_about(About(*case.about))
        await pilot.pause()
        await pilot.pause()
        assert app.page.section.title == SECTIONS[code]


async def test_the_page_cautions():
    app = PageApp("wires", swimmer(port(), power=SETTLED))
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        words = ("no mains", "175 mm", "residual-current", "isolated 12 V side", "Unplug", "never left alone")
        assert [word for word in words if word not in app.page.SAFETY] == []
        assert app.page.SAFETY in app.page.HELP
        assert "SAFETY Low-voltage DC only" in app.text()


async def test_the_diagram_is_written_beside_the_file(tmp_path):
    async with Poolwright("demo").run_test(size=(120, 40)) as pilot:
        await see(pilot, "Next:")
        await pilot.app.screen.action_go("wires")
        await see(pilot, "Checks")
        page = pilot.app.screen.page
        section = await page.open_section(4)
        section.focus_first()
        await pilot.press("enter")
        await see(pilot, "Written:")
        path = pilot.app.screen.keeper.path
        assert path.with_name(f"{path.stem}-wiring.svg").read_text(encoding="utf-8").startswith("<svg")


def test_what_cannot_be_written_is_said(tmp_path):
    said = write_beside(tmp_path / "nowhere" / "design.toml", "wiring.svg", "<svg/>")
    assert "design-wiring.svg" in said
    assert "expected" in said
