"""What a team notes on the pages Money, Build and Pool day, each as it is read off."""

import os
import stat

import pytest
from textual.widgets import Static

from model.building.as_built import measured_pieces
from model.design.edits.evidence import done_steps, note_trial
from model.review import review
from tests.tui.fakes import see, until
from tests.tui.pages_app import SIZES, PageApp, demo, opened, typed
from tui import stamp
from tui.app import Poolwright
from tui.dialogs.sheets import SheetsDialog
from tui.forms.items import ItemTable
from tui.pages.money_ledger import _take
from tui.pages.pool_fields import read_force
from tui.raster.sticks import stick_row

LEDGER = """date,shop,what,amount
2026-03-14,Quay,ties,"3,20"
2026-03-15,Quay,glue,-4
2026-03-16,Quay,foam,cheap
"""


@pytest.fixture(autouse=True)
def author():
    stamp.set_who("Ada")
    yield
    stamp.set_who("")


async def test_a_line_of_the_list_is_paid_and_needs_not_be_bought_again():
    app = PageApp("money", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await typed(pilot, app.field("shop-shop"), "Quay", "enter")
        await typed(pilot, app.field("paid"), "4,10", "enter")
        (line,) = app.design.evidence.ledger
        assert (line.amount, line.shop, line.who, line.quantity) == (4.1, "Quay", "Ada", 2)
        first = app.page.section.query_one(ItemTable).shown[0]
        assert first.cells[2:4] == ("2", "0")
        assert "55 credits" in app.text()


async def test_a_table_of_purchases_is_read_and_its_bad_rows_are_named(tmp_path):
    table = tmp_path / "till.csv"
    table.write_text(LEDGER, encoding="utf-8")
    app = PageApp("money", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Ledger")
        assert await _take(section, table) == ""
        await pilot.pause()
        assert [(line.what, line.amount) for line in app.design.evidence.ledger] == [("ties", 3.2)]
        assert "Nothing was taken" in await _take(section, table)
        assert "no such file" in await _take(section, tmp_path / "none.csv")


async def test_a_piece_is_measured_and_sawn_anew():
    app = PageApp("build", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, "Pieces")
        await typed(pilot, app.field("piece-length"), "214", "enter")
        (piece,) = measured_pieces(app.design)
        assert (piece.cut.length, piece.cut.planned) == (0.214, 0.217)
        assert "3 mm too short" in " ".join(app.text().split())
        await typed(pilot, app.field("piece-length"), "", "enter")
        assert measured_pieces(app.design) == ()
        assert not app.design.evidence.cuts[0].stands, "the measurement stays in the notebook"


async def test_a_step_is_ticked_with_time_and_author_and_ticked_off_again():
    app = PageApp("build", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.press("space")
        assert done_steps(app.design) == {"mark"}
        assert app.design.evidence.ticks[0].who == "Ada"
        await pilot.press("space")
        assert done_steps(app.design) == frozenset()


@pytest.mark.parametrize(
    ("row", "key", "text", "value"),
    [
        ("spare:", "trial-washers", "100", 0.087),
        ("spare:", "trial-scale", "40", -0.04),
        ("pitch:", "trial-down", "2,5", -2.5),
        ("roll:", "trial-port", "1", 1.0),
        ("pull ahead:", "trial-scale", "300 g", 0.3 * 9.80665),
        ("weight:", "trial-scale", "1.42 kg", 1.42),
        ("battery:", "trial-watch", "55", 55.0),
    ],
)
async def test_a_trial_is_written_as_it_is_read_off(row, key, text, value):
    app = PageApp("pool", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Trials")
        section.table.choose(row)
        await pilot.pause()
        await typed(pilot, app.field(key), text, "enter")
        (trial,) = app.design.evidence.trials
        assert trial.value == pytest.approx(value, rel=1e-3)
        assert trial.model is not None
        assert app.text().count("Correct the model") == 1


async def test_the_course_is_as_long_as_was_said():
    app = PageApp("pool", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Trials")
        section.table.choose("course:")
        await pilot.pause()
        await typed(pilot, app.field("trial-over"), "5 m", "enter")
        await typed(pilot, app.field("trial-watch"), "21", "enter")
        (trial,) = app.design.evidence.trials
        assert (trial.over, trial.value) == (5.0, 21.0)
        assert trial.model > 12, "the model is asked for the same length"


async def test_a_sign_is_refused_in_words():
    app = PageApp("pool", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Trials")
        section.table.choose("pitch:")
        await pilot.pause()
        await typed(pilot, app.field("trial-up"), "-3", "enter")
        assert app.design.evidence.trials == ()
        said = "! Bow up by: found -3 degrees; expected 0 degrees to 180 degrees."
        assert app.row("trial-up").refusal == said


async def test_a_correction_makes_the_model_say_what_was_measured():
    heavier = note_trial(demo(), "spare", review(demo()).survey.balance.spare + 0.005, "2026-03-14")
    app = PageApp("pool", heavier)
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Trials")
        section.table.choose("spare:")
        await pilot.pause()
        section.query_one("#act-correct").action_press()
        await pilot.pause()
        measured = app.design.evidence.trials[0].value
        assert app.report.survey.balance.spare == pytest.approx(measured, abs=2e-4)
        await pilot.press("f2")
        assert app.design == heavier


async def test_the_list_before_a_dive_begins_anew_and_keeps_what_was_gone_through():
    app = PageApp("pool", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.press("space", "down", "space")
        assert len(done_steps(app.design)) == 2
        app.page.section.query_one("#act-anew").action_press()
        await pilot.pause()
        assert done_steps(app.design) == frozenset()
        assert len(app.design.evidence.ticks) == 2


def test_a_stick_is_to_scale():
    row = stick_row([("A", 0.6), ("B", 0.3)], 0.1, 40)
    edges = [place for place, mark in enumerate(row) if mark == "│"]
    assert edges == [0, 24, 36, 40]


def test_a_scale_may_read_grams_or_newtons():
    assert read_force("2,5", "mm") == 2.5
    assert read_force("1 kg", "mm") == pytest.approx(9.80665)


async def sheets_of(tmp_path, folder):
    """The dialog of the sheets after they were asked for."""
    app = Poolwright("demo")
    async with app.run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")  # no dialog of the start may come in between
        dialog = SheetsDialog(review(demo()), tmp_path / "newt.toml")
        await app.push_screen(dialog)
        dialog.query_one("#folder").value = str(folder)
        await pilot.press("enter")
        told = dialog.query_one("#progress", Static)
        await until(pilot, lambda: "written" in str(told.content), "the end")
        return str(told.content)


async def test_the_sheets_are_made_beside_the_design(tmp_path):
    told = await sheets_of(tmp_path, "")
    made = {path.suffix for path in (tmp_path / "newt-sheets").iterdir()}
    assert made == {".pdf", ".html", ".svg", ".csv"}
    assert "newt-sheets.pdf, A4" in told


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write everywhere")
async def test_a_folder_that_cannot_be_written_is_said(tmp_path):
    tmp_path.chmod(stat.S_IRUSR | stat.S_IXUSR)
    try:
        told = await sheets_of(tmp_path, "")
    finally:
        tmp_path.chmod(stat.S_IRWXU)
    assert told.startswith("! Nothing was written")


async def test_a_file_in_the_place_of_the_folder_is_said(tmp_path):
    (tmp_path / "taken").write_text("mine")
    told = await sheets_of(tmp_path, tmp_path / "taken")
    assert told.startswith("! Nothing was written")
    assert "\n" not in told
    assert (tmp_path / "taken").read_text() == "mine"
