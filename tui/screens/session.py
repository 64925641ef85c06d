"""The one screen of the session: what comes up from the pages as messages, it does."""

from __future__ import annotations

from asyncio import Event, to_thread
from collections.abc import Iterable
from typing import TYPE_CHECKING

from msgspec.structs import replace
from textual import on, work

from model.errors import EditError, FileProblem
from model.review import proven_remedy
from tui.actions import bindings
from tui.beside import write_beside
from tui.guide import Shown, next_thing, no_remedy
from tui.messages import (
    DrawRequested,
    EditRequested,
    MarkRequested,
    PlaceRequested,
    RemedyRequested,
    SheetsRequested,
    StepRequested,
    WriteRequested,
)
from tui.places import number_of, section_of
from tui.screens.looking import Looking, beside
from tui.shelf import SUFFIX
from tui.steps import BY_KEY, after, before, page_of

if TYPE_CHECKING:
    from pathlib import Path

    from model.coach.finding import Finding
    from model.design import Design
    from tui.keeper import Keeper
    from tui.session import Edit, Session

SAVE_DELAY = 0.6
"""[s] The file is saved this long after the last change."""
PROOF_DELAY = 0.25
"""[s] Remedies are proved this long after the last change, when the screen is painted."""


class SessionScreen(Looking):
    """A design being worked on.

    Args:
        session: the design and its history.
        keeper: where it is saved.
        seen: keys of the steps that were opened before.
        step: the key of the step to begin with.
    """

    BINDINGS = bindings()

    def __init__(
        self, session: Session, keeper: Keeper, seen: Iterable[str] = (), step: str = "brief"
    ) -> None:
        seen = frozenset(seen) & BY_KEY.keys()
        super().__init__(Shown(session.report, step, seen, ready=False), keeper.state)
        self.session, self.keeper = session, keeper
        self.painted = Event()
        """Set when the first page is on the screen."""

    async def on_mount(self) -> None:
        """Open the first page; the numbers and the drawing follow when it is painted."""
        await self._open(self.state.step)
        self.call_after_refresh(self._work_out)
        self.call_after_refresh(self.painted.set)

    @work
    async def _work_out(self) -> None:
        """Load the coach and all that it asks, in a thread, then show what it says."""
        report = self.session.report
        await to_thread(report.work_out)
        await self.furnish()
        if self.session.report is report:
            self.page.watch_report(report)
        self.present(replace(self.state, ready=True))
        self.draw()
        self.complete.set()

    async def _open(self, step: str) -> None:
        self.said = ""
        if self.page is not None:
            await self.commit()
        await self.open_page(step)
        self._prove_soon()

    # edits

    @on(EditRequested)
    def _edit_requested(self, event: EditRequested) -> None:
        event.stop()
        self.change(event.label, event.edit)

    def change(self, label: str, edit: Edit) -> None:
        """Make an edit, note it and show what comes of it; a refusal is said in one sentence."""
        try:
            changed = self.session.edit(label, edit)
        except EditError as refusal:
            self.said = str(refusal)
            restore = getattr(self.page, "refresh_fields", None)
            if restore is not None:
                restore()
            return
        if changed:
            self._changed(f"Done: {label}.")

    def _changed(self, said: str) -> None:
        """Keep and show the session's new design; what was proved of the old one is forgotten."""
        self.said = said
        self.keeper.note(self.session.history.now.label, self.session.design)
        self.saving = self.keeper.state
        self.present(replace(self.state, report=self.session.report, proofs={}, ready=True))
        design = self.session.design
        self.set_timer(SAVE_DELAY, lambda: self.session.design is design and self.save())
        self._prove_soon()

    @work(group="save", exit_on_error=False)
    async def save(self) -> None:
        """Save the design on screen in its file."""
        await self.save_now()

    async def save_now(self) -> bool:
        """Save in a thread; whether it is safe in its file."""
        saved = await self.keeper.save(self.session.design)
        self.saving = self.keeper.state
        self.said = self.keeper.take_news() or self.said
        return saved

    async def save_under(self, path: Path) -> str:
        """Save under a new name and go on there; a sentence where it did not work."""
        try:
            await self.keeper.save_under(path.with_suffix(path.suffix or SUFFIX), self.session.design)
        except FileProblem as problem:
            return str(problem)
        self.saving = self.keeper.state
        self.said = f"Saved as {self.keeper.path.name}."
        return ""

    # remedies

    def _prove_soon(self) -> None:
        report = self.session.report
        self.set_timer(PROOF_DELAY, lambda: self.session.report is report and self._prove())

    @work(group="prove", exclusive=True, exit_on_error=False)
    async def _prove(self) -> None:
        """Prove the remedies of the next thing to do, then of what is listed, in a thread."""
        report, shown = self.session.report, self.state
        while (first := next_thing(shown).finding) and first.key not in shown.proofs:
            shown = await self._with_proof(shown, first)
            if self.session.report is not report:
                return
        self._show_proofs(shown)
        for finding in self.state.listed:
            if finding.key not in shown.proofs:
                shown = await self._with_proof(shown, finding)
                if self.session.report is not report:
                    return
        self._show_proofs(shown)

    async def _with_proof(self, shown: Shown, finding: Finding) -> Shown:
        remedy = await to_thread(proven_remedy, shown.report, finding)
        return replace(shown, proofs={**shown.proofs, finding.key: remedy})

    def _show_proofs(self, shown: Shown) -> None:
        """Show what was proved; the step may be another by now."""
        if shown.proofs != self.state.proofs:
            self.present(replace(self.state, proofs={**self.state.proofs, **shown.proofs}))

    @property
    def chosen(self) -> Finding | None:
        """What F5 clears: the next thing to do, or what is under the bar of the list that has the focus."""
        if self.furnished and self.findings.has_focus:
            return self.findings.chosen
        return next_thing(self.state).finding if self.state.ready else None

    @on(RemedyRequested)
    def _remedy_requested(self, event: RemedyRequested) -> None:
        event.stop()
        self._take_remedy(event.finding)

    def _take_remedy(self, finding: Finding | None) -> None:
        """Take a remedy that stands on the screen; where there is none, say why."""
        remedy = self.state.remedy(finding) if finding else None
        if remedy:
            self.change(remedy.label, remedy.edit)
        else:
            self.said = no_remedy(self.state, finding)

    # places

    @on(StepRequested)
    async def _step_requested(self, event: StepRequested) -> None:
        event.stop()
        await self._open(event.step)

    @on(MarkRequested)
    @beside
    def _mark_requested(self, event: MarkRequested) -> None:
        from model.coach.finding import About

        event.stop()
        self.drawing.marked = About(event.kind, event.id) if event.kind else None

    @on(PlaceRequested)
    async def _place_requested(self, event: PlaceRequested) -> None:
        event.stop()
        await self.show_finding(event.finding)

    async def show_finding(self, finding: Finding) -> None:
        """Show where a finding is put right."""
        await self.show_place(page_of(finding.step), finding.about, section_of(finding))

    @on(DrawRequested)
    @beside
    async def _draw_requested(self, event: DrawRequested) -> None:
        event.stop()
        await self.action_draw()

    @on(WriteRequested)
    async def _write_requested(self, event: WriteRequested) -> None:
        event.stop()
        self.keeper.make_folder()  # an untouched demo has none yet
        self.said = await to_thread(write_beside, self.keeper.path, event.name, event.text)

    # actions

    def show_keys(self) -> None:
        """Dim at the foot what cannot be done now."""
        super().show_keys()
        self.keys.dimmed = self.dimmed()

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """None dims what cannot be done now; F5 says why."""
        return None if self.is_mounted and action in self.dimmed() - {"remedy"} else True

    def dimmed(self) -> frozenset[str]:
        """The actions that cannot be done now."""
        finding = self.chosen
        able = {
            "undo": self.session.history.past,
            "redo": self.session.history.future,
            "remedy": finding and self.state.remedy(finding),
            "step_before": before(self.state.step),
            "step_after": after(self.state.step),
            "save": not self.keeper.why_not,
        }
        return frozenset(action for action, possible in able.items() if not possible)

    def action_undo(self) -> None:
        """Take the last edit back."""
        label = self.session.undo()
        if label is not None:
            self._changed(f"Taken back: {label}.")

    def action_redo(self) -> None:
        """Make the edit again that was taken back."""
        label = self.session.redo()
        if label is not None:
            self._changed(f"Done again: {label}.")

    @beside
    async def action_place(self) -> None:
        """Show what the finding is about, or open the step where there is work left."""
        thing = next_thing(self.state)
        listed = self.findings.chosen if self.findings.has_focus else None
        finding = listed or thing.place
        if finding:
            await self.show_finding(finding)
        elif thing.step != self.state.step:
            await self._open(thing.step)

    @beside
    def action_remedy(self) -> None:
        """Take the remedy of the finding."""
        self._take_remedy(self.chosen)

    @beside
    def action_everywhere(self) -> None:
        """The findings of every step, or of this one."""
        self.present(replace(self.state, everywhere=not self.state.everywhere))
        self.action_findings()
        self._prove_soon()

    async def action_go(self, step: str, section: str = "") -> None:
        """The page of a step, or a section of it."""
        await self._open(step)
        if section:
            await self.page.turn_to(section)

    async def action_step_after(self) -> None:
        """The page of the next step."""
        following = after(self.state.step)
        if following:
            await self._open(following.key)

    async def action_step_before(self) -> None:
        """The page of the step before."""
        previous = before(self.state.step)
        if previous:
            await self._open(previous.key)

    def action_units(self) -> None:
        """The other unit."""
        unit = "in" if self.session.design.units == "mm" else "mm"
        self.change(f"lengths in {unit}", lambda design: design.but(units=unit))

    @on(SheetsRequested)
    async def action_sheets(self) -> None:
        """Make the sheets to print."""
        from tui.dialogs.sheets import SheetsDialog

        await self.commit()
        self.app.push_screen(SheetsDialog(self.session.report, self.keeper.path, self.session.before))

    def action_origins(self) -> None:
        """Where the numbers come from."""
        from model.explain import quantities
        from tui.dialogs.origins import OriginsDialog

        section = getattr(self.page, "section", None)
        first = number_of(self.state.step, section.title if section else "")
        self.app.push_screen(OriginsDialog(quantities(self.session.report.survey), first))

    @beside
    @work
    async def action_palette(self) -> None:
        """Pick any action from a list and do it."""
        from tui.dialogs.palette import Palette

        call = await self.app.push_screen_wait(Palette(self.dimmed()))
        if call:
            await self.run_action(call)

    def action_save(self) -> None:
        """Save at once."""
        self.said = f"It is saved in {self.keeper.path}."
        self.save()

    def take_over(self, label: str, design: Design) -> None:
        """Go on with another design; undo brings back the one before."""
        self.change(label, lambda _: design)
