"""Fittings: what fits is told with price, weight and sockets; where nothing does, the ways are told first."""

import pytest
from textual.widgets import OptionList, Static

from model.design import edits
from tests.tui.fakes import until
from tests.tui.pages_app import SIZES, PageApp, demo
from tui.dialogs.ways import WaysDialog

CORNER = ("x-nofu", "y-kimu", "z-tika")
FOOT = ("x-nofu", "y-kimu", "z-pego")


def with_corner():
    """The demo with a post at its port bow corner, which plumbing fittings cannot hold."""
    return edits.add_bar(demo(), CORNER, FOOT)


def corner_of(app):
    return next(joint.id for joint in app.design.arrangement.joints if joint.planes == CORNER)


async def test_every_fitting_that_fits_stands_with_price_weight_and_spare_sockets_in_words():
    app = PageApp("fittings", edits.set_held(demo(), "tee", 3))
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        app.page.section.table.choose(corner_of(app))
        await pilot.pause()
        note = str(app.page.section.query_one(".note", Static).content)
        head, *lines = note.splitlines()
        assert head == "Bars leave: astern, starboard."
        # elbow: 11 + 16 mm from centre to face, and 13 mm of hub beyond its centre: 40
        assert lines[0] == "► elbow: 0.5 credits, 15 g, none spare, 40 x 40 x 26 mm"
        assert lines[1] == "  tee: 0.65 credits, 19 g, spare socket ahead, 3 in the box, 54 x 40 x 26 mm"
        assert lines[2] == "  flat cross: 1.6 credits, 24 g, spare socket ahead, port, 54 x 54 x 26 mm"
        assert [words.partition(":")[0] for words, _ in app.field("joint-fitting").options[1:]] == [
            "elbow",
            "tee",
            "flat cross",
        ]


@pytest.mark.parametrize("size", SIZES, ids=["small", "large"])
async def test_where_nothing_fits_each_way_tells_what_it_takes_before_it_is_taken(size):
    app = PageApp("fittings", with_corner())
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        app.page.section.table.choose(corner_of(app))
        await pilot.pause()
        assert "Press 'Ways to rebuild it'" in " ".join(app.text().split())
        app.query_one("#act-ways").action_press()
        await until(pilot, lambda: isinstance(app.screen, WaysDialog), "the ways")
        await until(pilot, lambda: len(app.screen.found) >= 2, "two ways")
        takes = str(app.screen.query_one("#takes", Static).content)
        assert all(word in takes for word in ("elbow", "Costs", "size"))
        assert app.design == with_corner(), "nothing is taken yet"
        assert app.screen.query_one(OptionList).option_count >= 2
        label = app.screen.found[1].label
        await pilot.press("down", "enter")
        await pilot.pause()
        assert app.labels == [label]
        assert all(joint.match for joint in app.report.survey.frame.joints.values())


async def test_esc_leaves_the_ways_and_a_joint_that_is_fine_has_none():
    app = PageApp("fittings", with_corner())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        app.page.section.table.choose(corner_of(app))
        app.query_one("#act-ways").action_press()
        await until(pilot, lambda: isinstance(app.screen, WaysDialog), "the ways")
        await pilot.press("escape")
        await pilot.pause()
        assert app.design == with_corner()
        fine = next(joint.id for joint in app.report.survey.frame.joints.values() if joint.match)
        app.page.section.table.choose(fine)
        app.query_one("#act-ways").action_press()
        await pilot.pause()
        assert "Nothing is wrong" in app.text()
