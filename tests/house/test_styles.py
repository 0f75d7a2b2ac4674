"""The style sheet is in files of one purpose each, short enough to read at one sitting."""

import re

from conftest import ROOT

STYLES = ROOT / "client_pwa" / "src" / "styles"
LONGEST = 400


def test_no_style_sheet_is_longer_than_one_reads_at_a_sitting():
    lengths = {
        path.name: len(path.read_text(encoding="utf-8").splitlines())
        for path in STYLES.glob("*.css")
    }
    assert len(lengths) > 10
    assert {name: length for name, length in lengths.items() if length >= LONGEST} == {}


def test_every_style_sheet_is_taken_in_once():
    index = (STYLES / "index.css").read_text(encoding="utf-8")
    taken = re.findall(r'@import "\./([\w-]+\.css)";', index)
    assert sorted(taken) == sorted(
        path.name for path in STYLES.glob("*.css") if path.name != "index.css"
    )
