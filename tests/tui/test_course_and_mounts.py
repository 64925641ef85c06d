"""The course on the page Brief, and mounts with their pull test on the page Thrusters, by keyboard."""

import pytest

from model.design import edits
from model.design.edits import Ref
from model.presets import find_preset, load_preset
from model.runs import run_time
from tests.tui.pages_app import SIZES, PageApp, demo, opened, typed


def bare():
    """The demo without a course."""
    return edits.set_field(demo(), Ref("brief"), "course", ())


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_a_course_is_written_leg_by_leg_and_timed(size):
    app = PageApp("brief", bare())
    async with app.run_test(size=size) as pilot:
        section = await opened(app, pilot, "Course")
        assert "No course yet" in app.text()
        section.query_one("#act-add").action_press()
        await pilot.pause()
        await typed(pilot, app.field("leg-ahead"), "3 m", "enter")
        await typed(pilot, app.field("leg-turn"), "90", "enter")
        (leg,) = app.design.brief.course
        assert (leg.ahead, leg.turn) == (3.0, 90.0)
        section.query_one("#act-copy").action_press()
        await pilot.pause()
        first, second = run_time(app.report.survey).legs
        assert first.time.value == pytest.approx(second.time.value)
        assert "3 m ahead" in app.text()
        assert "The whole run on paper" in app.text()
        await typed(pilot, app.field("leg-turn"), "-5", "enter")
        assert "!" in app.text(), "a turn below nothing is refused in a sentence"
        section.query_one("#act-remove").action_press()
        await pilot.pause()
        assert len(app.design.brief.course) == 1


async def test_a_pull_test_is_written_changed_and_taken_away():
    design = demo()
    thrusters = tuple(item.but(pull=None) for item in design.arrangement.thrusters)
    design = design.but(arrangements=(design.arrangement.but(thrusters=thrusters),))
    app = PageApp("thrusters", design)
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, "Mounts")
        await typed(pilot, app.field("pull-ahead"), "2,5", "enter")
        await pilot.pause()
        await typed(pilot, app.field("pull-astern"), "1.5", "enter")
        await typed(pilot, app.field("pull-volts"), "11", "enter")
        pull = app.design.arrangement.thrusters[0].pull
        assert (pull.ahead, pull.astern, pull.volts) == (2.5, 1.5, 11.0)
        assert "2.50 N" in app.text()
        await typed(pilot, app.field("pull-ahead"), "-1", "enter")
        assert app.design.arrangement.thrusters[0].pull == pull
        await typed(pilot, app.field("pull-ahead"), "", "enter")
        assert app.design.arrangement.thrusters[0].pull is None


async def test_holes_of_tied_motors_are_planned_and_told():
    design = load_preset(find_preset("demo", "newt"))
    ties = next(mount for mount in _mounts(design) if mount.method == "ties")
    thrusters = tuple(item.but(mount=ties.id, tie_holes=()) for item in design.arrangement.thrusters)
    supplies = design.supplies.but(mounts=tuple(_mounts(design)))
    design = design.but(supplies=supplies, arrangements=(design.arrangement.but(thrusters=thrusters),))
    app = PageApp("thrusters", design)
    async with app.run_test(size=SIZES[1]) as pilot:
        section = await opened(app, pilot, "Mounts")
        assert "to plan" in app.text()
        section.query_one("#act-holes").action_press()
        await pilot.pause()
        first = app.design.arrangement.thrusters[0]
        assert len(first.tie_holes) == 2
        bar = next(bar for bar in app.design.arrangement.bars if bar.id == first.bar)
        assert f"through {bar.name}" in section.listing.note(app.report, first.id)


def _mounts(design):
    """The mounts of the design, and one of ties where it has none."""
    known = {mount.method: mount for mount in load_preset(find_preset("motors", "small-12-volt")).mounts}
    return list({mount.id: mount for mount in (*design.supplies.mounts, known["ties"])}.values())
