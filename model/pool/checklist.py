"""The list that is gone through before a dive: its lines, and what a tick of one is called."""

from model.design import Design
from model.design.edits.evidence import done_steps
from model.pool.card import kit_words
from model.pool.safety import AFTER_DIVE, PRE_DIVE, inspection
from model.survey import Survey

MARK = "before a dive: "
"""Begins the name of every tick of this list among those of the build."""
LONGEST = 120
"""Letters of the name of a tick."""


def checklist(survey: Survey) -> dict[str, str]:
    """Every line by its key, which is its own words: a line that changes is to be ticked again."""
    groups = (
        ("bring", kit_words(survey)),
        ("adult", inspection(survey)),
        ("dive", PRE_DIVE),
        ("after", AFTER_DIVE),
    )
    return {f"{group}:{words}": words for group, lines in groups for words in lines}


def tick_name(key: str) -> str:
    """What a tick of a line is called in the evidence."""
    words = f"{MARK}{key.partition(':')[2]}"
    return words if len(words) <= LONGEST else f"{words[: LONGEST - 3]}..."


def before_a_dive(survey: Survey) -> tuple[str, ...]:
    """The keys of the lines that are gone through before a dive."""
    return tuple(key for key in checklist(survey) if not key.startswith("after"))


def still_open(design: Design, survey: Survey) -> int:
    """How many lines are to be gone through yet before a dive."""
    done = done_steps(design)
    return sum(tick_name(key) not in done for key in before_a_dive(survey))
