"""The pack written into a folder: everything is made first, and nothing half-written is left behind."""

from collections.abc import Mapping, Sequence
from pathlib import Path

from model.design import Design
from model.errors import FileProblem
from model.reading import PathText
from model.review import Report
from model.saving import write_bytes
from model.sheets.blocks import PaperName
from model.sheets.pack import Progress, sheet_files


def write_sheets(
    report: Report,
    folder: PathText,
    paper: PaperName,
    made: str = "",
    others: Sequence[Design] = (),
    told: Progress | None = None,
) -> tuple[Path, ...]:
    """Make all sheets of a design and write them into a folder, which is made if it is not there.

    Args:
        made: the day, for the foot of each page.
        others: designs for the notebook to compare with.
        told: hears what is being made, its number and how many there are.

    Raises:
        FileProblem: the folder cannot be written; what was there is unharmed, and nothing new is left behind.
    """
    return write_together(folder, sheet_files(report, paper, made, others, told))


def write_together(folder: PathText, files: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Write files into a folder; if one fails, those that were not there before are taken away again.

    Raises:
        FileProblem: one of them cannot be written.
    """
    target = Path(folder)
    made_folder = _made(target)
    fresh: list[Path] = []
    try:
        for name, data in files.items():
            path = target / name
            new = not path.exists()
            write_bytes(path, data)
            if new:
                fresh.append(path)
    except FileProblem:
        for path in fresh:
            path.unlink(missing_ok=True)
        if made_folder:
            target.rmdir()
        raise
    return tuple(target / name for name in files)


def _made(folder: Path) -> bool:
    """Whether the folder had to be made."""
    try:
        if folder.is_dir():
            return False
        folder.mkdir(parents=True)
    except FileExistsError as problem:
        raise FileProblem(str(folder), "", "a file", "the name of a folder") from problem
    except (OSError, ValueError) as problem:
        reason = (getattr(problem, "strerror", None) or str(problem)).lower()
        raise FileProblem(
            str(folder), "", f"no way to make it ({reason})", "a folder of your own"
        ) from problem
    return True
