"""CSV as a spreadsheet reads it: by Python's own reader, against the JSON of the same address."""

import csv
import io
import json
import re

import pytest

from ringwright.api import examples
from ringwright.core import calculations
from ringwright.export import csv_text

JOB = {"bore": "3 1/8 in", "steam_pressure": "120 psi"}


def rows(client, path, **query):
    answer = client.get("/v1/" + path, query_string={**JOB, **query})
    assert answer.status_code == 200, answer.data
    assert answer.content_type == "text/csv; charset=utf-8"
    text = answer.data.decode("utf-8-sig")
    assert text.endswith("\r\n")
    return list(csv.DictReader(io.StringIO(text, newline="")))


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize("name", ["sizing", "tooling", "route"])
def test_figures_are_those_of_the_answer(client, name, units):
    answer = client.get("/v1/" + name, query_string={**JOB, "units": units}).get_json()["figures"]
    table = rows(client, name + ".csv", units=units)
    assert [row["name"] for row in table] == list(answer)
    for row in table:
        figure = answer[row["name"]]
        assert float(row["value"]) == figure["value"]
        assert row["unit"] == figure["unit"]
        assert row["method"] == figure["method"]


def test_tools_have_a_row_for_each_size(client):
    tools = client.get("/v1/tooling", query_string=JOB).get_json()["tools"]
    table = rows(client, "tooling.csv", list="tools")
    assert len(table) == sum(len(tool["sizes"]) for tool in tools)
    former = next(row for row in table if row["sizes name"] == "former_diameter")
    size = next(tool for tool in tools if tool["tool"] == "former")["sizes"][0]
    assert float(former["sizes limits upper"]) == size["limits"]["upper"]["value"]


def test_operations_have_a_row_for_each_size_and_lose_no_caution(client):
    operations = client.get("/v1/route", query_string=JOB).get_json()["operations"]
    table = rows(client, "route.csv", list="operations")
    assert len(table) == sum(max(1, len(one["sizes"])) for one in operations)
    assert any(one["sizes"] and len(one["cautions"]) > 1 for one in operations)
    for one in operations:
        mine = [row for row in table if int(row["number"]) == one["number"]]
        for row in mine:
            assert all(caution["text"] in row["cautions"] for caution in one["cautions"])
            assert float(row["time"] or 0) == one.get("time", {"value": 0})["value"]


@pytest.mark.parametrize(
    ("name", "wanted", "query"),
    [
        ("wall-pressure", "turns", {}),
        ("running", "diagram", {"stroke": "4 in", "speed": 250}),
        ("running", "warming.series", {"stroke": "4 in", "speed": 250}),
    ],
)
def test_a_series_has_a_row_for_each_point(client, name, wanted, query):
    query = {"bore": "3 in", "units": "inch", **query}
    if name == "running":
        query["steam_pressure"] = "100 psi"
    found = client.get("/v1/" + name, query_string=query).get_json()
    for step in wanted.split("."):
        found = found[step]
    series = found if isinstance(found, list) else [found]
    answer = client.get("/v1/%s.csv" % name, query_string={**query, "list": wanted})
    table = list(csv.DictReader(io.StringIO(answer.data.decode("utf-8-sig"), newline="")))
    columns = [key for key, value in series[0].items() if isinstance(value, dict)]
    assert len(columns) > 2
    for column in columns:
        expected = [value for one in series for value in one[column]["values"]]
        assert [float(row[column]) for row in table] == expected
        assert {row[column + " unit"] for row in table} == {series[0][column]["unit"]}


def test_every_list_of_every_answer_has_a_table(client):
    made = 0
    for name in ("sizing", "tooling", "route", "job"):
        answer = client.get("/v1/" + name, query_string=JOB).get_json()
        for wanted in csv_text.tables(answer):
            assert rows(client, name + ".csv", list=wanted)
            made += 1
    assert made >= 15
    assert rows(client, "materials.csv", bore=None, steam_pressure=None)


def test_the_list_of_methods_has_tables_like_any_other(client):
    """It failed: its list of figures was taken for figures that were worked."""
    answer = client.get("/v1/methods").get_json()
    for wanted, key in (("methods", "key"), ("figures", "name"), ("sources", "key")):
        address = "/v1/methods.csv" + "?list=%s" % wanted * (wanted != "methods")
        response = client.get(address)
        assert response.status_code == 200
        assert response.headers["Content-Disposition"].endswith('methods-%s.csv"' % wanted)
        table = csv.DictReader(io.StringIO(response.data.decode("utf-8-sig"), newline=""))
        assert {row[key] for row in table} == {entry[key] for entry in answer[wanted]}
    assert "meaning" in heading(client.get("/v1/methods.csv?list=figures"))


def test_a_whole_job_is_one_table_of_figures(client):
    table = {row["name"]: row for row in rows(client, "job.csv")}
    for part in ("sizing", "tooling"):
        for name, figure in (
            client.get("/v1/" + part, query_string=JOB).get_json()["figures"].items()
        ):
            assert float(table["%s.%s" % (part, name)]["value"]) == figure["value"]


def test_the_stock_list_is_a_table_of_a_posted_request(client, root):
    shown = json.loads((root / "openapi" / "examples" / "stock.json").read_text(encoding="utf-8"))
    body = next(iter(shown.values()))["value"]
    answer = client.post("/v1/stock", json=body).get_json()
    for wanted in ("sets", "cut_list"):
        response = client.post("/v1/stock.csv", json=body, query_string={"list": wanted})
        assert response.status_code == 200
        table = list(csv.DictReader(io.StringIO(response.data.decode("utf-8-sig"), newline="")))
        assert len(table) >= len(answer[wanted]) > 0
    bars = {row["bar"] for row in table}
    assert bars == {entry["bar"] for entry in answer["cut_list"]}
    assert client.post("/v1/stock.csv", json={"sets": 5}).status_code == 422


def test_a_list_that_is_not_there_is_refused_with_those_that_are(client):
    answer = client.get("/v1/tooling.csv", query_string={**JOB, "list": "cheese"})
    assert answer.status_code == 422
    assert "tools" in answer.get_json()["errors"][0]["remedy"]


def test_text_is_never_taken_for_a_formula():
    rows = [{"name": "=1+1", "note": '-2, "x"\n', "value": -2.5, "yes": True, "no": None}]
    table = list(csv.reader(io.StringIO(csv_text.csv_text(rows).decode("utf-8-sig"))))
    assert table[1] == ["'=1+1", '\'-2, "x"\n', "-2.5", "yes", ""]


def heading(response):
    return next(csv.reader(io.StringIO(response.data.decode("utf-8-sig"))))


def test_headings_are_those_declared_whatever_is_filled(client):
    """A spreadsheet that takes the next job's table finds each column where it was."""
    sets = {"outside_diameter": 83, "inside_diameter": 74, "part_length": 8, "count": 3}
    for name in ("sets", "figures"):
        bare, priced = (
            heading(client.post("/v1/stock.csv?list=" + name, json={"sets": [sets], **more}))
            for more in ({}, {"bar_price": 4})
        )
        assert bare == priced
    assert {"cost", "cost unit", "mass"} <= set(
        heading(client.post("/v1/stock.csv?list=sets", json={"sets": [sets]}))
    )
    plain = client.get("/v1/tooling.csv?bore=80&ring_type=plain&list=tools")
    double = client.get("/v1/tooling.csv?bore=80&list=tools")
    assert heading(plain) == heading(double)


@pytest.mark.parametrize("name", sorted(calculations.CALCULATIONS))
def test_no_column_comes_that_is_not_declared(client, name):
    """Headings made from the declaration are those that the rows have."""
    calculation = calculations.CALCULATIONS[name]
    shown = examples.read_all().get(name)
    if shown is None or name == "drawing":
        return
    answer = client.post("/v1/" + name, json=next(iter(shown.values()))["value"]).get_json()
    for table, rows in csv_text.tables(answer).items():
        told = csv_text.headings(calculation.answer, table)
        if told:
            assert {column for row in rows for column in row} <= set(told), table


def test_figures_are_called_by_their_labels(client):
    rows = list(
        csv.DictReader(io.StringIO(client.get("/v1/sizing.csv?bore=80").data.decode("utf-8-sig")))
    )
    assert rows[0]["name"] == "radial_thickness"
    assert rows[0]["label"] == "Radial thickness"
    assert all(row["label"] for row in rows)


def test_the_address_that_the_page_gives_a_spreadsheet(client, root):
    """As a spreadsheet takes it from the web: it stands on a line of its own, and each cell with a
    value is a number with a decimal point, of no more digits than a cell shows (15)."""
    page = (root / "openapi" / "begin.md").read_text(encoding="utf-8")
    (address,) = re.findall(r"^    http://127\.0\.0\.1:8000(/\S+\.csv\S*)$", page, re.M)
    # The page asks the same of the shell, where what it prints is held.
    assert '"$RINGWRIGHT%s"' % address in page
    answer = client.get(address)
    assert answer.status_code == 200
    table = list(csv.reader(io.StringIO(answer.data.decode("utf-8-sig"), newline="")))
    assert {len(row) for row in table} == {len(table[0])}
    at = table[0].index("value")
    for row in table[1:]:
        assert re.fullmatch(r"-?\d+(\.\d+)?(e-?\d+)?", row[at]), row
        assert len(row[at].replace(".", "").lstrip("-0")) <= 15, row
