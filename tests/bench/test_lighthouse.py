"""What Lighthouse says of a first visit on its slowed phone: aim 100 in each of its four parts.

It multiplies the page's own times by four, so its performance and blocking time are those of the
machine as well: on a busy one they fall by tens. The best of a few runs is the one to read.
"""

import json
import os
import shutil
import subprocess

import pytest

from client.conftest import FLAGS, chromium_path  # noqa: F401
from conftest import Server

pytestmark = [pytest.mark.bench, pytest.mark.browser, pytest.mark.timeout(900)]

LIGHTHOUSE = "lighthouse@12.8.2"
RUNS = 3
RUN_SECONDS = 240
AIM = 1.0
# What hangs on the machine may be far below; what hangs on the page alone may not.
FAR_OFF = {"performance": 0.6, "accessibility": 0.95, "best-practices": 0.95, "seo": 0.95}


def _report(address, chromium_path, folder):  # noqa: F811
    path = folder / "report.json"
    subprocess.run(
        [
            "npx",
            "--yes",
            LIGHTHOUSE,
            address,
            "--quiet",
            "--chrome-flags=--headless %s" % " ".join(FLAGS),
            "--output=json",
            "--output-path=%s" % path,
        ],
        cwd=folder,
        env={**os.environ, "CHROME_PATH": chromium_path},
        check=True,
        timeout=RUN_SECONDS,
    )
    return json.loads(path.read_text(encoding="utf-8"))


def test_first_visit(chromium_path, tmp_path, capsys):  # noqa: F811
    if shutil.which("npx") is None:
        pytest.skip("npx, which comes with Node, is needed to fetch Lighthouse")
    server = Server(workers=1)
    try:
        reports = [_report(server.address + "/", chromium_path, tmp_path) for _ in range(RUNS)]
    finally:
        server.stop()
    best = {}
    with capsys.disabled():
        for report in reports:
            scores = {key: part["score"] for key, part in report["categories"].items()}
            best = {key: max(score, best.get(key, 0)) for key, score in scores.items()}
            audits = report["audits"]
            print(
                "\nLighthouse: %s; blocking %.0f ms, layout shift %.3f, first paint %.0f ms, "
                "largest %.0f ms (aim %.0f each)"
                % (
                    ", ".join("%s %.0f" % (key, 100 * score) for key, score in scores.items()),
                    audits["total-blocking-time"]["numericValue"],
                    audits["cumulative-layout-shift"]["numericValue"],
                    audits["first-contentful-paint"]["numericValue"],
                    audits["largest-contentful-paint"]["numericValue"],
                    100 * AIM,
                )
            )
    assert set(best) == set(FAR_OFF)
    assert all(best[key] >= least for key, least in FAR_OFF.items()), best
