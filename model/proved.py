"""What the solver proposes for the floats, proved like a remedy of the coach before anybody is offered it."""

from itertools import islice

from msgspec import Struct

from model.coach.finding import SEVERITIES, Severity
from model.design import Design
from model.review import BARRED, Report, review, worse
from model.solve.floats import Proposal, Wish, proposals

TRIED = 8
"""So many proposals are proved, the best first."""
SAME = 1e-6
"""[kg] What sinks with this much more sinks as before."""


class Proved(Struct, frozen=True):
    """The best proposal that does no harm.

    Attributes:
        design: with it; None where there is none.
        words: what it comes to, or in one sentence why there is none.
    """

    design: Design | None
    words: str


def proved_floats(report: Report, wish: Wish) -> Proved:
    """Floats and weights for a wish; applied they bring no new must and nothing as bad as what there was.

    A vehicle that sinks with them does not sink with more than before.
    """
    refusal = ""
    for proposal in islice(proposals(report.survey, wish), TRIED):
        against = _against(report, proposal)
        if not against:
            return Proved(proposal.design, proposal.words)
        refusal = refusal or against
    return Proved(None, refusal)


def _against(report: Report, proposal: Proposal) -> str:
    """Why a proposal is not offered, in one sentence; "" where nothing speaks against it."""
    before, after = report.survey.balance.spare, proposal.after.balance.spare
    reason = f"No proposal: {proposal.reason[:1].lower()}{proposal.reason[1:]}"
    if not proposal.pieces or after < min(before, 0.0) - SAME:
        return reason
    harm = worse(report, review(proposal.design), BARRED[_gravest(report)])
    if not harm:
        return ""
    if proposal.reason and harm[0].code.startswith("balance."):
        return reason
    return f"No proposal, since the best that there is would bring this: {harm[0].message}"


def _gravest(report: Report) -> Severity:
    """How bad the worst is that floats and weights are to put right."""
    found = [finding.severity for finding in report.findings if finding.code.startswith("balance.")]
    return min(found, key=SEVERITIES.index, default="tip")
