"""Calls of the command line: help, wrong words, and standard output that cannot be written."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tui import cli

ROOT = Path(__file__).parent.parent.parent
RECTANGLE = ROOT / "tests" / "fixtures" / "rectangle.toml"
COMMAND = (sys.executable, str(ROOT / "tui" / "launch.py"))
ENVIRONMENT = {**os.environ, "PYTHONPATH": str(ROOT)}


def run(capsys, *arguments):
    """Standard output, lines on standard error, the exit status."""
    status = cli.main(list(arguments))
    output = capsys.readouterr()
    return output.out, output.err.splitlines(), status


def test_help_says_every_call_and_no_other(capsys):
    text, errors, status = run(capsys, "--help")
    assert (errors, status) == ([], 0)
    for call in (
        "poolwright [FILE]",
        "poolwright demo",
        "poolwright check FILE...",
        "--json",
        "poolwright compare FILE FILE...",
        "poolwright sheets FILE",
    ):
        assert call in text
    for word in ("presets list", "presets show", "presets check"):
        assert word in text


@pytest.mark.parametrize(
    "words",
    [["check", "-h"], ["compare", "-h"], ["sheets", "-h"], ["presets", "--help"], ["presets", "check", "-h"]],
)
def test_each_command_has_its_own_help(words, capsys):
    text, errors, status = run(capsys, *words)
    assert text.startswith(f"usage: poolwright {words[0]}")
    assert (errors, status) == ([], 0)


def test_the_meaning_of_the_exit_status_is_in_the_help(capsys):
    text, _, _ = run(capsys, "check", "--help")
    assert "exit status: 0" in text


def test_the_version_is_told(capsys):
    text, _, status = run(capsys, "--version")
    assert text.startswith("poolwright ")
    assert status == 0


WRONG = [
    [],
    ["check"],
    ["check", "--jsn", "x.toml"],
    ["check", "--js", "x.toml"],
    ["chek", "x.toml"],
    ["a.toml", "b.toml"],
    ["demo", "x"],
    ["--nonsense"],
    ["presets"],
    ["presets", "shw"],
    ["presets", "show"],
    ["presets", "list", "pipes"],
]


@pytest.mark.parametrize("words", WRONG, ids=" ".join)
def test_a_wrong_call_gets_one_line_and_status_2(words, capsys):
    text, errors, status = run(capsys, *words)
    assert text == ""
    assert len(errors) == 1
    assert errors[0].startswith("poolwright: ")
    assert "--help" in errors[0]
    assert status == 2


def test_a_word_with_a_line_break_still_makes_one_line(capsys):
    _, errors, status = run(capsys, "check", "no\nsuch\x1b[2J.toml")
    assert errors == ["no such?[2J.toml: found no such file; expected the name of a file that is there"]
    assert status == 2


@pytest.mark.parametrize("words", [["check", str(RECTANGLE)], ["presets", "list"], ["--help"]])
def test_nothing_of_the_session_is_loaded(words):
    code = f"import sys; from tui import cli; cli.main({words!r}); assert 'textual' not in sys.modules"
    subprocess.run([sys.executable, "-c", code], check=True, cwd=ROOT, stdout=subprocess.DEVNULL)


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
def test_a_full_disk_behind_standard_output_gets_a_line():
    with open("/dev/full", "w") as full:
        done = subprocess.run(
            [*COMMAND, "check", str(RECTANGLE)],
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            env=ENVIRONMENT,
            check=False,
        )
    assert done.returncode == 2
    assert len(done.stderr.splitlines()) == 1
    assert "no space left" in done.stderr


@pytest.mark.parametrize("words", [["check", "--json", str(RECTANGLE)], ["check", "--help"]])
def test_a_reader_that_has_seen_enough_is_no_error(words):
    reading, writing = os.pipe()
    os.close(reading)
    done = subprocess.run(
        [*COMMAND, *words],
        stdout=writing,
        stderr=subprocess.PIPE,
        env=ENVIRONMENT,
        check=False,
    )
    os.close(writing)
    assert done.stderr == b""
    assert done.returncode == (0 if "--help" in words else 1)


@pytest.mark.skipif(os.name == "nt", reason="a POSIX shell closes it")
def test_a_closed_standard_output_is_no_traceback():
    done = subprocess.run(
        f'"{COMMAND[0]}" "{COMMAND[1]}" check "{RECTANGLE}" >&-',
        shell=True,
        stderr=subprocess.PIPE,
        text=True,
        env=ENVIRONMENT,
        check=False,
    )
    assert done.stderr.splitlines() == ["standard output: found none; expected a place to write to"]
    assert done.returncode == 2


def test_a_terminal_that_knows_few_letters_gets_question_marks():
    done = subprocess.run(
        [*COMMAND, "check", str(RECTANGLE)],
        capture_output=True,
        env={**ENVIRONMENT, "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"},
        check=False,
    )
    assert done.stderr == b""
    assert done.returncode == 1
    assert done.stdout.isascii()


def test_stopping_it_is_no_traceback(capsys, monkeypatch):
    def stop(*_, **__):
        raise KeyboardInterrupt

    monkeypatch.setattr(cli, "check", stop)
    text, errors, status = run(capsys, "check", "x.toml")
    assert (text, errors, status) == ("", ["poolwright: stopped"], 130)
