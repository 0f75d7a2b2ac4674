"""Runs the pages that show the service at work and sets what it printed below each piece of code.

    PYTHONPATH=service:tests python -m export.worked_example ADDRESS

writes the pages afresh, with the service running at ADDRESS.
"""

import os
import re
import subprocess
import sys
from pathlib import Path

_TOP = Path(__file__).parents[2]
PAGES = (
    _TOP / "README.md",
    _TOP / "openapi" / "begin.md",
    _TOP / "openapi" / "examples" / "worked_example.md",
)
_BLOCK = re.compile(r"^```(sh|python|js|text)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
SECONDS = 60


def ran(page, address):
    """The page with every text block replaced by what the block of code before it prints."""
    environment = {**os.environ, "RINGWRIGHT": address}
    python = []
    printed = ""

    def replaced(match):
        nonlocal printed
        language, body = match.groups()
        if language == "sh":
            printed = _output(["bash", "-euo", "pipefail", "-c", body], environment)
        elif language == "python":
            # Later pieces go on from earlier ones: run them all, show only what is new.
            before = _output([sys.executable, "-c", "".join(python)], environment) if python else ""
            python.append(body)
            printed = _output([sys.executable, "-c", "".join(python)], environment)[len(before) :]
        elif language == "js":
            # The file's own kind of script: one that may await.
            printed = _output(["node", "--input-type=module", "--eval", body], environment)
        else:
            return "```text\n%s```" % printed
        return match.group(0)

    return _BLOCK.sub(replaced, page)


def _output(command, environment):
    if "export RINGWRIGHT=" in command[-1]:
        return ""
    done = subprocess.run(
        command, env=environment, capture_output=True, text=True, timeout=SECONDS, check=False
    )
    if done.returncode:
        raise RuntimeError("%s\n%s" % (command[-1], done.stderr))
    return done.stdout


if __name__ == "__main__":
    for page in PAGES:
        page.write_text(ran(page.read_text(encoding="utf-8"), sys.argv[1]), encoding="utf-8")
