"""Whatever a file may hold of sawn pieces, rulers, boxes, pins and hoops: results, and never a traceback."""

from random import Random

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from model.design import (
    Design,
    DryJoint,
    HeldFittings,
    HeldPipe,
    MeasuredFitting,
    MeasuredPipe,
    OnHand,
    OwnParts,
    slips,
)
from model.explain_frame import frame_quantities
from model.files import design_text, parse_design
from model.frame.held import settled
from model.frame.layout import lay_out
from model.review import proven_remedy, review
from model.sizing import axis_sizes
from model.survey import survey
from tests.generators import designs

QUIET = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
LENGTHS = (0.001, 0.0254, 0.0381, 0.0635, 0.1, 0.3619, 3.0)
TOPICS = ("frame", "stock", "size", "place", "fitting")
JOINING = ("dry", "pinned", "cemented")


def length(dice: Random) -> float:
    return dice.choice((*LENGTHS, round(dice.uniform(0.001, 0.8), 4)))


def some(dice: Random, items):
    return [item for item in items if dice.random() < 0.5]


def own(dice: Random, design: Design) -> OwnParts:
    stock = design.stock
    fittings = tuple(
        MeasuredFitting(fitting=f.id, face_to_face=length(dice), face_to_far_side=length(dice))
        for f in some(dice, stock.fittings)
    )
    pipes = []
    for pipe in some(dice, stock.pipes):
        joint = None
        if stock.fittings and dice.random() < 0.7:
            kind = dice.choice(stock.fittings).id
            joint = DryJoint(fitting=kind, first=0.1, second=0.1, overall=length(dice))
        pipes.append(
            MeasuredPipe(
                pipe=pipe.id,
                hub=dice.choice((None, pipe.outside_diameter * 1.3, length(dice))),
                socket_depth=dice.choice((None, 0.018, length(dice))),
                dry_joint=joint,
            )
        )
    return OwnParts(pipes=tuple(pipes), fittings=fittings)


def held(dice: Random, design: Design) -> OnHand:
    stock = design.stock
    return OnHand(
        fittings=tuple(
            HeldFittings(fitting=f.id, count=dice.randint(0, 9)) for f in some(dice, stock.fittings)
        ),
        pieces=tuple(
            HeldPipe(pipe=dice.choice(stock.pipes).id, length=length(dice), count=dice.randint(0, 5))
            for _ in range(dice.randint(0, 4))
        ),
        only=dice.random() < 0.5,
    )


@st.composite
def furnished(draw: st.DrawFn) -> Design:
    """Any frame, with anything of this kind on it."""
    design, dice = draw(designs(most=10)), Random(draw(st.integers(0, 2**32)))
    run = design.arrangement
    bars = tuple(bar.but(sawn=length(dice) if dice.random() < 0.3 else None) for bar in run.bars)
    joints = tuple(j.but(joining=dice.choice((None, *JOINING))) for j in run.joints)
    design = design.arranged(bars=bars, joints=joints, joining=dice.choice(JOINING))
    stock = design.stock.but(own=own(dice, design), on_hand=held(dice, design))
    brief = design.brief.but(hoop=length(dice), gate=(length(dice), length(dice)))
    return design.but(stock=stock, brief=brief)


@QUIET
@given(furnished())
def test_results_and_sentences_for_anything(design: Design):
    report = review(design)
    for finding in report.findings:
        assert finding.message
        assert "\n" not in finding.message
    list(slips(design.stock))
    axis_sizes(report.survey)
    frame_quantities(report.survey)
    assert parse_design(design_text(design), "any.toml").design == design


@settings(QUIET, max_examples=12)
@given(furnished(), st.integers(0, 100))
def test_a_remedy_for_anything_clears_it_or_is_not_offered(design: Design, number: int):
    report = review(design)
    ours = [
        f for f in report.findings if f.code.split(".")[0] in ("frame", "stock", "size", "place", "fitting")
    ]
    if not ours:
        return
    finding = ours[number % len(ours)]
    remedy = proven_remedy(report, finding)
    if remedy is not None:
        after = review(remedy.edit(design))
        assert finding.key not in {other.key for other in after.findings}
        assert {f.key for f in after.musts} <= {f.key for f in report.musts}


@QUIET
@given(furnished())
def test_planes_that_are_settled_stay_where_they_are(design: Design):
    """Sawn pieces hold planes; once these are drawn there, the frame is the same, and settling is done."""
    first = settled(design)
    before, after = lay_out(design, design.arrangement), lay_out(first, first.arrangement)
    if all(joint.match == after.joints[name].match for name, joint in before.joints.items()):
        assert all(abs(before.planes[plane] - after.planes[plane]) < 1e-6 for plane in before.planes)
    assert survey(first).in_box.to_buy.keys() == survey(design).in_box.to_buy.keys()
