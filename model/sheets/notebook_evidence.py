"""Pages of the notebook that show evidence: the build, the trials, the money."""

from collections.abc import Iterator

from model.building.order import build_steps
from model.design import MeasuredCut
from model.design.edits.evidence import done_steps
from model.money.ledger import ledger
from model.pool.kinds import KINDS
from model.pool.results import difference_words, results
from model.sheets.blocks import Block, Heading, Page, Table, Words
from model.sheets.shop_pages import ledger_table, standing_words
from model.survey import Survey
from model.units import format_length


def build_page(survey: Survey) -> Page:
    """What was built, and when."""
    done, names = done_steps(survey.design), {step.id: step.title for step in build_steps(survey)}
    blocks: list[Block] = [Words(f"{len(done & set(names))} of {len(names)} steps are done.")]
    ticks = tuple(
        (item.when, names.get(item.step, item.step), item.who, _fate(False, item.taken_back))
        for item in survey.design.evidence.ticks
    )
    if ticks:
        blocks.append(Table(("when", "step", "who", ""), ticks, (0.17, 0.53, 0.15, 0.15)))
    cuts = tuple(_cut_row(survey, cut) for cut in survey.design.evidence.cuts)
    if cuts:
        blocks.append(Heading("Pieces as they were sawn"))
        blocks.append(Table(("when", "bar", "planned", "measured", ""), cuts, (0.17, 0.33, 0.16, 0.16, 0.18)))
    return Page("build", "The build", tuple(blocks))


def _cut_row(survey: Survey, cut: MeasuredCut) -> tuple[str, ...]:
    name = next((bar.name for bar in survey.arrangement.bars if bar.id == cut.bar), cut.bar)
    planned, length = (format_length(size, survey.design.units) for size in (cut.planned, cut.length))
    return cut.when, name, planned, length, _fate(cut.kept, cut.taken_back)


def _fate(kept: bool, taken_back: str | None) -> str:
    return f"taken back {taken_back}" if taken_back else "built in" if kept else ""


def trials_page(survey: Survey) -> Page:
    """Every trial, model and measurement side by side."""
    rows = tuple(_trial_rows(survey))
    columns = ("when", "what", "measured", "model then", "model now", "difference now", "who and notes")
    table = Table(columns, rows, (0.13, 0.15, 0.14, 0.14, 0.14, 0.15, 0.15))
    return Page("trials", "Trials", (table if rows else Words("Nothing was tried in water yet."),))


def _trial_rows(survey: Survey) -> Iterator[tuple[str, ...]]:
    unit, now = survey.design.units, {result.trial.id: result for result in results(survey)}
    for trial in survey.design.evidence.trials:
        kind, result = KINDS[trial.kind], now.get(trial.id)
        over = f" over {format_length(trial.over, unit)}" if trial.over else ""
        about = f" of {_named(survey, trial.about)}" if trial.about else ""
        model = result.model if result else None
        yield (
            trial.when,
            f"{kind.title}{over}{about}",
            kind.words(trial.value, unit),
            kind.words(trial.model, unit) if trial.model is not None else "nothing",
            kind.words(model, unit) if model is not None else "nothing",
            difference_words(survey, result) if result else f"taken back {trial.taken_back}",
            ": ".join(word for word in (trial.who, trial.notes) if word),
        )


def _named(survey: Survey, id: str) -> str:
    names = {bar.id: bar.name for bar in survey.arrangement.bars}
    names |= {thruster.id: thruster.name for thruster in survey.arrangement.thrusters}
    names |= {foam.id: foam.name for foam in survey.design.supplies.foams}
    return names.get(id, id)


def money_page(survey: Survey) -> Page:
    """The ledger, and what it leaves."""
    found = ledger(survey.design, survey.bill)
    blocks: list[Block] = [Words(standing_words(found))]
    if survey.design.evidence.ledger:
        blocks.append(ledger_table(survey))
    else:
        blocks.append(Words("Nothing was bought yet."))
    return Page("ledger", "Money", tuple(blocks))
