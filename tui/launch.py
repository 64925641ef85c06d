"""Where poolwright starts; copied into the wheel as ``poolwright/__main__.py``.

In the wheel the folders tui, model and presets lie beside this file, so that folder goes first on
the path; in a checkout they lie at the top of it and are on the path already.  Nothing but the
standard library is imported here, so that the first frame is painted soon.
"""

import gc
import os
import sys
from pathlib import Path

os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")  # looking for them costs 30 ms at the start
COMMANDS = ("check", "compare", "sheets", "presets", "-h", "--help", "--version")
HERE = Path(__file__).resolve().parent
if (HERE / "tui").is_dir() and str(HERE) not in sys.path:
    sys.path.insert(0, str(HERE))


def main(arguments: list[str] | None = None) -> int:
    """Start the session, or hand over to the command line; returns the exit status."""
    words = sys.argv[1:] if arguments is None else arguments
    if len(words) > 1 or (words and words[0] in COMMANDS) or (words and words[0].startswith("-")):
        from tui import cli

        return cli.main(words)
    gc.disable()  # thousands of classes are made, and all of them stay; the app puts it on again
    from tui.app import run

    return run(words[0] if words else None)


if __name__ == "__main__":
    sys.exit(main())
