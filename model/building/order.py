"""The order of work for one design, from whole sticks to the tug test."""

from model.building.finish_steps import finish_steps
from model.building.fitting_steps import fitting_steps
from model.building.sawing_steps import sawing_steps
from model.building.step import Step
from model.money.shopping import PipePlan, pipe_plan
from model.survey import Survey


def build_steps(survey: Survey, plan: PipePlan | None = None) -> tuple[Step, ...]:
    """All steps in the order in which they are done.

    Args:
        plan: the cutting plan, where it is known already.
    """
    plan = plan or pipe_plan(survey.design, survey.frame)
    return (*sawing_steps(survey, plan), *fitting_steps(survey), *finish_steps(survey))
