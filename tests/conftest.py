"""One file of tests runs in one process; more than one is shared out to the cores.

Generated designs are the same in every run, so that a red test stays red until it is mended;
``POOLWRIGHT_DICE=1`` rolls new ones.
"""

import os
from pathlib import Path

from hypothesis import settings

settings.register_profile("steady", derandomize=True)
if not os.environ.get("POOLWRIGHT_DICE"):
    settings.load_profile("steady")


def pytest_xdist_auto_num_workers(config):
    """No workers for a single file: starting them takes longer than they save."""
    single = len(config.args) == 1 and Path(config.args[0].split("::")[0]).is_file()
    return 0 if single else None
