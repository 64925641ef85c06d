"""Foam squeezed at depth: by hand."""

from math import pi

import pytest

from model.design import Brief, Float
from model.review import after_remedy, proven_remedy, review
from model.survey import survey
from model.water.depth import spare_at_depth
from tests import worked

FOAM = pi / 4 * (0.0635**2 - 0.01905**2)
"""[m2] of the tube of the worked designs."""


def floated(length, squeeze):
    pieces = tuple(Float(id=bar, name=bar, foam="noodle", bar=bar, length=length) for bar in ("b1", "b3"))
    return worked.design(worked.box(floats=pieces), brief=Brief(foam_squeeze=squeeze))


def codes(design):
    return [finding.code for finding in review(design).findings]


def test_a_tenth_of_the_foam_takes_a_tenth_of_its_displacement():
    found = survey(floated(0.06, 10))
    lost = found.balance.spare - spare_at_depth(found.parts, found.balance, 10)
    assert lost == pytest.approx(0.1 * 2 * 0.06 * FOAM * found.balance.density)


def test_it_speaks_where_lift_is_gone_at_depth_and_is_silent_where_some_is_left():
    length = next(
        step * 0.001 for step in range(1, 200) if survey(floated(step * 0.001, 0)).balance.spare > 0.005
    )
    spare = survey(floated(length, 0)).balance.spare
    enough = 100 * spare / (2 * length * FOAM * survey(floated(length, 0)).balance.density)
    assert "balance.foam-squeezed" in codes(floated(length, enough * 1.05))
    assert "balance.foam-squeezed" not in codes(floated(length, enough * 0.95))
    assert "balance.foam-squeezed" not in codes(floated(length, 0))


def test_more_foam_is_offered_so_that_a_little_lift_is_left_at_depth():
    length = next(
        step * 0.001 for step in range(1, 200) if survey(floated(step * 0.001, 0)).balance.spare > 0.005
    )
    report = review(floated(length, 5))
    finding = next(found for found in report.findings if found.code == "balance.foam-squeezed")
    after = after_remedy(report.design, proven_remedy(report, finding))
    assert 0 <= spare_at_depth(after.survey.parts, after.survey.balance, 5) < 0.03


def test_no_foam_is_offered_that_would_make_it_far_too_light():
    """Foam that loses a third: what is left at depth asks for more lift at the top than the coach allows."""
    length = next(
        step * 0.001 for step in range(1, 200) if survey(floated(step * 0.001, 0)).balance.spare > 0.005
    )
    report = review(floated(length, 30))
    finding = next(found for found in report.findings if found.code == "balance.foam-squeezed")
    assert proven_remedy(report, finding) is None
