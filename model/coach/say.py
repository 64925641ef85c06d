"""How a rule of the coach puts a finding into words."""

from collections.abc import Callable, Iterable

from model.coach.finding import About, Finding, Remedy, Severity, Step
from model.coach.sentences import SENTENCES

WHOLE = About("design")
Propose = Callable[[], Iterable[Remedy]]


def say(
    code: str,
    severity: Severity,
    step: Step,
    about: About,
    propose: Propose = tuple,
    /,
    **values: str,
) -> Finding:
    """A finding with the sentence of its code, its numbers filled in.

    Raises:
        KeyError: the code has no sentence, or the sentence names a value that is not given.
    """
    return Finding(code, severity, step, about, SENTENCES[code].format(**values), propose)
