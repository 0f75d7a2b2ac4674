"""One rule for the digits of a share in per cent: a little off nothing or all never reads so.

The table is worked by hand; the app's own tests read the same table.
"""

import ast
import json
import re
from pathlib import Path

import pytest

from conftest import ROOT
from ringwright.core import wording

TABLE = json.loads(
    (Path(__file__).parent.parent / "vectors" / "shares_shown.json").read_text(encoding="utf-8")
)
# Makers of percentages beside the rule: of what was declared, and not worked.
DECLARED = {"catalogue/inputs.py", "catalogue/inputs_blank.py", "fitting/ring_pack.py"}


@pytest.mark.parametrize("share, text", TABLE)
def test_a_share_in_words(share, text):
    assert wording.percent(share) == text + " %"


def test_nothing_and_all_are_said_of_nothing_and_all_alone():
    for step in range(1, 2000):
        for off in (step * 1e-5, 10.0 ** (-step / 250.0)):
            assert float(wording.percent(off)[:-2]) > 0.0
            assert float(wording.percent(1.0 - off)[:-2]) < 100.0


def test_the_core_makes_no_percentage_by_another_rule():
    core = ROOT / "service" / "ringwright" / "core"
    made = set()
    for path in sorted(core.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            text = getattr(node, "value", None)
            if isinstance(text, str) and (text == " %" or re.search(r"%[.\d]*[sdf] ?%%", text)):
                made.add(str(path.relative_to(core)))
    assert made == DECLARED | {"wording.py"}


def test_neither_does_the_app():
    source = ROOT / "client_pwa" / "src"
    made = [
        str(path.relative_to(source))
        for path in sorted(source.rglob("*.ts*"))
        if re.search(r"\} %[\s`<]", path.read_text(encoding="utf-8"))
    ]
    assert made == []
