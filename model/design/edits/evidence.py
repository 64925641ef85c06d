"""Evidence noted, taken back, and carried along when decisions are undone."""

from typing import Any

from pydantic import ValidationError

from model.design.document import Design
from model.design.edits.core import changed, fresh_id, plain
from model.design.evidence import Decision, Evidence, Expense, Noted, Tick, Trial
from model.errors import EditError

KINDS = ("ledger", "ticks", "cuts", "trials", "log")
PREFIXES = {"ledger": "e", "ticks": "d", "cuts": "m", "trials": "t", "log": "n"}


def with_noted(design: Design, kind: str, record: Noted) -> Design:
    """A new piece of evidence of a kind at the end of the others; its id is made fresh if it is taken.

    Raises:
        EditError: it is not allowed.
    """
    there = getattr(design.evidence, kind)
    taken = {item.id for item in there}
    if record.id in taken:
        record = changed(record, id=fresh_id(PREFIXES[kind], taken))
    return _with(design, kind, (*there, record))


def next_id(design: Design, kind: str) -> str:
    """An id for a new piece of evidence of a kind."""
    taken = {item.id for item in getattr(design.evidence, kind)}
    prefix, number = PREFIXES[kind], len(taken) + 1
    while f"{prefix}{number}" in taken:
        number += 1
    return f"{prefix}{number}"


def with_changed(design: Design, kind: str, id: str, **changes: Any) -> Design:
    """A piece of evidence with some fields put right.

    Raises:
        EditError: it is not there, or a value is not allowed.
    """
    there = getattr(design.evidence, kind)
    if all(item.id != id for item in there):
        raise EditError(f"the entry '{id}' is not in the evidence any more")
    return _with(design, kind, tuple(changed(i, **changes) if i.id == id else i for i in there))


def taken_back(design: Design, kind: str, id: str, when: str) -> Design:
    """A piece of evidence that no longer stands; it stays in the notebook, struck out.

    Raises:
        EditError: it is not there, or ``when`` is no day.
    """
    return with_changed(design, kind, id, taken_back=when)


def note_expense(design: Design, when: str, what: str, amount: float, **more: Any) -> Design:
    """A line in the ledger.

    Raises:
        EditError: a value is not allowed.
    """
    return with_noted(
        design, "ledger", _made(Expense, design, "ledger", when=when, what=what, amount=amount, **more)
    )


def tick(design: Design, step: str, when: str, who: str = "") -> Design:
    """A step of the build ticked as done; the same design where it is ticked already."""
    if step in done_steps(design):
        return design
    return with_noted(design, "ticks", _made(Tick, design, "ticks", step=step, when=when, who=who))


def untick(design: Design, step: str, when: str) -> Design:
    """A step of the build that is to be done again."""
    for item in design.evidence.ticks:
        if item.step == step and item.stands:
            design = taken_back(design, "ticks", item.id, when)
    return design


def done_steps(design: Design) -> frozenset[str]:
    """The ids of the steps of the build that are ticked."""
    return frozenset(item.step for item in design.evidence.ticks if item.stands)


def note_trial(design: Design, kind: str, value: float, when: str, **more: Any) -> Design:
    """A measurement on the real thing.

    Raises:
        EditError: a value is not allowed.
    """
    return with_noted(
        design, "trials", _made(Trial, design, "trials", kind=kind, value=value, when=when, **more)
    )


def log_decision(design: Design, what: str, when: str, **more: Any) -> Design:
    """A decision in the log.

    Raises:
        EditError: a value is not allowed.
    """
    return with_noted(design, "log", _made(Decision, design, "log", what=what, when=when, **more))


def with_evidence_of(design: Design, now: Design, when: str) -> Design:
    """An earlier or later design taken up again, with all evidence that there is now.

    What stands now and was not there in that design is marked as taken back; what was there stands as
    it stood there.  Nothing is lost.

    Args:
        when: the day, or the day and time, of the undo or redo.
    """
    kept = {
        kind: _merged(getattr(design.evidence, kind), getattr(now.evidence, kind), when) for kind in KINDS
    }
    if all(kept[kind] == getattr(design.evidence, kind) for kind in KINDS):
        return design
    result: Design = changed(design, evidence=changed(design.evidence, **kept))
    return result


def _merged(there: tuple[Any, ...], now: tuple[Any, ...], when: str) -> tuple[Any, ...]:
    known = {item.id: item for item in there}
    merged = [known.pop(item.id, None) or _marked(item, when) for item in now]
    return (*merged, *known.values())


def _marked(item: Any, when: str) -> Any:
    return item if item.taken_back else changed(item, taken_back=when)


def _made(model: type[Noted], design: Design, home: str, /, **values: Any) -> Any:
    try:
        return model(id=next_id(design, home), **values)
    except ValidationError as problem:
        raise EditError(plain(problem)) from problem


def _with(design: Design, kind: str, records: tuple[Noted, ...]) -> Design:
    evidence: Evidence = changed(design.evidence, **{kind: records})
    result: Design = changed(design, evidence=evidence)
    return result
