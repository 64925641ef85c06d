"""Two arrangements for two runs: made, put first, taken away, and what differs is listed."""

import pytest

from model.arrangements import differences
from model.design.edits.runs import add_run, remove_run, work_on_run
from model.errors import EditError
from tests.drawing_designs import box_design


def test_a_second_arrangement_is_changed_for_itself():
    design = add_run(box_design())
    first, second = design.arrangements
    assert (first.id, first.name) != (second.id, second.name)
    assert differences(design)[0].same_frame
    fewer = design.arranged(floats=design.arrangement.floats[1:], bars=design.arrangement.bars)
    assert fewer.arrangements[1] == second
    assert differences(fewer)[0].added == (design.arrangement.floats[0].name,)


def test_another_one_is_worked_on_and_comes_back():
    design = add_run(box_design())
    first, second = (run.id for run in design.arrangements)
    turned = work_on_run(design, second)
    assert turned.arrangement.id == second
    assert work_on_run(turned, first) == design
    assert remove_run(turned, second).arrangement.id == first


def test_what_cannot_be_is_refused():
    design = box_design()
    with pytest.raises(EditError, match="only arrangement"):
        remove_run(design, design.arrangement.id)
    with pytest.raises(EditError, match="two arrangements already"):
        add_run(add_run(design))
    with pytest.raises(EditError, match="not there"):
        work_on_run(design, "nobody")
