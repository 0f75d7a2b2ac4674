"""Requests made up from the specification, in a process of their own: made_up_requests.py."""

import os
import re
import subprocess
import sys

import pytest


@pytest.mark.slow
@pytest.mark.timeout(1200)
def test_what_the_specification_tells(root):
    words = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "-p", "no:xdist"]
    mine = ("PYTEST_",)
    clean = {name: value for name, value in os.environ.items() if not name.startswith(mine)}
    done = subprocess.run(
        [*words, "tests/contract/made_up_requests.py"],
        cwd=root,
        env=clean,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]
    # Some of every kind of address were asked.
    assert int(re.search(r"(\d+) passed", done.stdout).group(1)) > 20, done.stdout[-500:]
