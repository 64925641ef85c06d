"""Remedies over every ready-made frame with every mistake: each clears its finding and breaks nothing new.

Of each kind of finding that must be put right a few are proved for each frame, of the others one;
``tests/benchmarks/prove_remedies.py`` proves them all, which takes some minutes.
"""

import re
from collections import Counter
from pathlib import Path

import pytest

from model.coach.finding import Finding, Remedy
from model.design import Attachment, Design, Mount, Supplies, edits
from model.design.own_parts import MeasuredPipe
from model.files import load_design
from model.presets import find_preset, load_preset
from model.review import Report, _in_turn, proven_remedy, review
from tests import worked
from tests.model.coach_cases import CASES, box, chain, foam, ruled, slanting, thruster
from tests.model.mutations import mutations

PRESETS = Path(__file__).parent.parent.parent / "presets"
FRAMES = sorted([*(PRESETS / "starters").glob("*.toml"), *(PRESETS / "demo").glob("*.toml")])
MOST = {"must": 2, "should": 1, "tip": 1}
SLOW = {"air.pocket-tilted", "air.pocket-trapped"}
"""The fewest holes take seconds; they are proved where they are solved."""
ALWAYS = {
    "thruster.mount-missing",
    "float.end-over",
    "opening.none-flooded",
    "opening.in-sealed",
    "opening.hole-wide",
    "fitting.pick-wrong",
    "balance.thrust-sunk",
    "balance.weight-over",
    "balance.lift-little",
}
"""What one key must always be able to put right on a ready-made frame."""


def test_there_are_ready_made_frames_to_try():
    assert len(FRAMES) >= 7


def grave(report: Report, severities: tuple[str, ...]) -> set[object]:
    return {f.key for f in report.findings if f.severity in severities}


def proved(report: Report, finding: Finding) -> bool:
    """Whether a remedy is offered; one that is offered is tried again from outside."""
    remedy = proven_remedy(report, finding)
    if remedy is None:
        return False
    after = review(remedy.edit(report.design))
    assert finding.key not in {f.key for f in after.findings}, remedy.label
    barred = ("must",) if finding.severity == "must" else ("must", "should")
    graver = {key for key in grave(after, barred) if key not in grave(report, barred)}
    assert not graver, remedy.label
    assert after.design != report.design
    assert remedy.label[:1].isupper()
    assert not remedy.label.endswith(".")
    assert "  " not in remedy.label
    assert len(remedy.label) <= 160, remedy.label
    return True


@pytest.mark.parametrize("path", FRAMES, ids=lambda path: path.stem)
def test_every_mistake_on_a_ready_made_frame(path: Path):
    tried: Counter[str] = Counter()
    helped: Counter[str] = Counter()
    for _, design in mutations(load_design(path).design):
        report = review(design)
        for finding in report.findings:
            if tried[finding.code] < MOST[finding.severity] and finding.code not in SLOW:
                tried[finding.code] += 1
                helped[finding.code] += proved(report, finding)
    musts = [code for code in tried if code in ALWAYS]
    assert {code: helped[code] for code in musts} == {code: tried[code] for code in musts}
    assert sum(helped.values()) >= 0.7 * sum(tried.values()), tried - helped


def report_of(design: Design, code: str) -> tuple[Report, Finding]:
    report = review(design)
    return report, next(finding for finding in report.findings if finding.code == code)


def label(design: Design, code: str) -> str | None:
    report, finding = report_of(design, code)
    remedy = proven_remedy(report, finding)
    return remedy.label if remedy else None


NO_REMEDY = {
    "frame.bars-none",
    "frame.joints-together",
    "frame.bars-overlap",
    "stock.bar-long",
    "fitting.socket-spare",
    "opening.socket-open",
    "money.limit-over",
}
"""On the designs of the table only the team knows what it meant, or has no other part to take."""


@pytest.mark.parametrize("code", sorted({case.code for case in CASES} - NO_REMEDY))
def test_each_finding_of_the_table_that_one_key_can_put_right(code: str):
    case = next(case for case in CASES if case.code == code)
    assert proved(*report_of(case.shows, code))


def test_a_float_is_cut_to_the_pipe_that_shows():
    """400 mm less 63.5 mm between the hubs are 336.5 mm, and a ruler reads 336."""
    assert label(box(floats=(foam(length=0.35),)), "float.bar-short") == "Cut noodle piece to 336 mm"


def test_joints_that_are_too_close_are_moved_apart_by_whole_millimetres():
    """63.5 mm are needed and 60 there: 3.5 mm, so 4 on the ruler."""
    design = chain(0.0, 0.06, 0.3)
    assert label(design, "frame.joints-close") == "Move x1 outwards by 4 mm"


def test_the_box_too_wide_is_drawn_in_at_both_sides_with_the_cut_that_follows():
    """27.94 mm over: 14 mm from each side; the cross bars are cut to 300 - 63.5 + 25.4 - 28 mm."""
    words = label(ruled(box(), size_limit=(1.0, 0.3, 1.0)), "size.limit-over")
    assert words == "Move y0 to port by 14 mm and y1 to starboard by 14 mm: cut B from 261.9 mm to 233.9 mm"


def test_what_sticks_out_alone_is_moved_in():
    """The probe reaches 80 mm past the bar's middle, the hub 13.97: 66.03 over a limit of the bare frame."""
    probe = Attachment(
        id="p", name="probe", bar="b6", offset=(0.05, 0, 0), size=(0.06, 0.02, 0.02),
        mass=0.02, mass_in_water=0.01,
    )  # fmt: skip
    design = ruled(box(attachments=(probe,)), size_limit=(0.46, 1.0, 1.0))
    assert label(design, "size.limit-over") == "Move probe aft by 34 mm"  # 494 - 460


def test_a_cheaper_mount_is_taken_before_anything_is_left_out():
    """Two mounts of 8.00 where one of 0.50 is listed, and a camera of 24.00."""
    clamp = Mount(id="clamp", name="a clamp", mass=0.01, mass_in_water=0.008, price=8.0)
    goods = worked.SUPPLIES.but(mounts=(clamp, *worked.SUPPLIES.mounts))
    items = (thruster(mount="clamp"), thruster(id="u", bar="b2", offset=(0, -0.05, 0), mount="clamp"))
    camera = Attachment(
        id="c", name="camera", kind="camera", bar="b5", size=(0.03, 0.03, 0.03),
        mass=0.05, mass_in_water=0.02, price=24.0,
    )  # fmt: skip
    design = worked.design(worked.box(thrusters=items, attachments=(camera,)), supplies=goods)
    spent = review(design).survey.bill.spent
    assert (
        label(ruled(design, spending_limit=spent - 10), "money.limit-over")
        == "Use two ties instead of a clamp"
    )
    assert (
        label(ruled(design, spending_limit=spent - 20), "money.limit-over")
        == "Leave camera out, which saves 24.00 units"
    )


def test_a_thruster_is_added_where_it_clears_the_frame():
    design = ruled(
        box(floats=(foam(length=0.2), foam(id="g", bar="b3", length=0.2))), moves=("up", "down", "ahead")
    )
    for code_about in ("up", "ahead"):
        report = review(design)
        finding = next(f for f in report.findings if f.about.id == code_about)
        remedy = proven_remedy(report, finding)
        assert remedy is not None
        design = remedy.edit(design)
    assert not [f for f in review(design).findings if f.code == "thruster.move-missing"]
    assert all(item.mount == "ties" for item in design.arrangement.thrusters)


def test_without_motors_or_mounts_nothing_is_offered():
    bare = box(thrusters=(thruster(mount=None),)).but(supplies=Supplies(motors=worked.SUPPLIES.motors))
    assert label(bare, "thruster.mount-missing") is None
    none = ruled(box(), moves=("up",)).but(supplies=Supplies())
    assert label(none, "thruster.move-missing") is None


def test_a_remedy_is_never_the_same_design_with_another_must():
    """Sealing is no cure for a frame without holes while an empty socket is left."""
    design = chain(0.0, 0.2, 0.4, stock=worked.stock("cap", "tee")).arranged(bores="sealed")
    report, finding = report_of(design, "opening.socket-open")
    assert proven_remedy(report, finding) is None


def test_a_range_of_an_allowed_material_is_chosen_where_the_stock_holds_none():
    """The brief allows PVC, the range is CPVC: one like the frame's is taken, and its own measures go."""
    cpvc = load_preset(find_preset("stock", "half-inch-cpvc"))
    design = load_preset(find_preset("starter", "first-afternoon"))
    assert design.brief.materials == ("PVC",)
    swapped = edits.use_stock(design, cpvc)
    assert proved(*report_of(swapped, "material.pipe-disallowed"))
    assert label(swapped, "material.pipe-disallowed") == (
        "Choose the range Half-inch Schedule 40, furniture range"
    )
    mine = MeasuredPipe(pipe=cpvc.pipes[0].id, hub=0.022)
    measured = swapped.but(stock=cpvc.but(own=cpvc.own.but(pipes=(mine,))))
    assert label(measured, "material.pipe-disallowed") == (
        "Choose the range Half-inch Schedule 40, furniture range; "
        "what you measured or counted of half-inch CPVC pipe does not fit it and is gone"
    )


@pytest.mark.parametrize(("units", "first"), [("in", "Half-inch Schedule 40"), ("mm", "20 mm metric PVC-U")])
def test_a_range_in_the_unit_of_the_design_is_offered_before_others(units, first):
    """CPVC of half an inch is 15.9 mm wide: metric pipe of 20 mm is more like it than PVC of 21.3 mm."""
    cpvc = load_preset(find_preset("stock", "half-inch-cpvc"))
    design = load_preset(find_preset("starter", "first-afternoon"))
    _, finding = report_of(edits.use_stock(design, cpvc).but(units=units), "material.pipe-disallowed")
    told = [remedy.label.removeprefix("Choose the range ") for remedy in finding.propose()]
    assert told[0].startswith(first)
    inch = [words for words in told if "mm metric" not in words]
    assert told == (inch + told[len(inch) :] if units == "in" else told[: -len(inch)] + inch)


def test_a_range_of_the_same_size_keeps_what_was_measured_and_names_the_rest():
    """A range like the furniture one, but of ABS: pipe and tees fit others of its size, corners do not."""
    furniture = load_preset(find_preset("stock", "half-inch-furniture"))
    abs_pipes = tuple(pipe.but(material="ABS") for pipe in furniture.pipes)
    design = load_preset(find_preset("starter", "first-afternoon"))
    design = edits.use_stock(design, furniture.but(name="ABS range", pipes=abs_pipes))
    design = edits.measure_pipe(design, "half", hub=0.0268)
    design = edits.measure_fitting(design, "corner", face_to_far_side=0.042)
    design = edits.set_held(design, "tee", 3)
    own, box = design.stock.own, design.stock.on_hand
    _, finding = report_of(design, "material.pipe-disallowed")
    told = {remedy.label.removeprefix("Choose the range "): remedy for remedy in finding.propose()}
    same = told["Half-inch Schedule 40, furniture range"].edit(design).stock
    assert (same.own, same.on_hand) == (own, box)
    plumbing = (
        "Half-inch Schedule 40, plumbing range; "
        "what you measured or counted of three-way corner does not fit it and is gone"
    )
    after = told[plumbing].edit(design).stock
    assert (after.own.pipes, after.own.fittings, after.on_hand) == (own.pipes, (), box)


def pair(port: float, starboard: float) -> Design:
    """Two motors outside the low rails of a box of 300 mm, so far [m] from the middles of the pipes."""
    items = (
        thruster(name="starboard motor", bar="b0", offset=(0, -starboard, 0)),
        thruster(id="u", name="port motor", bar="b2", offset=(0, port, 0)),
    )
    return box(thrusters=items)


def test_a_pair_that_is_too_wide_is_moved_in_alike():
    """5 mm over: 3 mm each on a ruler of whole millimetres, both towards the middle."""
    wide = pair(0.06, 0.06)
    width = review(wide).survey.extents.size[1]
    design = ruled(wide, size_limit=(1.0, width - 0.005, 1.0))
    pair_of_them = "each alike, since they are a pair"
    words = f"Move starboard motor and port motor towards the middle by 3 mm, {pair_of_them}"
    assert label(design, "size.limit-over") == words
    report, finding = report_of(design, "size.limit-over")
    remedy = proven_remedy(report, finding)
    assert remedy is not None
    offsets = [item.offset[1] for item in remedy.edit(design).arrangement.thrusters]
    assert offsets == pytest.approx([-0.057, 0.057])


def test_a_motor_that_sits_further_out_than_its_like_is_moved_alone():
    """20 mm further out than the other: they are no pair, and 5 mm come off the one."""
    wide = pair(0.08, 0.06)
    width = review(wide).survey.extents.size[1]
    design = ruled(wide, size_limit=(1.0, width - 0.005, 1.0))
    assert label(design, "size.limit-over") == "Move port motor to starboard by 5 mm"


def test_a_pair_too_long_is_moved_the_same_way():
    long = pair(0.05, 0.05)
    run = long.arrangement
    design = long.arranged(
        thrusters=tuple(item.but(offset=(-0.2, *item.offset[1:])) for item in run.thrusters)
    )
    size = review(design).survey.extents.size[0]
    words = label(ruled(design, size_limit=(size - 0.004, 1.0, 1.0)), "size.limit-over")
    assert words == "Move starboard motor and port motor ahead by 4 mm, each alike, since they are a pair"


def test_a_slanting_bar_is_brought_to_45_degrees_by_one_plane():
    """From (0, 0) to (300, 200) mm: 100 mm less along, or 100 mm more across; the station lies inside."""
    design = slanting(0.3, 0.2)
    assert label(design, "frame.bar-crooked") == "Move x2 aft by 100 mm, so that bar 1 lies at 45 degrees"
    _, finding = report_of(design, "frame.bar-crooked")
    for remedy in finding.propose():
        after = review(remedy.edit(design)).survey.frame.bars["b1"]
        steps = [abs(b - a) for a, b in zip(after.start, after.end, strict=True)]
        assert steps[0] == pytest.approx(steps[1], abs=1e-9)
    assert len(list(finding.propose())) == 4


def test_a_size_that_was_changed_across_slanting_bars_is_followed_by_the_other_plane():
    """Two bars that rise 200 mm over 200 mm, drawn out to 206 mm: a plane goes 6 mm for both."""
    ends = [
        *[((0, y, 0), (1, y, 0)) for y in (0, 1)],
        *[((1, y, 0), (2, y, 1)) for y in (0, 1)],
        *[((2, y, 1), (3, y, 1)) for y in (0, 1)],
        *[((x, 0, z), (x, 1, z)) for x, z in ((0, 0), (3, 1))],
    ]
    design = worked.design(worked.arrangement((-0.3, 0.0, 0.206, 0.6), (-0.15, 0.15), (0.0, 0.2), ends))
    report = review(design)
    crooked = [f for f in report.findings if f.code == "frame.bar-crooked"]
    assert len(crooked) == 2
    remedy = proven_remedy(report, crooked[0])
    assert remedy is not None
    after = review(remedy.edit(design))
    assert "frame.bar-crooked" not in {f.code for f in after.findings}
    assert " by 6 mm, " in remedy.label


def test_what_is_done_again_and_again_is_told_once_with_its_sum():
    """Weights that are wanted in rounds are one weight a bar, and label and design agree in grams."""
    path = next(path for path in FRAMES if path.stem == "flat-and-quick")
    seen = 0
    for _, design in mutations(load_design(path).design):
        before = {piece.bar: piece.mass for piece in design.arrangement.ballasts}
        found = [f for f in review(design).findings if f.code == "balance.trim-off"]
        for remedy in found[0].propose() if found else ():
            assert len(remedy.label) <= 160, remedy.label
            if remedy.label.startswith("Strap coated steel: "):
                new = [b for b in remedy.edit(design).arrangement.ballasts if b.bar not in before]
                assert len({piece.bar for piece in new}) == len(new)
                told = [float(word) for word in re.findall(r"([0-9]+) g (?:under|together)", remedy.label)]
                assert sum(told) == pytest.approx(1000 * sum(piece.mass for piece in new), abs=1)
                seen += 1
        if seen >= 3:
            return
    raise AssertionError(f"only {seen} weights were proposed")


def test_a_long_chain_of_remedies_is_told_in_short_and_in_whole_in_its_details():
    names = ["Move " + letter * 70 for letter in "abc"]
    chain = [
        Remedy(name, lambda design, name=name: design.but(title=design.title + name[5])) for name in names
    ]
    whole = _in_turn(chain)
    assert whole.label == f"{names[0]}, then 2 changes more that this needs"
    assert whole.details == (names[1], names[2])
    assert whole.edit(box()).title.endswith("abc")
    assert _in_turn(chain[:2]).label == f"{names[0]}, then: m{names[1][1:]}"
