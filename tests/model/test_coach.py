"""The coach speaks where it must, with the numbers, and is silent beside it."""

from pathlib import Path

import pytest

from model.coach.finding import STEPS
from model.coach.sentences import SENTENCES
from model.design import Ballast, Brief
from model.review import review
from tests import worked
from tests.model.coach_cases import CASES, Case, box, ruled

TESTS = Path(__file__).parent.parent


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.code}-{case.about[1]}")
def test_a_finding_speaks_with_its_numbers_and_is_silent_beside_it(case: Case):
    found = [f for f in review(case.shows).findings if f.code == case.code]
    assert [(f.about.kind, f.about.id) for f in found][:1] == [case.about]
    assert found[0].severity == case.severity
    assert found[0].step in STEPS
    for words in case.words:
        assert words in found[0].message
    assert case.code not in [f.code for f in review(case.silent).findings if f.about == found[0].about]


def test_every_finding_that_there_is_stands_in_a_test():
    files = [path for pattern in ("test_*.py", "*_cases.py") for path in TESTS.rglob(pattern)]
    sources = [path.read_text(encoding="utf-8") for path in files]
    assert [code for code in SENTENCES if not any(f'"{code}"' in source for source in sources)] == []


def test_every_code_is_a_topic_and_a_thing_with_its_problem():
    for code in SENTENCES:
        topic, _, problem = code.partition(".")
        assert topic.isalpha()
        assert "-" in problem


def test_what_must_be_put_right_comes_first_then_the_steps_in_their_order():
    design = ruled(box(openings=()), size_limit=(0.3, 0.3, 0.3), moves=("up",))
    findings = review(design).findings
    order = [("must", "should", "tip").index(f.severity) * 100 + STEPS.index(f.step) for f in findings]
    assert order == sorted(order)
    assert len(findings) > 3


def test_lengths_are_told_in_the_unit_of_the_design():
    inches = ruled(box(), size_limit=(1.0, 0.3, 1.0)).but(units="in")
    message = next(f.message for f in review(inches).findings if f.code == "size.limit-over")
    assert "12 15/16 in wide, 1 1/8 in over the limit of 11 13/16 in" in message  # 327.94, 27.94, 300 mm


def test_a_bill_over_the_limit_says_by_how_much():
    """Twelve bars and eight corners that cost nothing but one stick of 4.00, and a weight of 30.00."""
    weight = Ballast(id="w", name="w", bar="b0", mass=0.1, price=30.0)
    goods = worked.stock(pipes=(worked.pipe(sticks=worked.pipe().sticks),), kerf=0.0)
    design = worked.design(
        worked.box(0.3, 0.2, 0.2, ballasts=(weight,)), stock=goods, brief=Brief(spending_limit=25.0)
    )
    message = next(f.message for f in review(design).findings if f.code == "money.limit-over")
    assert message == "The bill is 34.00 units, which is 9.00 units over the limit of 25.00 units."
