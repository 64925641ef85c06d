"""Findings about money spent, pieces sawn, and the order of the build, from what the team noted."""

from collections.abc import Iterator
from functools import partial

from model.arrangements import differences
from model.building.as_built import FINE, Piece, keep_piece, measured_pieces, saw_anew
from model.building.finish_steps import TETHER
from model.building.fitting_steps import DRY_FIT, FOAM_FIRST, threaded
from model.building.loops import bars_in_loops
from model.coach.finding import About, Finding, Remedy, Severity
from model.coach.remedies.money import cheaper
from model.coach.say import WHOLE, say
from model.coach.sentences import length, listed, money
from model.design import COMPARISON_SLACK, Design
from model.design.edits.evidence import done_steps, taken_back
from model.money.ledger import ledger, receipts_twice, without_receipt
from model.survey import Survey

SHOWN_MOST = 3


def commitments(survey: Survey) -> Iterator[Finding]:
    """What is spent and what is still to be bought together over the limit."""
    if not survey.design.evidence.ledger or survey.bill.over:
        return
    found = ledger(survey.design, survey.bill)
    if found.over and found.left is not None and found.limit is not None:
        amounts = {
            "spent": found.spent, "committed": found.committed, "over": -found.left, "limit": found.limit
        }  # fmt: skip
        values = {name: money(amount, found.currency) for name, amount in amounts.items()}
        yield say("money.commitments-over", "must", "money", WHOLE, partial(cheaper, survey), **values)


def receipts(survey: Survey) -> Iterator[Finding]:
    """Lines without a receipt where the brief asks for one, and receipts noted twice."""
    currency = survey.bill.currency
    if survey.design.brief.receipts_required:
        for line in without_receipt(survey.design):
            values = {"what": line.what, "amount": money(line.amount, currency), "when": line.when[:10]}
            yield say("money.receipt-missing", "should", "money", About("expense", line.id), tuple, **values)
    for _, line in receipts_twice(survey.design):
        values = {
            "receipt": line.receipt,
            "shop": line.shop or "one shop",
            "what": line.what,
            "amount": money(line.amount, currency),
        }
        propose = partial(_take_back, line.id, line.when)
        yield say("money.receipt-twice", "should", "money", About("expense", line.id), propose, **values)


def _take_back(id: str, when: str) -> tuple[Remedy, ...]:
    edit = partial(taken_back, kind="ledger", id=id, when=when)
    return (Remedy("Take the second one back; it stays in the ledger, struck out", edit),)


def arrangements(survey: Survey) -> Iterator[Finding]:
    """Arrangements that are not built of the same pieces, where the brief asks for it."""
    if not survey.design.brief.same_frame:
        return
    for other, found in zip(survey.design.arrangements[1:], differences(survey.design), strict=True):
        if not found.same_frame:
            pieces = [*found.more, *(f"{piece} fewer" for piece in found.less)]
            shown = pieces[:SHOWN_MOST] + (["more"] if len(pieces) > SHOWN_MOST else [])
            values = {"name": found.name, "pieces": listed(shown), "first": survey.arrangement.name}
            about = About("arrangement", other.id)
            yield say("arrangement.frame-differs", "must", "layout", about, tuple, **values)


def measured_cuts(survey: Survey) -> Iterator[Finding]:
    """A piece that was sawn off its plan, until the team says that it builds with it."""
    unit, most = survey.design.units, survey.design.brief.thresholds.plan_error
    for piece in measured_pieces(survey.design):
        off = abs(piece.off)
        if piece.cut.kept or off <= min(FINE, most) + COMPARISON_SLACK:
            continue
        severity: Severity = "should" if off > most + COMPARISON_SLACK else "tip"
        values = {
            "bar": piece.bar.name,
            "off": length(off, unit),
            "way": "long" if piece.off > 0 else "short",
            "length": length(piece.cut.length, unit),
            "planned": length(piece.cut.planned, unit),
        }
        about, propose = About("bar", piece.bar.id), partial(_off_piece, piece)
        yield say("build.piece-off", severity, "build", about, propose, **values)


def _off_piece(piece: Piece) -> tuple[Remedy, ...]:
    bar, when = piece.bar.id, piece.cut.when
    again = "Saw it again to its plan" if piece.off > 0 else "Saw a new piece to its plan"
    saw = Remedy(again, partial(saw_anew, bar=bar, when=when))
    keep = Remedy(
        "Build with it: its planes have moved, and the cuts that are left follow",
        partial(keep_piece, bar=bar),
    )
    return (saw, keep) if piece.off > 0 else (keep, saw)


def loose_joints(survey: Survey) -> Iterator[Finding]:
    """Joints that are only pushed together when the vehicle is about to go into the water."""
    wet = any(
        trial.stands and trial.kind not in ("weight", "showing", "foam")
        for trial in survey.design.evidence.trials
    )
    if not wet and TETHER not in done_steps(survey.design):
        return
    loose = [joint.name for joint in survey.frame.joints.values() if joint.arms and joint.joining == "dry"]
    if loose:
        shown = loose[:SHOWN_MOST] + (["more"] if len(loose) > SHOWN_MOST else [])
        values = {"count": str(len(loose)), "joints": listed(shown)}
        yield say("build.joint-loose", "should", "build", WHOLE, _pin_all, **values)


def _pin_all() -> tuple[Remedy, ...]:
    return (Remedy("Pin every joint with a screw or a tie", _pinned),)


def _pinned(design: Design) -> Design:
    joints = tuple(
        joint.but(joining="pinned") if joint.joining == "dry" else joint
        for joint in design.arrangement.joints
    )
    way = "pinned" if design.arrangement.joining == "dry" else design.arrangement.joining
    return design.arranged(joints=joints, joining=way)


def late_foam(survey: Survey) -> Iterator[Finding]:
    """Foam without a slit that is not on when the loop round it is closed."""
    done = done_steps(survey.design)
    if FOAM_FIRST in done or not any(step.startswith(DRY_FIT) for step in done):
        return
    loops = bars_in_loops(survey.frame)
    items = [item for item in threaded(survey) if item.bar in loops]
    if items:
        bars = dict.fromkeys(survey.frame.bars[item.bar].name for item in items)
        values = {"items": listed([item.name for item in items]), "bars": listed(list(bars))}
        yield say("build.foam-late", "should", "build", WHOLE, tuple, **values)
