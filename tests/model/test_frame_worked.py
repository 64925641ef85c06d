"""Frames worked out by hand: cuts, sizes and letters."""

import pytest

from model.design import Design
from model.frame.layout import heading, lay_out
from model.frame.letters import cut_list
from model.survey import survey
from tests import worked

INCH = 0.0254


def rectangle(**changes: object) -> Design:
    """Four elbows, a tee in the middle of each long side, and a bar between the tees' branches.

    Common practice, no source: half-inch elbow 1.8 in from face to far side, tee 2.5 in face to face,
    pipe 1/2 in into each socket.  Overall 13 1/2 x 8 1/4 in, so elbow centres are 1.1 in closer.
    """
    x = tuple(place * INCH for place in (0.0, 6.2, 12.4))
    run = worked.arrangement(x, (0.0, 7.15 * INCH), (0.0,), [*worked.FLAT, ((1, 0, 0), (1, 1, 0))])
    return worked.design(run, **{"units": "in", **changes})


def test_the_flat_rectangle_needs_four_cuts_of_4_7_and_two_of_5_65_inches():
    found = survey(rectangle())
    cuts = {name: bar.cut / INCH for name, bar in found.frame.bars.items() if bar.cut is not None}
    assert [cuts[f"b{n}"] for n in (0, 1, 3, 4)] == pytest.approx([4.7] * 4)
    assert [cuts[f"b{n}"] for n in (2, 5)] == pytest.approx([5.65] * 2)
    assert cuts["b6"] == pytest.approx(7.15 - 2.5 + 1.0)  # between the branches of the tees
    assert [size / INCH for size in found.extents.size] == pytest.approx([13.5, 8.25, 1.1])


def test_its_cut_list_has_two_letters_the_longest_first():
    groups = cut_list(survey(rectangle()).frame.bars.values())
    assert [(g.letter, round(g.cut / INCH, 3), len(g.bars)) for g in groups] == [
        ("A", 5.65, 3),
        ("B", 4.7, 4),
    ]


def test_without_a_bar_on_their_branches_the_tees_have_a_spare_socket_and_the_cuts_stay():
    x = tuple(place * INCH for place in (0.0, 6.2, 12.4))
    run = worked.arrangement(x, (0.0, 7.15 * INCH), (0.0,), worked.FLAT)
    found = survey(worked.design(run, stock=worked.stock("elbow", "tee")))
    assert (
        sorted(round((bar.cut or 0) / INCH, 6) for bar in found.frame.bars.values()) == [4.7] * 4 + [5.65] * 2
    )
    assert [len(found.frame.joints[name].match.spare) for name in ("j100", "j110")] == [1, 1]


def test_an_elbow_pushed_onto_a_tees_branch_by_the_shortest_piece_needs_one_inch():
    """Their faces touch, 1.25 in from either centre: the piece is what goes into the two sockets."""
    ends = [((0, 0, 0), (1, 0, 0)), ((1, 0, 0), (2, 0, 0)), ((1, 0, 0), (1, 1, 0)), ((1, 1, 0), (0, 1, 0))]
    run = worked.arrangement((-0.2, 0.0, 0.2), (0.0, 2.5 * INCH), (0.0,), ends)
    bar = survey(worked.design(run)).frame.bars["b2"]
    assert bar.exposed == pytest.approx(0.0, abs=1e-9)
    assert bar.cut == pytest.approx(1.0 * INCH)


def test_run_and_branch_of_a_tee_take_off_what_each_of_them_measures():
    """Tee with 0.562 in to the stop on the run and 0.75 in on the branch; 10 in between centres.

    Run: 10 - 2 x (0.562 + 0.688) + 2 x 0.5 = 8.5 in.  Branch to an elbow: 10 - 1.438 - 1.25 + 1 = 8.312 in.
    """
    goods = worked.stock(fittings=(worked.fitting("elbow"), worked.fitting("tee", branch=0.75)))
    ends = [*worked.FLAT, ((1, 0, 0), (1, 1, 0))]
    y = (0.0, 10 * INCH)
    run = worked.arrangement((-10 * INCH, 0.0, 10 * INCH), y, (0.0,), ends)
    bars = lay_out(worked.design(run, stock=goods), run).bars
    assert bars["b0"].cut == pytest.approx(8.5 * INCH)
    assert bars["b2"].cut == pytest.approx(8.5 * INCH)  # elbow to elbow
    assert bars["b6"].cut == pytest.approx((10 - 2 * 1.438 + 1) * INCH)


def test_a_pipe_is_never_pushed_past_the_stop():
    """Push-in depth 2 in, socket 0.688 in: the cut is spacing less 2 x 0.562 in."""
    goods = worked.stock(pipes=(worked.pipe(insertion=2 * INCH),))
    run = worked.box(0.4, 0.3, 0.2)
    bar = lay_out(worked.design(run, stock=goods), run).bars["b0"]
    assert bar.cut == pytest.approx(0.4 - 2 * 0.562 * INCH)
    assert bar.exposed == pytest.approx(0.4 - 2.5 * INCH)


def test_the_exposed_length_does_not_depend_on_the_push_in_depth_and_the_cut_does():
    run = worked.box()
    bars = [
        lay_out(worked.design(run, stock=worked.stock(pipes=(worked.pipe(insertion=depth),))), run).bars["b0"]
        for depth in (0.010, 0.012)
    ]
    assert bars[0].exposed == bars[1].exposed
    assert bars[1].cut - bars[0].cut == pytest.approx(2 * 0.002)


def test_a_bar_at_45_degrees_is_as_long_as_the_diagonal_leaves():
    """100 mm along and across: spacing 141.42 mm; two 45-degree elbows take 2 x 1.25 in and get 1 in back."""
    ends = [((0, 0, 0), (1, 0, 0)), ((1, 0, 0), (2, 1, 0)), ((2, 1, 0), (2, 2, 0))]
    run = worked.arrangement((-0.2, 0.0, 0.1), (0.0, 0.1, 0.3), (0.0,), ends)
    frame = lay_out(worked.design(run), run)
    assert frame.joints["j100"].match.fitting.shape == "elbow 45"
    assert frame.bars["b1"].cut == pytest.approx(0.1 * 2**0.5 - 1.5 * INCH)


@pytest.mark.parametrize(
    ("end", "steps"),
    [
        ((0.1, 0, 0), (1, 0, 0)),
        ((0, -2.0, 0), (0, -1, 0)),
        ((0, 0.3, -0.3), (0, 1, -1)),
        ((0.3, 0.3 + 5e-8, 0), (1, 1, 0)),
        ((0.3, 0.301, 0), None),
        ((0.1, 0.1, 0.1), None),
        ((0, 0, 0), None),
    ],
)
def test_headings_are_along_an_axis_or_at_45_degrees_or_nothing(end, steps):
    assert heading((0, 0, 0), end) == steps


def test_two_bars_that_leave_a_joint_the_same_way_fit_no_fitting():
    ends = [((0, 0, 0), (1, 0, 0)), ((0, 0, 0), (2, 0, 0)), ((1, 0, 0), (2, 0, 0))]
    run = worked.arrangement((0.0, 0.2, 0.4), (0.0,), (0.0,), ends)
    frame = lay_out(worked.design(run), run)
    assert frame.joints["j000"].match is None
    assert frame.bars["b0"].cut is None
    assert frame.bars["b0"].letter == "?"


THIN = {"stop": 0.0, "depth": 0.1}
NO_PUSH = worked.stock(
    pipes=(worked.pipe(insertion=0.0),),
    fittings=(worked.fitting("cap", **THIN), worked.fitting("coupling", **THIN)),
)


def row(*places: float) -> Design:
    """Bars end to end between stations [m]; each cut is the spacing less 0.2 in."""
    ends = [((n, 0, 0), (n + 1, 0, 0)) for n in range(len(places) - 1)]
    return worked.design(worked.arrangement(places, (0.0,), (0.0,), ends), stock=NO_PUSH)


def test_pieces_are_alike_to_a_tenth_of_a_millimetre():
    """Cuts of 194.92, 194.93 and 195.22 mm: the first two share a letter."""
    bars = survey(row(0.0, 0.2, 0.40001, 0.60031)).frame.bars
    assert [bars[name].letter for name in ("b0", "b1", "b2")] == ["B", "B", "A"]


def test_equal_pieces_share_a_letter_however_their_places_are_rounded():
    """12 1/4 in is 311.15 mm: half way between two tenths, where a float falls to either side."""
    for cut in (12.25, 7.25, 3.25, 0.25):
        x = [0.0]
        for _ in range(40):
            x.append(x[-1] + (cut + 0.2) * INCH)
        letters = {bar.letter for bar in survey(row(*x)).frame.bars.values()}
        assert letters == {"A"}, cut
