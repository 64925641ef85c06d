"""Rows of any scene: as wide and as many as asked for, and joined as the frame is."""

from itertools import pairwise
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rich.cells import cell_len

from model.drawing.oblique import oblique_scene
from model.drawing.views import one_view, three_views
from model.survey import survey
from tests.drawing_designs import box_design, frame, random_design
from tests.generators import designs, tidy_designs
from tui.raster.axis import Axis
from tui.raster.braille import oblique_rows
from tui.raster.canvas import Canvas, text_of
from tui.raster.drawing import oblique_panel, sheet_panel
from tui.raster.glyphs import ASCII, BOX, DOWN, LEFT, RIGHT, UP
from tui.raster.layout import plots
from tui.raster.legend import legend_rows, sheet_legend
from tui.raster.orthographic import sheet_rows
from tui.raster.pipes import Pipes

SAFE = frozenset(" •─│┌┐└┘├┤┬┴┼═║╔╗╚╝╠╣╦╩╬░▒▓█▬■○◦●►◄▲▼·×…")
"""What the fonts of old Windows consoles carry beyond ASCII: code page 437 and WGL4 (from memory)."""


def all_rows(results, width, height, plain):
    yield sheet_panel(three_views(results), width, height, ascii=plain, beside=oblique_scene(results))
    yield sheet_panel(three_views(results, angle="first", named=True), width, height, ascii=plain)
    for view in ("front", "top", "side"):
        yield sheet_panel(one_view(results, view, named=True), width, height, ascii=plain)
    yield oblique_panel(oblique_scene(results), width, height, ascii=plain)


def assert_rectangle(rows, width, height):
    assert len(rows) == height
    for row in rows:
        assert sum(cell_len(text) for text, _ in row) == width
        assert all(text for text, _ in row)


@settings(max_examples=40, deadline=None)
@given(st.one_of(designs(), tidy_designs()), st.integers(1, 130), st.integers(1, 50), st.booleans())
def test_any_design_at_any_size_fills_exactly_its_canvas(design, width, height, plain):
    results = survey(design)
    for rows in all_rows(results, width, height, plain):
        assert_rectangle(rows, width, height)
        if plain:
            assert text_of(rows).isascii()


@pytest.mark.parametrize("size", [(1, 1), (2, 3), (10, 4), (20, 8), (40, 14), (80, 24), (120, 40), (240, 70)])
def test_the_box_at_any_size(size):
    for plain in (False, True):
        for rows in all_rows(survey(box_design()), *size, plain):
            assert_rectangle(rows, *size)


def test_the_views_keep_to_characters_of_old_console_fonts():
    for view in ("front", "top", "side"):
        text = text_of(sheet_panel(one_view(survey(box_design()), view), 80, 30))
        assert {mark for mark in text if not mark.isascii()} <= SAFE


@pytest.mark.parametrize("seed", range(20))
@pytest.mark.parametrize("view", ["front", "top", "side"])
def test_bars_that_meet_meet_in_the_cells(seed, view):
    """The two ends that bars have at one joint lie in one cell, whatever the scale."""
    results = survey(random_design(seed))
    sheet = one_view(results, view)
    plot = plots(sheet, 60, 24)[0]
    cells = {}
    for stroke in plot.scene.strokes:
        for point in stroke.points:
            cells.setdefault((round(point[0], 1), round(point[1], 1)), set()).add(plot.cell(point))
    assert all(len(found) == 1 for found in cells.values())


@pytest.mark.parametrize("seed", range(20))
@pytest.mark.parametrize("view", ["front", "top", "side"])
def test_every_drawn_bar_has_a_cell_of_its_own_line(seed, view):
    """Even a bar of 5 mm between two planes shows: there is a cell of it between its ends or at them."""
    results = survey(random_design(seed))
    plot = plots(one_view(results, view), 70, 30)[0]
    pipes = Pipes(plot, None)
    for stroke in plot.scene.strokes:
        pipes.lay(stroke)
    for stroke in plot.scene.strokes:
        start, end = (plot.cell(point) for point in stroke.points)
        assert start != end
        assert all(pipes.arms.get(cell) for cell in (start, end))


def test_neighbouring_cells_agree_about_their_lines():
    """In the side view of the box, whose bars all meet in its near and far sides, no line ends in the air."""
    plot = plots(one_view(survey(box_design()), "side"), 60, 24)[0]
    pipes = Pipes(plot, None)
    for stroke in plot.scene.strokes:
        if stroke.role == "bar":
            pipes.lay(stroke)
    for (column, row), arms in pipes.arms.items():
        for arm, back, step in (
            (RIGHT, LEFT, (1, 0)),
            (LEFT, RIGHT, (-1, 0)),
            (UP, DOWN, (0, -1)),
            (DOWN, UP, (0, 1)),
        ):
            if arms & arm:
                assert pipes.arms[column + step[0], row + step[1]] & back


def test_a_corner_that_turns_towards_the_viewer_is_joined():
    """A rail at the bow, two bars astern from its ends, and posts down from those: one line on the sheet."""
    planes = ((0.0, 0.2), (0.0, 0.2), (0.0, 0.2))
    bars = [((1, 0, 1), (1, 1, 1))]
    for side in (0, 1):
        bars += [((0, side, 1), (1, side, 1)), ((0, side, 0), (0, side, 1))]
    lines = text_of(
        sheet_rows(one_view(survey(box_design(arrangements=(frame(bars, planes),))), "front"), 50, 16)
    )
    assert "╔═" in lines
    assert "═╗" in lines


def test_a_post_behind_a_rail_without_a_way_to_it_is_not_joined():
    planes = ((0.0, 0.2), (0.0, 0.1, 0.2), (0.0, 0.2))
    bars = [((1, 0, 1), (1, 1, 1)), ((1, 1, 1), (1, 2, 1)), ((0, 1, 0), (0, 1, 1))]
    text = text_of(
        sheet_rows(one_view(survey(box_design(arrangements=(frame(bars, planes),))), "front"), 50, 16)
    )
    assert "╦" not in text
    assert "║" in text


def test_proportions_are_kept_for_cells_twice_as_high_as_wide():
    plot = plots(one_view(survey(box_design()), "side"), 120, 40)[0]
    wide = plot.column(0.0) - plot.column(-300.0)
    tall = plot.row(0.0) - plot.row(200.0)
    assert wide / (2 * tall) == pytest.approx(300 / 200, rel=0.06)


def test_every_letter_of_the_cut_list_stands_in_the_three_views():
    results = survey(box_design())
    rows = sheet_rows(three_views(results), 100, 36)
    shown = {text.strip() for row in rows for text, role in row if role == "label"}
    assert shown == {bar.letter for bar in results.frame.bars.values()}


def test_dimension_texts_stand_on_their_lines_with_a_space_on_each_side():
    text = text_of(sheet_rows(one_view(survey(box_design()), "side"), 80, 30))
    assert "─ 389 mm ─" in text
    assert "─ 150 ─" in text
    assert "252.9 mm" in text


def test_small_views_give_up_their_dimensions_before_the_drawing():
    text = text_of(sheet_rows(one_view(survey(box_design()), "side"), 20, 7))
    assert "389" not in text
    assert "╔" in text


@pytest.mark.parametrize(
    "kind",
    ["bar", "joint", "thruster", "float", "ballast", "attachment", "tether", "opening", "station", "level"],
)
def test_what_is_under_the_cursor_has_a_mark_of_its_own(kind):
    design = box_design()
    ids = {
        "bar": "b4",
        "joint": "j200",
        "thruster": "t1",
        "float": "f0",
        "ballast": "w",
        "attachment": "h",
        "tether": "r",
        "opening": "o1",
        "station": "st1",
        "level": "le2",
    }
    results = survey(design)
    plain = text_of(sheet_rows(one_view(results, "side"), 70, 26))
    rows = sheet_rows(one_view(results, "side", (kind, ids[kind])), 70, 26)
    assert text_of(rows) != plain
    assert any(role in ("marked", "centre") for row in rows for _, role in row)


def test_names_of_any_letters_keep_the_rows_straight():
    design = box_design()
    joints = tuple(
        joint.but(name=name)
        for joint, name in zip(
            design.arrangement.joints,
            ["鼻先の左", "a\nb\tc", "é" * 80, "[b]", "👩‍🔧", "ok", "x", "y", "z", "w"],
            strict=False,
        )
    )
    joints += design.arrangement.joints[len(joints) :]
    named = design.but(arrangements=(design.arrangement.but(joints=joints),))
    for joint in joints[:6]:
        for plain in (False, True):
            rows = sheet_rows(one_view(survey(named), "top", ("joint", joint.id)), 61, 21, ascii=plain)
            assert_rectangle(rows, 61, 21)


def test_the_legend_explains_each_sign_that_stands_in_the_drawing():
    sheet = three_views(survey(box_design()))
    text = text_of(legend_rows(sheet_legend(sheet), 200, 4))
    for sign in ("▒►", "░", "▓", "◦", "h ", "c ", "t ", "▼G", "▲B"):
        assert sign in text
    assert text.startswith("Third angle  A ")


def test_a_legend_leaves_out_what_does_not_fit_whole():
    rows = legend_rows(sheet_legend(three_views(survey(box_design()))), 30, 2)
    assert len(rows) <= 2
    assert_rectangle(rows, 30, len(rows))


@pytest.mark.parametrize("seed", range(50))
def test_an_axis_rises_and_keeps_its_places_apart_where_there_is_room(seed):
    dice = Random(seed)
    places = sorted(dice.uniform(0, 300) for _ in range(dice.randint(2, 8)))
    cells = dice.randint(2 * len(places) + 3, 60)
    axis = Axis(-10, 310, cells, places, (cells - 1) / 320)
    found = [axis.cell(place) for place in places]
    assert all(b > a for a, b in pairwise(found) if b or a) or any(b - a < 0.05 for a, b in pairwise(places))
    assert found == sorted(found)
    assert min(found) >= 0
    assert max(found) < cells
    assert axis.cell(-99) == 0
    assert axis.cell(999) == cells - 1


def test_arms_and_their_characters():
    """Each character of the double set has the arms that its Unicode name says."""
    assert BOX.pipe[RIGHT | DOWN] == "\N{BOX DRAWINGS DOUBLE DOWN AND RIGHT}"
    assert BOX.pipe[LEFT | DOWN] == "\N{BOX DRAWINGS DOUBLE DOWN AND LEFT}"
    assert BOX.pipe[UP | RIGHT] == "\N{BOX DRAWINGS DOUBLE UP AND RIGHT}"
    assert BOX.pipe[UP | LEFT] == "\N{BOX DRAWINGS DOUBLE UP AND LEFT}"
    assert BOX.pipe[UP | DOWN | RIGHT] == "\N{BOX DRAWINGS DOUBLE VERTICAL AND RIGHT}"
    assert BOX.pipe[UP | DOWN | LEFT] == "\N{BOX DRAWINGS DOUBLE VERTICAL AND LEFT}"
    assert BOX.pipe[LEFT | RIGHT | DOWN] == "\N{BOX DRAWINGS DOUBLE DOWN AND HORIZONTAL}"
    assert BOX.pipe[LEFT | RIGHT | UP] == "\N{BOX DRAWINGS DOUBLE UP AND HORIZONTAL}"
    assert BOX.thin[LEFT | RIGHT | UP] == "\N{BOX DRAWINGS LIGHT UP AND HORIZONTAL}"
    assert BOX.thin[UP | DOWN | LEFT] == "\N{BOX DRAWINGS LIGHT VERTICAL AND LEFT}"
    assert ASCII.pipe[RIGHT | DOWN] == "+"


def test_braille_dots_are_or_ed_where_lines_cross():
    from model.drawing.scene import Scene, Stroke

    lines = (Stroke(((0, 0), (3, 3)), "bar"), Stroke(((0, 3), (3, 0)), "bar"))
    rows = oblique_rows(Scene("oblique", "", (0, 0), (3, 3), lines), 2, 2)
    # 4 x 4 dots, both diagonals: left cell dots 1, 5, 6, 7; right cell dots 4, 2, 3, 8
    assert rows[1][0][0] == chr(0x2800 | 0x01 | 0x10 | 0x20 | 0x40) + chr(0x2800 | 0x08 | 0x02 | 0x04 | 0x80)


def test_writing_outside_the_canvas_is_harmless():
    canvas = Canvas(4, 2)
    canvas.write(-2, 0, "abcd", "x")
    canvas.write(3, 1, "abcd", "x")
    canvas.write(0, 7, "abcd", "x")
    canvas.run(-3, 99, 5, ("-", "x"))
    assert text_of(canvas.rows()) == "cd\n   a"


def test_half_a_wide_character_becomes_a_space():
    canvas = Canvas(4, 1)
    canvas.write(1, 0, "鼻", "x")
    canvas.put(2, 0, "|", "y")
    assert canvas.rows() == [[(" ", ""), (" ", "x"), ("|", "y"), (" ", "")]]


@pytest.mark.parametrize("plain", [False, True], ids=["boxes", "ascii"])
@pytest.mark.parametrize("view", ["front", "top", "side"])
def test_gear_in_one_place_keeps_all_its_letters(view, plain):
    """Hook, camera and tether, all at the middle of one bar: none is written over another."""
    design = box_design()
    run = design.arrangement
    bar = run.tether.bar
    gear = tuple(
        item.but(bar=bar, at=0.5, offset=(0, 0, 0), size=(0.06, 0.06, 0.06)) for item in run.attachments
    )
    results = survey(design.arranged(attachments=gear, tether=run.tether.but(at=0.5), plugs=()))
    for size in ((60, 16), (100, 40)):
        cells = [
            (text, role)
            for row in sheet_panel(one_view(results, view), *size, ascii=plain)
            for text, role in row
        ]
        for letter, role in (("h", "hook"), ("c", "camera"), ("t", "tether")):
            found = [text for text, its_role in cells if its_role == role and letter in text]
            assert found, f"{role} in {size}"
