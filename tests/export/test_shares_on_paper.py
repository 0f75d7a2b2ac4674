"""Shares as the service writes them: on paper by the one rule, in a spreadsheet in full.

The table is worked by hand; the core's and the app's tests read the same one.
"""

import csv
import io
import json

import pypdf
import pytest

from conftest import ROOT
from ringwright.api import examples
from ringwright.core import wording
from ringwright.export import csv_text, route_pdf

TABLE = json.loads((ROOT / "tests" / "vectors" / "shares_shown.json").read_text(encoding="utf-8"))
JOB = {"bore": 80, "steam_pressure": "8 bar"}
HEADING = {
    **dict.fromkeys(("job", "owner", "date"), ""),
    "kind": "Double-turn ring",
    "material": "Grey iron",
    "bore": 80.0,
    "rings": 1,
}


def test_a_share_is_printed_by_the_rule(client):
    worked = {
        name: client.post("/v1/" + name, json=JOB).get_json()
        for name in ("sizing", "tooling", "route")
    }
    worked["route"]["findings"] = [
        {
            "check": "share-%d" % at,
            "outcome": "watch",
            "why": "Case %d sees %s of its strength." % (at, wording.percent(share)),
            "remedy": "",
        }
        for at, (share, _) in enumerate(TABLE)
    ]
    carried = {"format": "ringwright-job", "version": 3, "job": {"inputs": {}}}
    data = route_pdf.route_pdf(worked, lambda _: None, HEADING, "A4", "metric", None, carried)
    found = pypdf.PdfReader(io.BytesIO(data)).pages
    text = " ".join(" ".join(page.extract_text().split()) for page in found)
    for at, (_, said) in enumerate(TABLE):
        assert "Case %d sees %s %% of its strength." % (at, said) in text


@pytest.mark.parametrize("system", ["metric", "inch"])
def test_no_size_of_a_card_is_a_bare_number(client, system):
    """So that a share comes on to paper in words alone, which the core's rule makes."""
    sizing = client.post("/v1/sizing?units=" + system, json=JOB).get_json()["figures"]
    units = {sizing[name]["unit"] for name, _ in route_pdf.HEAD_FIGURES}
    for shown in examples.read_all()["route"].values():
        answer = client.post("/v1/route?units=" + system, json=shown["value"]).get_json()
        units |= {size["unit"] for one in answer["operations"] for size in one["sizes"]}
    assert len(units) > 3 and "1" not in units


def test_a_share_in_a_spreadsheet_is_the_number_itself():
    figures = {
        "share_%d" % at: {"value": share, "unit": "1", "method": "", "symbol": ""}
        for at, (share, _) in enumerate(TABLE)
    }
    rows = csv_text.tables({"figures": figures})["figures"]
    text = csv_text.csv_text(rows).decode("utf-8-sig")
    read = list(csv.DictReader(io.StringIO(text, newline="")))
    for row, (share, said) in zip(read, TABLE, strict=True):
        assert float(row["value"]) == share and row["unit"] == "1"
        assert wording.percent(float(row["value"])) == said + " %"
