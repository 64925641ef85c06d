"""Stock: what the ruler says of the team's own parts, and what is in the box, by keyboard."""

import pytest

from model.design import edits
from tests.tui.fakes import flowing
from tests.tui.pages_app import SIZES, PageApp, demo, typed
from tui.forms.items import ItemTable
from tui.forms.pick import Pick

MEASURE, BOX, FITTINGS = 1, 2, 4


async def opened(app, pilot, number):
    """A section of the page, with the focus in its table."""
    await pilot.pause()
    await app.page.open_section(number)
    app.page.section.table.focus()
    await pilot.pause()
    return app.page.section


def row(section, words):
    """The key of the row whose first cell begins with some words, put under the cursor."""
    key = next(row.key for row in section.table.shown if row.cells[0].startswith(words))
    assert section.table.choose(key)
    return key


def cells(section, key):
    return next(row.cells for row in section.table.shown if row.key == key)


def cut(app, name):
    """A cut in millimetres."""
    return 1000 * next(bar.cut for bar in app.report.survey.frame.bars.values() if bar.name == name)


async def test_an_elbow_under_the_ruler_changes_the_cuts_between_elbows():
    app = PageApp("stock", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, MEASURE)
        bar = next(
            bar
            for bar in app.report.survey.frame.bars.values()
            if all(app.report.survey.frame.joints[j].match.fitting.id == "elbow" for j in bar.joints)
        )
        before = cut(app, bar.name)
        key = row(section, "elbow: face to far side")
        await pilot.pause()
        await typed(pilot, app.field("measured-length"), "38", "enter")
        # centre to stop = 38 - 26/2 (half a hub) - 16 (socket) = 9 mm, where 11 are printed
        assert cells(section, key) == ("elbow: face to far side", "38", "centre to stop", "9", "11")
        assert cut(app, bar.name) == pytest.approx(before + 2 * (11 - 9), abs=1e-6)
        section.table.focus()
        await pilot.press("d")
        await pilot.pause()
        assert cells(section, key)[1:] == ("-", "centre to stop", "11", "11")
        assert app.design == demo()


async def test_a_dry_joint_gives_the_push_in_depth():
    app = PageApp("stock", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, MEASURE)
        key = row(section, "dry joint in tee")
        await pilot.pause()
        await typed(pilot, app.field("measured-joint"), "100 x 80", "enter")
        assert "write first piece x second piece x the whole" in app.row("measured-joint").refusal
        await typed(pilot, app.field("measured-joint"), "100 x 80 x 210", "enter")
        # face to face 2 x (11 + 16) = 54; (54 + 100 + 80 - 210) / 2 = 12 mm at each end
        assert cells(section, key)[1:] == ("done", "push-in depth", "12", "10.5")
        assert "Push-in depth 12 mm, printed 10.5 mm" in app.text()
        await typed(pilot, app.field("measured-joint"), "100 x 80 x 300", "enter")
        assert "longer than its pieces" in app.row("measured-joint").refusal
        assert cells(section, key)[3] == "12"


async def test_a_dry_joint_may_be_made_in_another_fitting():
    app = PageApp("stock", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, MEASURE)
        row(section, "dry joint in tee")
        await pilot.pause()
        app.query_one("#act-joint-in").action_press()
        await pilot.pause()
        assert isinstance(app.screen, Pick)
        await pilot.press("c", "enter")
        await pilot.pause()
        key = row(section, "dry joint in coupling")
        await typed(pilot, app.field("measured-joint"), "100 x 100 x 213", "enter")
        # face to face of the coupling 2 x (1.5 + 16) = 35; (35 + 200 - 213) / 2 = 11
        assert cells(section, key)[3] == "11"
        assert app.design.stock.own.pipes[0].dry_joint.fitting == "coupling"


async def test_a_hub_no_wider_than_its_pipe_is_refused_beside_its_field():
    app = PageApp("stock", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, MEASURE)
        row(section, "hub for")
        await pilot.pause()
        await typed(pilot, app.field("measured-length"), "19", "enter")
        assert "must be wider than the pipe" in app.row("measured-length").refusal
        assert app.design == demo()


@pytest.mark.parametrize("size", SIZES, ids=["small", "large"])
async def test_each_reading_shows_how_to_hold_the_ruler_within_the_page(size):
    app = PageApp("stock", demo())
    async with app.run_test(size=size) as pilot:
        section = await opened(app, pilot, MEASURE)
        seen = set()
        for each in section.table.shown:
            section.table.choose(each.key)
            await pilot.pause()
            note = section.query_one(".note")
            drawing = str(note.content)
            seen.add(drawing)
            assert max(map(len, drawing.splitlines())) <= note.size.width
        # hub, depth, run, branch, joint; a 45-degree elbow and a cap stand on the table
        assert len(seen) == 7
        assert sum("Stand it on" in drawing for drawing in seen) == 2


async def test_what_is_in_the_box_is_taken_off_what_must_be_bought():
    app = PageApp("stock", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, BOX)
        key = row(section, "elbow")
        await pilot.pause()
        await typed(pilot, app.field("box-count"), "10", "enter")
        need = int(cells(section, key)[2])
        assert cells(section, key) == ("elbow", "10", str(need), "-", str(10 - need))
        assert f"Left over: {10 - need} x elbow" in app.text()
        await typed(pilot, app.field("box-count"), "three", "enter")
        assert app.row("box-count").refusal


async def test_the_box_says_what_it_cannot_count_yet():
    design = demo()
    odd = design.arrangement.bars[0]
    joints = tuple(
        each.but(fitting="cap") if each.id == odd.start else each for each in design.arrangement.joints
    )
    app = PageApp("stock", design.arranged(joints=joints))
    held = sum(odd.start in (bar.start, bar.end) for bar in design.arrangement.bars)
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, BOX)
        assert f"Not counted yet: 1 joint and {held} bars, where no fitting fits." in flowing(app.text())


async def test_a_piece_of_pipe_in_the_box_by_keyboard():
    app = PageApp("stock", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, BOX)
        await pilot.press("a")
        await pilot.pause()
        assert section.table.chosen == "piece:0", "the new piece has the cursor"
        await typed(pilot, app.field("box-length"), "1500", "enter")
        await typed(pilot, app.field("box-count"), "2", "enter")
        (piece,) = app.design.stock.on_hand.pieces
        assert (piece.length, piece.count) == (1.5, 2)
        assert cells(section, "piece:0")[0].startswith("1500 mm of 20 mm pipe")
        app.query_one(ItemTable).focus()
        await pilot.press("d")
        await pilot.pause()
        assert app.design.stock.on_hand.pieces == ()


async def test_the_box_that_is_all_there_is_names_what_it_lacks():
    app = PageApp("stock", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, BOX)
        app.field("box-only").tick(0)
        await pilot.pause()
        assert app.design.stock.on_hand.only
        finding = next(each for each in app.report.findings if each.code == "stock.box-short")
        app.page.focus_about(finding.about)
        await pilot.pause()
        assert app.page.section.title == "In the box"


async def test_the_range_in_use_is_marked_and_choosing_it_again_changes_nothing():
    app = PageApp("stock", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        assert app.focused is app.field("stock-name"), "two Enters must not put another range in its place"
        app.query_one("#act-stock").focus()
        await pilot.press("enter")
        await pilot.pause()
        assert "20 mm metric PVC-U, plumbing range (in use)" in app.text()
        await pilot.press("enter")
        await pilot.pause()
        assert "is in use already; nothing is changed." in app.text()
        assert app.design == demo()
        design = edits.measure_fitting(demo(), "tee", face_to_face=0.05)
        app.present(design)
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("down", "enter")
        await pilot.pause()
        assert app.design.stock.name.startswith("25 mm")
        assert app.labels == [
            "stock 25 mm metric PVC-U, plumbing range; what you measured or counted of tee does not fit it "
            "and is gone"
        ]
        await pilot.press("f2")
        await pilot.pause()
        assert app.design == design


@pytest.mark.parametrize("size", SIZES, ids=["small", "large"])
async def test_a_fitting_that_the_range_lacks_is_added_by_keyboard(size):
    app = PageApp("stock", demo())
    async with app.run_test(size=size) as pilot:
        section = await opened(app, pilot, FITTINGS)
        assert "corner" not in {each.shape for each in app.design.stock.fittings}
        await pilot.press("a")
        await pilot.pause()
        assert isinstance(app.screen, Pick)
        assert "three-way corner for 20 mm pipe: ahead, port, up" in flowing(app.text())
        await pilot.press("t", "enter")
        await pilot.pause()
        assert app.design.stock.fittings[-1].name == "three-way corner for 20 mm pipe"
        key = row(section, "three-way corner")
        assert cells(section, key)[1] != "-"
        await pilot.press("d")
        await pilot.pause()
        assert app.design == demo()
