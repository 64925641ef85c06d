"""Which wire would be enough for the tether, and what a longer tether costs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.power.gauges import gauge_choices
from model.solve.wires import longer_tether
from tui.forms.proposal import Offer, ProposalSection, Way
from tui.pages.words import money

if TYPE_CHECKING:
    from model.power.gauges import GaugeChoice
    from model.review import Report
    from model.solve.wires import Longer

ASK = "Which cable would be enough, and what do five metres more of it cost?"
HEAD = f"{'one core':<11}{'volts lost':>11}{'pull left':>11}{'fuse up to':>12}"


def gauges_section() -> ProposalSection:
    """Which wire would be enough, and what a longer tether costs."""
    return ProposalSection("Gauges", lambda report: ASK, (Way("gauges", "Work it out", gauges),), takes=False)


def gauges(report: Report) -> Offer:
    """Each size of wire on sale with what it leaves, and a tether five metres longer."""
    found = report.survey
    choices = gauge_choices(report.design, found.arrangement, found.balance.density)
    if not choices:
        return Offer("", "Plan the wiring first, in the section Supply.", None)
    lines = [HEAD, *(_choice(each) for each in choices), _verdict(choices)]
    longer = longer_tether(found)
    if longer:
        lines += ["", *_longer(report, longer)]
    return Offer("", "\n".join(lines), None)


def _choice(each: GaugeChoice) -> str:
    shares = f"{100 * each.lost:>9.0f} %{100 * each.pull:>9.0f} %{each.fuse:>10.0f} A"
    return f"{each.name:<11}{shares}{'' if each.enough else '  thin'}"


def _verdict(choices: tuple[GaugeChoice, ...]) -> str:
    thinnest = next((each for each in choices if each.enough), None)
    if thinnest is None:
        return "None is thick enough for this length: a shorter tether is."
    return f"Thick enough from {thinnest.name} on. Thicker cable is also stiffer and drags more."


def _longer(report: Report, longer: Longer) -> list[str]:
    """What more cable changes, a line each."""
    volts, pull, amps = longer.volts, longer.pull, longer.amps
    lines = [
        f"{longer.metres:g} m more tether:",
        f"  volts at the worst motor {volts[0]:.1f} to {volts[1]:.1f} V",
        f"  pull of all motors {100 * pull[0]:.0f} to {100 * pull[1]:.0f} % of their tests",
        f"  current {amps[0]:.1f} to {amps[1]:.1f} A",
    ]
    if longer.speed:
        lines.append(f"  top speed ahead {longer.speed[0]:.2f} to {longer.speed[1]:.2f} m/s")
    if longer.price is not None:
        lines.append(f"  price {money(report, longer.price)} more")
    return lines
