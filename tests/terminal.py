"""Programs run in a pseudo-terminal, as a person would run them: for the kill test and the timings."""

import fcntl
import os
import pty
import re
import select
import signal
import struct
import termios
import time

ESCAPES = re.compile(
    rb"\x1b(?:\][^\x07\x1b]*(?:\x07|\x1b\\)|[P_^X][^\x1b]*\x1b\\|\[[0-?]*[ -/]*[@-~]|[ -/]*[0-~])"
)
READ_AT_ONCE = 1 << 16


class Terminal:
    """One program in a terminal of its own.

    Args:
        command: the program and its arguments.
        columns, rows: the size of the terminal.
        environment: added to ours.
    """

    def __init__(self, command, columns=120, rows=40, environment=None):
        self.seen = b""
        self.started = time.perf_counter()
        self.pid, self.master = pty.fork()
        if self.pid == 0:
            fcntl.ioctl(0, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
            full = {**os.environ, "TERM": "xterm-256color", "COLORTERM": "truecolor", **(environment or {})}
            full.pop("PYTHONDONTWRITEBYTECODE", None)  # a user's machine has .pyc files by the second run
            os.execvpe(command[0], command, full)

    @property
    def text(self):
        """All that was painted since the last key, without the escapes."""
        return ESCAPES.sub(b"", self.seen).decode("utf-8", "replace")

    def read(self, patience):
        """Read what comes within some seconds; whether anything did."""
        if not select.select([self.master], [], [], patience)[0]:
            return False
        try:
            chunk = os.read(self.master, READ_AT_ONCE)
        except OSError:  # Linux says EIO at the end of a pseudo-terminal
            return False
        self.seen += chunk
        return bool(chunk)

    def wait_for(self, text, patience=20.0):
        """Seconds since the start until a text is painted."""
        until = time.perf_counter() + patience
        while text not in self.text:
            left = until - time.perf_counter()
            if left <= 0 or not self.read(left):
                raise AssertionError(f"{text!r} was not painted; the last was {self.text[-2000:]!r}")
        return time.perf_counter() - self.started

    def send(self, keys):
        """Type; forgets what was painted before."""
        self.settle()
        self.seen = b""
        os.write(self.master, keys.encode())

    def settle(self, quiet=0.15):
        """Read until nothing has come for a moment."""
        while self.read(quiet):
            pass

    def kill(self):
        """End it as a power cut would."""
        os.kill(self.pid, signal.SIGKILL)
        os.waitpid(self.pid, 0)
        os.close(self.master)
