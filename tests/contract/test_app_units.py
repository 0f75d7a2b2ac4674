"""The app's own tests: units, requests, jobs, and that only names the core declares compile."""

import subprocess

import pytest

pytestmark = pytest.mark.waits


@pytest.mark.slow
def test_the_app_passes_its_own_tests(root):
    done = subprocess.run(
        ["npm", "test", "--silent"],
        cwd=root / "client_pwa",
        capture_output=True,
        text=True,
        check=False,
        timeout=300,
    )
    assert done.returncode == 0, done.stdout[-4000:] + done.stderr[-2000:]
    assert "names.test.ts" in done.stdout
