"""Edits of the arrangements of a design: one for each run; the first is the one that is worked on."""

from model.design.document import Design
from model.design.edits.core import changed, fresh_id, fresh_name
from model.errors import EditError

RUNS_MOST = 2
"""A design holds an arrangement for each of two runs."""


def add_run(design: Design) -> Design:
    """A second arrangement like the first, behind it; from then on each is changed for itself.

    Raises:
        EditError: there are two already.
    """
    runs = design.arrangements
    if len(runs) >= RUNS_MOST:
        raise EditError("there are two arrangements already; take one away first")
    known = fresh_id("run", (run.id for run in runs))
    name = fresh_name(design.arrangement.name, (run.name for run in runs))
    result: Design = changed(design, arrangements=(*runs, changed(design.arrangement, id=known, name=name)))
    return result


def work_on_run(design: Design, id: str) -> Design:
    """Another arrangement put first: every page, drawing and sheet is about it then.

    Raises:
        EditError: it is not there.
    """
    chosen = [run for run in design.arrangements if run.id == id]
    if not chosen:
        raise EditError("this arrangement is not there any more")
    rest = (run for run in design.arrangements if run.id != id)
    result: Design = changed(design, arrangements=(*chosen, *rest))
    return result


def remove_run(design: Design, id: str) -> Design:
    """An arrangement taken away.

    Raises:
        EditError: it is the only one.
    """
    rest = tuple(run for run in design.arrangements if run.id != id)
    if not rest:
        raise EditError("it is the only arrangement; a design needs one")
    result: Design = changed(design, arrangements=rest)
    return result
