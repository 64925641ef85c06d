"""The single holes of the ties on the page Thrusters, by keyboard: added, moved, changed, removed, undone."""

import pytest

from model.drawing.views import view_scene
from model.survey import survey
from tests.model.thrust_cases import HOLES, port, starboard, swimmer, tied
from tests.tui.pages_app import SIZES, PageApp, opened, typed
from tui.forms.items import ItemTable
from tui.forms.pick import Pick


def holes(app, name="port"):
    """The holes of a motor as the design has them."""
    return next(item.tie_holes for item in app.design.arrangement.thrusters if item.id == name)


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_a_hole_is_added_placed_and_taken_away_again(size):
    """The rail's pipe begins 19.05 mm from the joint; its motor sits 200 mm from it; holes at -+ 18 mm."""
    before = tied()
    app = PageApp("thrusters", before)
    async with app.run_test(size=size) as pilot:
        section = await opened(app, pilot, "Tie holes")
        assert "No holes for ties yet" in app.text()
        section.query_one("#act-add").action_press()
        await pilot.pause()
        assert [hole.along for hole in holes(app)] == pytest.approx([-0.018])
        assert " 163 " in app.text(), "182 - 19.05 is 162.95 mm from the sawn end"
        assert "thruster.tie-alone" in {finding.code for finding in app.report.findings}
        section.query_one(ItemTable).focus()
        await pilot.press("a")
        await pilot.pause()
        assert [hole.along for hole in holes(app)] == pytest.approx([-0.018, 0.018])
        assert "thruster.tie-alone" not in {finding.code for finding in app.report.findings}
        assert section.table.chosen == "1 port", "the new one is chosen"
        await typed(pilot, app.field("tie-from-end"), "250", "enter")
        assert holes(app)[1].along == pytest.approx((250 + 19.05 - 200) / 1000)
        await typed(pilot, app.field("tie-diameter"), "8", "enter")
        assert holes(app)[1].diameter == pytest.approx(0.008)
        section.query_one(ItemTable).focus()
        await pilot.press("right")
        await pilot.pause()
        assert holes(app)[1].along == pytest.approx((255 + 19.05 - 200) / 1000)
        await pilot.press("d")
        await pilot.pause()
        assert len(holes(app)) == 1
        assert app.labels[0] == "hole for port motor added"
        assert app.labels[-1] == "hole 2 of port motor removed"
        for _ in app.labels:
            await pilot.press("f2")
        await pilot.pause()
        assert app.design == before


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_what_cannot_be_drilled_is_refused_in_one_sentence_and_nothing_is_lost(size):
    app = PageApp("thrusters", tied(*HOLES))
    async with app.run_test(size=size) as pilot:
        await opened(app, pilot, "Tie holes")
        for text, words in (("400", "361.9 mm long"), ("200", "run into hole 2"), ("abc", "abc")):
            await typed(pilot, app.field("tie-from-end"), text, "enter")
            assert words in app.row("tie-from-end").refusal
            assert holes(app) == HOLES
        await typed(pilot, app.field("tie-diameter"), "22", "enter")
        assert "cuts bar 2 in two" in app.row("tie-diameter").refusal
        assert holes(app) == HOLES


async def test_only_sides_can_be_chosen_and_the_hole_is_marked():
    app = PageApp("thrusters", tied(*HOLES))
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Tie holes")
        face = app.field("tie-face")
        assert {value for _, value in face.options} == {"+y", "-y", "+z", "-z"}, "the rail runs ahead"
        face.focus()
        await pilot.press("right")
        await pilot.pause()
        assert holes(app)[0].face == "-z"
        section.query_one(ItemTable).focus()
        await pilot.press("down")
        await pilot.pause()
        assert app.marked[-1] == ("tie hole", "1 port")


async def test_which_motor_is_asked_where_several_are_tied_and_none_is_said():
    app = PageApp("thrusters", swimmer(port(mount="ties"), starboard(mount="ties")))
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Tie holes")
        section.query_one("#act-add").action_press()
        await pilot.pause()
        assert isinstance(app.screen, Pick)
        await pilot.press("down", "enter")
        await pilot.pause()
        assert (len(holes(app)), len(holes(app, "starboard"))) == (0, 1)
        app.present(swimmer(port(), starboard()))
        await pilot.pause()
        section.query_one("#act-add").action_press()
        await pilot.pause()
        assert "No motor is held by ties" in app.text()


def test_the_drawing_marks_the_chosen_hole_where_it_is():
    """18 mm ahead of the middle of the port rail, which is 300 mm to port, the box's middle at 150."""
    found = survey(tied(*HOLES))
    bar = found.frame.bars["b2"]
    x = (bar.start[0] + bar.end[0]) / 2 + (0.018 if bar.end[0] > bar.start[0] else -0.018)
    plain = view_scene(found, "top").marks
    scene = view_scene(found, "top", ("tie hole", "1 port"))
    (mark,) = set(scene.marks) - set(plain)
    assert scene.marked == mark.about == ("tie hole", "1 port")
    across, up = mark.at
    assert up == pytest.approx(-1000 * x) or up == pytest.approx(1000 * x)
    assert abs(across) == pytest.approx(abs(1000 * bar.start[1]))
    assert view_scene(found, "top", ("tie hole", "7 port")).marks == plain
