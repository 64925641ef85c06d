"""The coach on thrusters, motion and wires: each finding on a design that has it, silent beside it."""

import pytest

from model.review import after_remedy, proven_remedy, review
from tests.model.thrust_cases import CASES, GOOD

OURS = {case.code for case in CASES}


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.code)
def test_a_finding_speaks_with_its_numbers(case):
    found = [f for f in review(case.shows).findings if f.code == case.code]
    assert found, [f.code for f in review(case.shows).findings]
    wanted = next(f for f in found if (f.about.kind, f.about.id) == case.about)
    assert wanted.severity == case.severity
    for word in case.words:
        assert word in wanted.message, wanted.message


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.code)
def test_it_is_silent_beside_it(case):
    assert [f.message for f in review(case.silent).findings if f.code == case.code] == []


@pytest.mark.parametrize("case", [case for case in CASES if case.remedied], ids=lambda case: case.code)
def test_its_remedy_clears_it(case):
    report = review(case.shows)
    found = next(f for f in report.findings if f.code == case.code)
    remedy = proven_remedy(report, found)
    assert remedy is not None
    after = after_remedy(case.shows, remedy)
    assert found.key not in {other.key for other in after.findings}


def test_a_good_vehicle_hears_none_of_them():
    assert [f.message for f in review(GOOD).findings if f.code in OURS] == []
