"""The command line: everything but the session itself.

Results go to standard output, what is wrong to standard error, one line each; bad input never ends
in a traceback.  Nothing of Textual is imported here.
"""

from __future__ import annotations

import os
import sys
from argparse import ArgumentParser, Namespace, RawDescriptionHelpFormatter
from contextlib import suppress
from errno import EINVAL, EPIPE
from io import TextIOWrapper
from typing import NoReturn

from tui.cli_check import UNREADABLE, Outcome, check
from tui.cli_compare import compare
from tui.cli_presets import check_presets, list_presets, show_preset
from tui.cli_sheets import PAPERS, sheets
from tui.cli_text import plain

NAME = "poolwright"
COMMANDS = ("check", "compare", "sheets", "presets")
KINDS = ("stock", "brief", "motors", "starter", "demo")
INTERRUPTED = 130
SEEN_ENOUGH = (EPIPE, EINVAL)
"""Whoever reads the output has closed it; Windows says so with the second."""
USAGE = """poolwright [FILE]
       poolwright demo
       poolwright check FILE... [--json]
       poolwright compare FILE FILE... [--json]
       poolwright sheets FILE --to DIR [--paper A4|Letter]
       poolwright presets list [KIND] | show NAME | check [NAME or FILE...]"""
DESCRIPTION = """A build coach for small tethered underwater vehicles of plastic pipe.

  poolwright [FILE]          the guided session, on FILE or a new design
  poolwright demo            the session on the demo design, kept apart from your files
  poolwright check FILE...   the survey in words; a table when there are several files;
                             --json for a list with one document per file
  poolwright compare A B     designs side by side: speed, turning, steadiness, weight, cost
  poolwright sheets FILE     the printed sheets, the drawings and the notebook, into a folder
  poolwright presets list    which presets there are, and where their values come from
  poolwright presets show    the text of one, to copy into a file of your own
  poolwright presets check   whether your own are right"""
CHECK_STATUS = """exit status: 0 nothing must be put right, 1 something must be, 2 a file could not be
read or the call was wrong"""
COMPARE_STATUS = "exit status: 0 they are compared, 2 a file could not be read or the call was wrong"
SHEETS_STATUS = (
    "exit status: 0 all sheets are written, 2 the file could not be read or the folder not written"
)
PRESETS_STATUS = "exit status: 0 all are right, 1 some have keys that are not known, 2 one cannot be used"


class _Parser(ArgumentParser):
    """One line for a wrong call, instead of the usage."""

    def error(self, message: str) -> NoReturn:
        _complain(f"{NAME}: {message}; '{self.prog} --help' lists the calls")
        self.exit(UNREADABLE)


def main(arguments: list[str]) -> int:
    """Run a command; returns the exit status.

    Args:
        arguments: the words after the name of the program.
    """
    try:
        return _emit(_run(arguments))
    except SystemExit as end:  # argparse, after help or a wrong call
        return _emit(Outcome("", (), end.code if isinstance(end.code, int) else UNREADABLE))
    except KeyboardInterrupt:
        _complain(f"{NAME}: stopped")
        return INTERRUPTED


def _run(arguments: list[str]) -> Outcome:
    if arguments and arguments[0] not in COMMANDS and not arguments[0].startswith("-"):
        expected = "check, compare, sheets or presets, or one design file or demo with nothing after it"
        _parser().error(f"found '{' '.join(arguments)}'; expected {expected}")
    options = _parser().parse_args(arguments)
    if options.command == "check":
        return check(options.files, as_json=options.json)
    if options.command == "compare":
        if len(options.files) < 2:
            _parser().error(f"found one design, '{options.files[0]}'; expected two or more to compare")
        return compare(options.files, as_json=options.json)
    if options.command == "sheets":
        return sheets(options.file, options.to, options.paper)
    if options.command == "presets":
        return _presets(options)
    if not options.version:
        _parser().error("no command; expected check, compare, sheets or presets")
    return Outcome(f"{NAME} {_version()}\n", (), 0)


def _presets(options: Namespace) -> Outcome:
    if options.what == "list":
        return list_presets(options.kind)
    return show_preset(options.name) if options.what == "show" else check_presets(options.names)


def _parser() -> ArgumentParser:
    parser = _Parser(
        prog=NAME,
        usage=USAGE,
        description=DESCRIPTION,
        formatter_class=RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="store_true", help="show the version and stop")
    commands = parser.add_subparsers(dest="command", prog=NAME, title="commands", metavar="")
    checking = commands.add_parser(
        "check", help="the survey of designs", epilog=CHECK_STATUS, allow_abbrev=False
    )
    checking.add_argument("files", nargs="+", metavar="FILE", help="a design file")
    checking.add_argument("--json", action="store_true", help="print a list with one document per file")
    comparing = commands.add_parser(
        "compare", help="designs side by side", epilog=COMPARE_STATUS, allow_abbrev=False
    )
    comparing.add_argument("files", nargs="+", metavar="FILE", help="a design file; two or more")
    comparing.add_argument("--json", action="store_true", help="print a list with one document per file")
    _add_sheets(
        commands.add_parser("sheets", help="the sheets to print", epilog=SHEETS_STATUS, allow_abbrev=False)
    )
    _add_presets(
        commands.add_parser(
            "presets",
            help="stocks, briefs, motors, starters and the demo",
            epilog=PRESETS_STATUS,
            allow_abbrev=False,
        )
    )
    return parser


def _add_sheets(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a design file")
    parser.add_argument("--to", required=True, metavar="DIR", help="the folder to write into; it is made")
    parser.add_argument("--paper", choices=PAPERS, help="A4 or Letter; Letter for a design in inches")


def _add_presets(parser: ArgumentParser) -> None:
    what = parser.add_subparsers(dest="what", metavar="list|show|check", required=True)
    listing = what.add_parser("list", help="which there are, and where their values come from")
    listing.add_argument("kind", nargs="?", choices=KINDS, help="only those of one kind")
    showing = what.add_parser("show", help="the text of one, to copy into a file of your own")
    showing.add_argument("name", metavar="NAME", help="its name, or KIND/NAME")
    checking = what.add_parser("check", help="whether they are right", epilog=PRESETS_STATUS)
    checking.add_argument(
        "names", nargs="*", metavar="NAME or FILE", help="presets, by name or file; none means all"
    )


def _emit(outcome: Outcome) -> int:
    """Print an outcome; the status says so where standard output cannot be written."""
    for line in outcome.errors:
        _complain(line)
    if sys.stdout is None:  # closed by whoever started the program
        _complain("standard output: found none; expected a place to write to")
        return UNREADABLE
    try:
        if isinstance(sys.stdout, TextIOWrapper):
            sys.stdout.reconfigure(errors="replace")
        sys.stdout.write(outcome.output)
        sys.stdout.flush()
    except OSError as problem:
        _drop_output()
        if problem.errno in SEEN_ENOUGH:
            return outcome.status
        reason = (problem.strerror or str(problem)).lower()
        _complain(f"standard output: found an obstacle to writing ({reason}); expected room to write")
        return UNREADABLE
    return outcome.status


def _complain(line: str) -> None:
    if sys.stderr is None:
        return
    with suppress(OSError):
        print(plain(line), file=sys.stderr, flush=True)


def _drop_output() -> None:
    """So that the interpreter does not try again at its end."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, sys.stdout.fileno())


def _version() -> str:
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version(NAME)
    except PackageNotFoundError:
        return "(not installed)"
