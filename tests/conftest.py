"""One file of tests runs in one process; more than one is shared out to the cores."""

from pathlib import Path


def pytest_xdist_auto_num_workers(config):
    """No workers for a single file: starting them takes longer than they save."""
    single = len(config.args) == 1 and Path(config.args[0].split("::")[0]).is_file()
    return 0 if single else None
