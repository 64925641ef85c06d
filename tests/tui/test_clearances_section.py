"""Room round each propeller on the page Thrusters: what the model says, and the guard by keyboard."""

import pytest

from model.design import Branch
from model.review import review
from tests.model.thrust_cases import cable, port, starboard, swimmer, upright
from tests.tui.pages_app import SIZES, PageApp, opened
from tui.forms.items import ItemTable
from tui.pages.thrusters_clear import note, rows

TIGHT = swimmer(port(offset=(0, 0.0417, 0)), starboard(), tether=cable())


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_what_is_too_near_is_told_with_a_sign_and_what_is_asked(size):
    """41.7 - 25 - 10.7 mm leave 6.0 mm of the 10 mm that are asked."""
    app = PageApp("thrusters", TIGHT)
    async with app.run_test(size=size) as pilot:
        section = await opened(app, pilot, "Clearances")
        await pilot.pause()
        first, second = section.table.shown
        assert first.cells[:3] == ("port motor", "bar 2", "6 !")
        assert "!" not in second.cells[2]
        words = section.listing.note(app.report, "port")
        assert "Nearest: bar 2, 6 mm; asked 10 mm." in words
        assert "asked without a guard 50 mm" in words
        assert "bar 2" in app.text()


async def test_a_guard_is_put_on_where_the_room_is_told():
    near = swimmer(upright(bar="b4", at=0.4, offset=(0.06, 0, 0)), tether=cable())
    app = PageApp("thrusters", near)
    async with app.run_test(size=SIZES[1]) as pilot:
        section = await opened(app, pilot, "Clearances")
        await pilot.pause()
        assert section.table.shown[0].cells[-1] == "no !"
        section.query_one(ItemTable).focus()
        await pilot.press("enter", "space")
        await pilot.pause()
        assert app.design.arrangement.thrusters[0].guard
        assert section.table.shown[0].cells[-1] == "yes"
        assert "the guard keeps it out" in section.listing.note(app.report, "lift")


async def test_a_vehicle_that_sinks_and_one_without_motors_say_so():
    app = PageApp("thrusters", swimmer(port(), starboard(), floats=()))
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Clearances")
        assert "does not float" in section.listing.note(app.report, "port")
        app.present(swimmer())
        await pilot.pause()
        assert "No thruster yet" in app.text()


def test_a_motor_that_never_runs_astern_has_no_stream_astern_and_says_why():
    """A bar close before the propeller is in its stream astern: it counts only where the motor runs so."""
    close = {"bar": "b1", "offset": (0, 0, 0.1), "at": 0.5, "to": "-z"}
    both, switched, measured = (
        review(swimmer(upright(**close, **change)))
        for change in (
            {"branch": Branch(fuse=3.0)},
            {"branch": Branch(fuse=3.0, switching="on-off switch")},
            {"branch": Branch(fuse=3.0), "pull": {"ahead": 2.5, "astern": 0.0}},
        )
    )
    assert "; astern: 94 % in all: starboard float" in note(both, "lift")
    assert rows(both)[0].cells[4] != "0 %"
    why = {"its switch only turns it on and off": switched, "its propeller pulls nothing": measured}
    for words, report in why.items():
        told = note(report, "lift")
        assert f"It has none astern, for it never runs astern: {words}." in told
        assert "astern: nothing" not in told
        ahead = float(rows(report)[0].cells[4].split()[0])
        assert ahead == pytest.approx(100 * report.survey.clear[0].ahead.lost, abs=0.1)
