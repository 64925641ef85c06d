"""What the coach says of the ledger, the build and the trials, and when it is silent."""

import pytest

from model.arrangements import differences
from model.building.as_built import keep_piece, measured_pieces, note_cut, saw_anew
from model.building.fitting_steps import FOAM_FIRST
from model.building.order import build_steps
from model.design.edits.evidence import note_expense, note_trial, tick
from model.errors import EditError
from model.money.ledger import ledger, line_key
from model.presets import load_preset, presets
from model.review import proven_remedy, review
from model.survey import survey

DAY = "2026-03-14"
OURS = ("money.commitments", "money.receipt", "arrangement.", "build.", "trial.")


@pytest.fixture(scope="module")
def demo():
    return load_preset(presets("demo")[0])


def said(design):
    """The findings of evidence, by code."""
    return {f.code: f for f in review(design).findings if f.code.startswith(OURS)}


def with_brief(design, **changes):
    return design.but(brief=design.brief.but(**changes))


def test_a_design_without_evidence_hears_nothing(demo):
    assert said(with_brief(demo, receipts_required=True, given_counts=True, same_frame=True)) == {}


def test_a_line_without_a_receipt_only_where_the_brief_asks(demo):
    bought = note_expense(demo, DAY, "ties", 2.0)
    assert said(bought) == {}
    asked = with_brief(bought, receipts_required=True)
    assert "ties for 2.00 credits on 2026-03-14" in said(asked)["money.receipt-missing"].message
    assert said(note_expense(with_brief(demo, receipts_required=True), DAY, "x", 2.0, picture="a.jpg")) == {}
    assert said(note_expense(with_brief(demo, receipts_required=True), DAY, "x", 2.0, given=True)) == {}


def test_a_receipt_noted_twice_is_named_and_one_is_taken_back(demo):
    design = note_expense(demo, DAY, "tees", 6.0, shop="Corner", receipt="17")
    design = note_expense(design, DAY, "Tees ", 6.0, shop="corner", receipt=" 17")
    report = review(design)
    finding = next(f for f in report.findings if f.code == "money.receipt-twice")
    remedy = proven_remedy(report, finding)
    after = remedy.edit(design)
    assert [line.stands for line in after.evidence.ledger] == [True, False]
    other = note_expense(design.but(evidence=after.evidence), DAY, "caps", 2.0, shop="Corner", receipt="17")
    assert said(other) == {}


def test_spent_and_committed_over_the_limit(demo):
    bill = survey(demo).bill
    spent = note_expense(demo, DAY, "a lamp", bill.left + 0.01)
    assert "money.commitments-over" in said(spent)
    assert said(note_expense(demo, DAY, "a lamp", bill.left)) == {}


def test_what_is_bought_is_no_longer_committed(demo):
    bill = survey(demo).bill
    line = next(line for line in bill.lines if line.kind == "fitting")
    bought = note_expense(demo, DAY, "some", 3.21, line=line_key(line), quantity=line.quantity - 1)
    money = ledger(bought, bill)
    assert money.spent == 3.21
    assert money.committed == pytest.approx(bill.spent - line.each * (line.quantity - 1))
    assert money.left == pytest.approx(bill.limit - money.spent - money.committed)


def test_given_things_count_only_where_the_brief_says_so(demo):
    given = note_expense(demo, DAY, "an old battery", 20.0, given=True)
    assert ledger(given, survey(given).bill).spent == 0
    assert ledger(with_brief(given, given_counts=True), survey(given).bill).spent == 20
    assert ledger(given, survey(given).bill).given == 20


@pytest.mark.parametrize(("off", "severity"), [(0.0014, None), (0.0016, "tip"), (-0.0035, "should")])
def test_a_piece_off_its_cut(demo, off, severity):
    bar = demo.arrangement.bars[0]
    planned = survey(demo).frame.bars[bar.id].cut
    design = note_cut(demo, bar.id, planned + off, DAY)
    found = said(design).get("build.piece-off")
    assert (found.severity if found else None) == severity
    assert survey(design).frame.bars[bar.id].cut == pytest.approx(planned + off)
    if found:
        assert "build.piece-off" not in said(keep_piece(design, bar.id))
        anew = saw_anew(design, bar.id, DAY)
        assert survey(anew).frame.bars[bar.id].cut == pytest.approx(planned)
        assert measured_pieces(anew) == ()
        assert len(anew.evidence.cuts) == 1


def test_a_piece_measured_again_keeps_its_first_plan(demo):
    bar = demo.arrangement.bars[0]
    planned = survey(demo).frame.bars[bar.id].cut
    design = note_cut(note_cut(demo, bar.id, planned + 0.005, DAY), bar.id, planned + 0.001, DAY)
    (piece,) = measured_pieces(design)
    assert piece.off == pytest.approx(0.001)
    assert [cut.stands for cut in design.evidence.cuts] == [False, True]


def test_impossible_pieces_are_refused(demo):
    bar = demo.arrangement.bars[0].id
    with pytest.raises(EditError, match="at least"):
        note_cut(demo, bar, 0.005, DAY)
    with pytest.raises(EditError):
        note_cut(demo, "nothing", 0.1, DAY)
    with pytest.raises(EditError, match="measured"):
        saw_anew(demo, bar, DAY)


def test_foam_that_comes_too_late(demo):
    dry = [step.id for step in build_steps(survey(demo)) if step.id.startswith("dry-fit")]
    assert "build.foam-late" in said(tick(demo, dry[0], DAY))
    assert said(tick(tick(demo, FOAM_FIRST, DAY), dry[0], DAY)) == {}


def test_loose_joints_before_the_water(demo):
    wet = note_trial(demo, "pitch", survey(demo).balance.pitch, DAY)
    report = review(wet)
    finding = next(f for f in report.findings if f.code == "build.joint-loose")
    assert "build.joint-loose" not in said(proven_remedy(report, finding).edit(wet))
    assert said(note_trial(demo, "weight", survey(demo).balance.mass, DAY)) == {}


@pytest.mark.parametrize(
    ("kind", "factor", "plus", "code"),
    [
        ("weight", 1.049, 0.0, None),
        ("weight", 1.051, 0.0, "trial.weight-off"),
        ("pitch", 1.0, 4.9, None),
        ("roll", 1.0, -5.1, "trial.trim-off"),
    ],
)
def test_trials_off_the_model(demo, kind, factor, plus, code):
    pinned = demo.arranged(joining="pinned")
    balance = survey(pinned).balance
    value = {"weight": balance.mass, "pitch": balance.pitch, "roll": balance.roll}[kind]
    found = said(note_trial(pinned, kind, value * factor + plus, DAY))
    assert set(found) == ({code} if code else set())


def test_spare_off_the_model_is_corrected_by_the_foam(demo):
    pinned = demo.arranged(joining="pinned")
    balance = survey(pinned).balance
    fine = 0.0199 * balance.displaced * balance.density
    assert said(note_trial(pinned, "spare", balance.spare - fine, DAY)) == {}
    off = note_trial(pinned, "spare", balance.spare - fine * 1.02, DAY)
    assert "trial.spare-off" in said(off)
    fixed = said(off)["trial.spare-off"].propose()[0].edit(off)
    assert "trial.spare-off" not in said(fixed)


def test_two_arrangements(demo):
    first = demo.arrangement
    bare = first.but(id="second", name="second run", attachments=first.attachments[:1])
    design = with_brief(demo.but(arrangements=(first, bare)), same_frame=True)
    (found,) = differences(design)
    assert found.same_frame
    assert found.gone == tuple(item.name for item in first.attachments[1:])
    assert said(design) == {}
    longer = bare.but(stations=tuple(s.but(at=s.at * 1.1) for s in bare.stations))
    assert "arrangement.frame-differs" in said(design.but(arrangements=(first, longer)))
    assert said(with_brief(design.but(arrangements=(first, longer)), same_frame=False)) == {}
